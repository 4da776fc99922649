"""What cannot be true of an order is refused, each mistake at its key."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.making.line_checks import check_line, is_paid_again, minutes_between, rows_again
from quoting.core.making.log_lines import (
    Doing,
    LogEntry,
    LogLine,
    Moved,
    Remark,
    Session,
    Withdrawn,
    YarnUsed,
)
from quoting.core.making.made_rows import made_rows
from quoting.core.order.stage import Stage
from quoting.core.workshop.exchange import ExchangeRate
from tests.core.making.logs import DAY, hook, log, paid, reached, spent, taken, used, woven
from tests.examples import sample_order, sample_quote, sample_workshop

RATE = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=date(2026, 11, 20))
QUOTE = sample_quote(sample_order(pays_in="EUR"), sample_workshop(exchange={"EUR": RATE}))
ROWS = made_rows(QUOTE).all
ENDS = QUOTE.estimate.ends
NINE = datetime(2026, 12, 1, 9, tzinfo=UTC)


def mistakes(
    line: LogLine, *lines: LogLine, corrects: int | None = None, today: date = DAY
) -> dict[str, tuple[str, object]]:
    """Return the codes of what is wrong with a line, and the limits told, by place."""
    try:
        check_line(QUOTE, log(*lines), line, today=today, corrects=corrects)
    except Refused as refused:
        return {m.path: (m.code, m.facts.get("limit")) for m in refused.mistakes}
    return {}


@pytest.mark.parametrize(
    "line",
    [
        hook(1, ROWS, 700),
        hook(None, None, 60),
        spent(Doing.OFFICE, 30),
        reached(ROWS),
        reached(0),
        used("teal", 400 / 2, 30),
        used("cream", 5, 30),
        taken("rust", 5000),
        woven(ENDS),
        paid("100"),
        paid("100", "EUR"),
        Remark(day=DAY, text="Dry by Friday"),
        Moved(stage=Stage.FINISHED, before=Stage.ON_THE_HOOK),
        Withdrawn(),
    ],
)
def test_what_can_be_true_is_taken(line: LogLine) -> None:
    assert mistakes(line) == {}


@pytest.mark.parametrize(
    ("line", "place"),
    [
        (hook(ROWS - 1, ROWS + 1, 20), "last_row"),
        (reached(ROWS + 1), "rows"),
        (used("teal", 5, ROWS + 1), "rows"),
    ],
)
def test_more_rows_than_there_are_are_refused(line: LogLine, place: str) -> None:
    assert mistakes(line) == {place: ("more-rows-than-there-are", ROWS)}


@pytest.mark.parametrize("line", [reached(4), paid("5"), Remark(day=DAY, text="x"), woven(1)])
def test_a_day_to_come_is_refused(line: LogLine) -> None:
    yesterday = DAY - timedelta(days=1)
    assert mistakes(line, today=yesterday) == {"day": ("day-to-come", yesterday)}


def test_all_that_is_wrong_is_told_at_once() -> None:
    line = used("teal", 900, ROWS + 1)
    found = mistakes(line, today=DAY - timedelta(days=1))
    assert set(found) == {"day", "rows", "grams"}


@pytest.mark.parametrize("line", [used("pink", 5, 3), taken("pink", 5)])
def test_a_colour_that_is_not_in_the_order_is_refused(line: LogLine) -> None:
    assert mistakes(line) == {"colour": ("colour-not-in-order", None)}


def test_no_more_yarn_is_used_than_was_planned_until_more_is_taken() -> None:
    """By hand: two balls of 100 g are planned; 150 g are used."""
    before = used("teal", 150, 40)
    assert mistakes(used("teal", 50, 50), before) == {}
    assert mistakes(used("teal", 51, 50), before) == {"grams": ("more-yarn-than-there-is", 50)}
    lines = (before, taken("teal", 100), taken("teal", 100), taken("teal", 100))
    assert mistakes(used("teal", 51, 50), *lines) == {}


def test_no_more_yarn_is_used_than_was_taken() -> None:
    line = YarnUsed(day=DAY, colour="teal", rows=30, balls=3, ball_g=50)
    assert mistakes(line, taken("teal", 100)) == {"balls": ("more-yarn-than-there-is", 100)}
    over = mistakes(used("teal", 1, 9), taken("teal", 100), used("teal", 120, 8))
    assert over == {"grams": ("more-yarn-than-there-is", 0)}


def test_a_correction_is_held_against_all_but_the_line_it_corrects() -> None:
    lines = (taken("teal", 100), used("teal", 90, 20))
    assert mistakes(used("teal", 95, 20), *lines) != {}
    assert mistakes(used("teal", 95, 20), *lines, corrects=2) == {}


def test_more_ends_than_rows_and_strands_can_have_are_refused() -> None:
    most = ENDS + 2 * ROWS
    assert mistakes(woven(most)) == {}
    assert mistakes(woven(most - 3), woven(4)) == {"ends": ("more-ends-than-there-are", most - 4)}


def test_no_more_money_goes_back_than_came_in_its_currency() -> None:
    lines = (paid("100"), paid("-30"), paid("50", "EUR"))
    assert mistakes(paid("-70"), *lines) == {}
    assert mistakes(paid("-70.01"), *lines) == {"amount": ("paid-back-too-much", 70)}
    assert mistakes(paid("-1"), paid("20", "EUR")) == {"amount": ("paid-back-too-much", 0)}


def test_money_in_a_currency_that_was_not_offered_is_refused() -> None:
    assert mistakes(paid("5", "USD")) == {"currency": ("currency-not-offered", None)}


def test_rows_that_were_worked_before_are_told_and_not_refused() -> None:
    entries = log(hook(1, 20, 120), hook(31, 40, 60), spent(Doing.OFFICE, 3))
    again = hook(18, 33, 90)
    assert rows_again(entries, again) == (18, 33)
    assert rows_again(entries, hook(15, 22, 50)) == (15, 20)
    assert rows_again(entries, hook(21, 30, 50)) is None
    assert rows_again(entries, reached(5)) is None
    assert rows_again(entries, hook(None, None, 5)) is None
    assert rows_again(entries, hook(1, 20, 110), corrects=1) is None
    check_line(QUOTE, entries, again, today=DAY)


def test_the_same_money_of_the_same_day_is_told() -> None:
    entries = log(paid("100"))
    assert is_paid_again(entries, paid("100"))
    assert not is_paid_again(entries, paid("100"), corrects=1)
    assert not is_paid_again(entries, paid("100.01"))
    assert not is_paid_again(entries, paid("100", day=DAY + timedelta(days=1)))
    assert not is_paid_again(entries, reached(100))


def test_minutes_run_from_the_beginning_to_the_end() -> None:
    assert minutes_between(NINE, NINE + timedelta(minutes=55)) == 55


@pytest.mark.parametrize("minutes", [0, -1, -600])
def test_a_session_that_ends_before_it_begins_is_refused(minutes: int) -> None:
    with pytest.raises(Refused, match="ended: ends-before-it-begins"):
        minutes_between(NINE, NINE + timedelta(minutes=minutes))


@pytest.mark.parametrize("minutes", [0.0, -3.0, 40 * 60.0])
def test_a_session_of_no_minutes_or_of_forty_hours_is_none(minutes: float) -> None:
    with pytest.raises(Refused, match="minutes"):
        Session(day=DAY, doing=Doing.AT_THE_HOOK, minutes=minutes)


def test_an_entry_that_only_withdraws_leaves_nothing_to_check_against() -> None:
    entries: tuple[LogEntry, ...] = log(woven(5), Withdrawn(), corrects={2: 1})
    check_line(QUOTE, entries, woven(ENDS + 2 * ROWS), today=DAY)
