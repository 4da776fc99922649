"""What an order took, without planning it anew, is what the plan tells; or it is left to that."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import UTC, datetime
from decimal import Decimal

import pytest

from exports.records.quote_record import quote_record
from exports.records.stated_figures import stated_figures
from quoting.core.making.log_lines import Doing, LogEntry, LogLine, Session, YarnTaken, YarnUsed
from quoting.core.making.outcome import Outcome, outcome_of
from quoting.core.making.plain_outcome import plain_outcome
from quoting.core.making.stated import Stated
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import YarnCharged
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop

NOW = datetime(2026, 11, 25, 9, tzinfo=UTC)
ROWS = 106


def logged(*lines: LogLine) -> tuple[LogEntry, ...]:
    return tuple(LogEntry(id=number, at=NOW, line=line) for number, line in enumerate(lines, 1))


def worked(minutes: float, doing: Doing = Doing.AT_THE_HOOK, *rows: int) -> Session:
    first, last = rows or (None, None)
    return Session(day=TODAY, doing=doing, minutes=minutes, first_row=first, last_row=last)


def used(colour: str, grams: float, rows: int = ROWS) -> YarnUsed:
    return YarnUsed(day=TODAY, colour=colour, rows=rows, grams=grams)


def taken(colour: str, grams: float, cost: str | None) -> YarnTaken:
    paid = None if cost is None else Decimal(cost)
    return YarnTaken(day=TODAY, colour=colour, grams=grams, cost=paid)


WHOLE = (
    worked(500, Doing.AT_THE_HOOK, 1, 60),
    worked(420, Doing.AT_THE_HOOK, 55, ROWS),
    worked(190, Doing.WEAVING_IN),
)
YARN = (used("oat", 160), used("teal", 90.5, 40), used("teal", 80), used("rust", 170))
LOGS: dict[str, tuple[LogLine, ...]] = {
    "nothing": (),
    "hours alone": WHOLE,
    "hours without rows": (worked(900), worked(30, Doing.OFFICE)),
    "some without rows": (worked(500, Doing.AT_THE_HOOK, 1, 60), worked(300)),
    "all the yarn": (*WHOLE, *YARN),
    "some of the yarn": (*WHOLE, used("teal", 170)),
    "yarn that was paid for": (*YARN, taken("teal", 200, "9.20"), taken("rust", 200, "9.40")),
    "yarn from a drawer": (*YARN, taken("teal", 200, None)),
}
PLANNED: dict[str, tuple[LogLine, ...]] = {
    "rows left out": (worked(500, Doing.AT_THE_HOOK, 1, 60),),
    "rows left out between": (
        worked(500, Doing.AT_THE_HOOK, 1, 60),
        worked(90, Doing.AT_THE_HOOK, 70, ROWS),
    ),
    "yarn of the first half": (used("teal", 90, 50),),
    "a colour by another name": (used("cream", 160),),
    "yarn paid for in part": (taken("teal", 100, "4.60"), taken("teal", 100, None)),
}


def stated_of(quote: Quote) -> Stated:
    return stated_figures(quote_record(quote))


def quotes() -> Iterable[Quote]:
    shop = sample_workshop()
    by_the_gram = replace(shop.pricing, yarn_charged=YarnCharged.USED)
    yield sample_quote()
    yield sample_quote(None, replace(shop, pricing=by_the_gram))


def same(found: Outcome, wanted: Outcome) -> bool:
    """Return whether two outcomes say the same; kept results have grams to three decimals."""
    kept = [replace(colour, expected_g=round(colour.expected_g, 3)) for colour in wanted.colours]
    colours = [
        replace(colour, took_g=some.took_g)
        for colour, some in zip(found.colours, kept, strict=True)
    ]
    grams = [colour.took_g for colour in found.colours]
    assert grams == pytest.approx([colour.took_g for colour in wanted.colours])
    return replace(found, colours=tuple(colours)) == replace(wanted, colours=tuple(kept))


@pytest.mark.parametrize("name", list(LOGS))
def test_what_a_whole_log_tells_is_what_the_plan_tells(name: str) -> None:
    for quote in quotes():
        entries = logged(*LOGS[name])
        found = plain_outcome(stated_of(quote), entries)
        assert found is not None
        assert same(found, outcome_of(quote, entries))


@pytest.mark.parametrize("name", list(PLANNED))
def test_what_a_log_leaves_out_is_left_to_the_plan(name: str) -> None:
    assert plain_outcome(stated_of(sample_quote()), logged(*PLANNED[name])) is None


def test_the_rows_of_several_blankets_are_counted_on() -> None:
    pair = sample_quote(sample_order(quantity=2))
    one = logged(worked(500, Doing.AT_THE_HOOK, 1, ROWS))
    both = logged(worked(1000, Doing.AT_THE_HOOK, 1, 2 * ROWS), used("teal", 340, 2 * ROWS))
    assert plain_outcome(stated_of(pair), one) is None
    found = plain_outcome(stated_of(pair), both)
    assert found is not None
    assert same(found, outcome_of(pair, both))


def test_yarn_bought_of_which_nothing_was_to_be_bought_is_left_to_the_plan() -> None:
    """Where all comes from the shelf, the costing does not tell whether used yarn is charged."""
    stated = replace(stated_of(sample_quote()), by_the_gram=None)
    assert plain_outcome(stated, logged(*YARN)) is not None
    assert plain_outcome(stated, logged(*YARN, taken("teal", 200, "9.20"))) is None


def test_results_of_before_say_less_but_are_read() -> None:
    results = quote_record(sample_quote())
    del results["blanket"]["stitch"], results["hours"]["widened_by"]  # type: ignore[attr-defined]
    for yarn in results["yarn"]:  # type: ignore[attr-defined]
        del yarn["grams_high"], yarn["widened_by"]
    stated = stated_figures(results)
    assert stated.stitch == ""
    assert stated.hours_widened_by == 1
    assert stated.grams_half_width is None
