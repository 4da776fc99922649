"""How far an order is, as its log tells it."""

from __future__ import annotations

from datetime import timedelta
from decimal import Decimal

import pytest

from quoting.core.making.log_lines import Doing, Moved, Remark, Session, Withdrawn
from quoting.core.making.made_rows import MadeRows, PassPlace, made_rows
from quoting.core.making.progress import progress_of, rows_done
from quoting.core.making.told import happened
from quoting.core.order.stage import Stage
from quoting.core.plan.passes import Work
from tests.core.making.logs import DAY, hook, log, paid, reached, spent, taken, used, woven
from tests.examples import sample_order, sample_quote

QUOTE = sample_quote()
THREE = sample_quote(sample_order(quantity=3))
BEFORE = DAY - timedelta(days=1)


def three_blankets() -> MadeRows:
    return made_rows(THREE)


def test_rows_and_rounds_count_and_the_chain_does_not() -> None:
    passes = QUOTE.plan.passes
    assert made_rows(QUOTE).all == len(passes) - 1
    assert passes[0].work is Work.CHAIN
    assert passes[-1].work is Work.ROUND


def test_rows_of_several_blankets_are_counted_on() -> None:
    rows = three_blankets()
    assert rows.all == 3 * rows.of_one
    assert rows.place_of(1) == PassPlace(0, 1)
    assert rows.place_of(rows.of_one) == PassPlace(0, rows.of_one)
    assert rows.place_of(rows.of_one + 1) == PassPlace(1, 1)


def test_a_rows_number_leads_to_its_pass_and_back() -> None:
    rows = three_blankets()
    assert [rows.row_of(rows.place_of(row)) for row in range(1, rows.all + 1)] == list(
        range(1, rows.all + 1)
    )


def test_the_chain_is_worked_with_row_1_of_its_blanket() -> None:
    rows = three_blankets()
    assert list(rows.worked_with(1)) == [0, 1]
    assert list(rows.worked_with(2)) == [2]
    assert rows.row_of(PassPlace(1, 0)) == rows.of_one + 1
    assert list(rows.places(rows.of_one, rows.of_one + 1)) == [
        PassPlace(0, rows.of_one),
        PassPlace(1, 0),
        PassPlace(1, 1),
    ]


def test_nothing_told_is_nothing_done_and_nothing_known() -> None:
    progress = progress_of(QUOTE, ())
    assert (progress.rows_done, progress.passes_done, progress.share) == (0, 0, 0)
    assert progress.rows_left == progress.rows
    assert (progress.minutes, progress.used_g, progress.taken_g, progress.received) == (
        {},
        {},
        {},
        {},
    )
    assert progress.ends_left == progress.ends == QUOTE.estimate.ends


def test_the_furthest_row_that_anything_tells_is_done() -> None:
    assert rows_done(log(hook(1, 12, 60), used("teal", 20, 15), hook(13, 14, 9))) == 15
    assert rows_done(log(hook(1, 12, 60), reached(20))) == 20
    assert rows_done(log(spent(Doing.FINISHING, 5))) == 0


def test_fewer_rows_are_done_after_ripping_back() -> None:
    assert rows_done(log(hook(1, 30, 200), reached(22))) == 22
    assert rows_done(log(hook(1, 30, 200), reached(22), hook(23, 26, 30))) == 26


def test_what_was_written_down_late_counts_on_its_day() -> None:
    assert rows_done(log(reached(30), reached(22, BEFORE))) == 30


def test_a_correction_stands_where_the_first_line_stood() -> None:
    lines = (reached(10), reached(30), reached(12))
    assert rows_done(log(*lines, corrects={3: 1})) == 30
    assert happened(log(*lines, corrects={3: 1})) == [reached(12), reached(30)]


def test_a_correction_of_a_correction_stands_there_too() -> None:
    lines = (reached(10), reached(30), reached(12), reached(14))
    assert happened(log(*lines, corrects={3: 1, 4: 3})) == [reached(14), reached(30)]


def test_what_was_taken_back_counts_no_more() -> None:
    lines = (hook(1, 12, 60), paid("50"), Withdrawn(), Withdrawn())
    progress = progress_of(QUOTE, log(*lines, corrects={3: 1, 4: 2}))
    assert (progress.rows_done, progress.minutes, progress.received) == (0, {}, {})


def test_more_rows_than_there_are_are_all_of_them() -> None:
    progress = progress_of(QUOTE, log(reached(5000)))
    assert progress.rows_done == progress.rows
    assert progress.passes_done == len(QUOTE.plan.passes)


def test_minutes_add_up_by_what_they_were_spent_on() -> None:
    lines = (hook(1, 5, 30), hook(None, None, 20), spent(Doing.WEAVING_IN, 15))
    minutes = progress_of(QUOTE, log(*lines)).minutes
    assert minutes == {Doing.AT_THE_HOOK: 50, Doing.WEAVING_IN: 15}


def test_yarn_adds_up_by_colour_whatever_name_it_goes_by() -> None:
    """The design's cream is the yarn's oat, which the estimate has once."""
    lines = (used("oat", 10, 5), used("cream", 4, 9), taken("teal", 200), taken("pink", 5))
    progress = progress_of(QUOTE, log(*lines))
    assert progress.used_g == {"oat": 14}
    assert progress.taken_g == {"teal": 200}


def test_ends_and_money_add_up() -> None:
    lines = (woven(4), woven(3), paid("100"), paid("-20"), paid("30.50", "EUR"))
    progress = progress_of(QUOTE, log(*lines))
    assert progress.ends_woven == 7
    assert progress.ends_left == QUOTE.estimate.ends - 7
    assert progress.received == {"GBP": Decimal(80), "EUR": Decimal("30.50")}


def test_more_ends_than_were_planned_leave_none() -> None:
    assert progress_of(QUOTE, log(woven(QUOTE.estimate.ends + 2))).ends_left == 0


@pytest.mark.parametrize(
    "line",
    [
        Remark(day=DAY, text="Rang about the colours"),
        Moved(stage=Stage.ON_THE_HOOK, before=Stage.AGREED),
        Session(day=DAY, doing=Doing.OFFICE, minutes=5),
    ],
)
def test_other_lines_move_no_rows(line: Remark | Moved | Session) -> None:
    assert rows_done(log(reached(7), line)) == 7
