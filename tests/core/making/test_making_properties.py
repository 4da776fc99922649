"""What holds of every order that is made, however it goes: random logs of random orders."""

from __future__ import annotations

import math
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.estimate.chores import Part
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.hours import work_hours
from quoting.core.estimate.pace import pace_of
from quoting.core.estimate.stitching_time import paces_of, sessions_of
from quoting.core.making.hours_left import hours_left
from quoting.core.making.log_lines import Doing, LogLine, Session, YarnUsed
from quoting.core.making.made_rows import made_rows
from quoting.core.making.planned_yarn import planned_yarn
from quoting.core.making.rows_work import rows_work
from quoting.core.making.session_pace import session_timings
from quoting.core.making.yarn_left import YarnLeft, yarn_left
from quoting.core.making.yarn_use import YarnUse, reserve_left
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.timings import TimedStitch
from tests.core.making.logs import hook, log, reached, taken
from tests.examples import (
    SMALL,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

COLOURS = ("oat", "teal", "rust")
DESIGNS = (
    (section("teal", "rust", "oat", share=1),),
    (section("teal", rows=6), section("rust", "oat", rows=2)),
    (section("rust"),),
)
NEAR = 1e-6


@cache
def quote_of(design: int, quantity: int = 1, join: Join = Join.ANYWHERE) -> Quote:
    order = sample_order(design=sample_design(sections=DESIGNS[design]), quantity=quantity)
    wool = sample_yarn(put_ups=(SMALL,), stock=())
    return sample_quote(order, sample_workshop(yarns=(wool,), habits=Habits(join=join)))


kinds = st.tuples(st.integers(0, 2), st.integers(1, 2))
"""A design, and how many blankets of it."""
shares = st.floats(0, 1)


def reach_m(quote: Quote, colour: ColourEstimate, row: int) -> float:
    return planned_yarn(colour, made_rows(quote)).reach_m[row]


def all_used(quote: Quote, row: int, times: float = 1.0) -> list[LogLine]:
    """Return that of each colour so many times as much was used as was planned up to a row."""
    lines: list[LogLine] = []
    for colour in quote.estimate.colours:
        grams = times * reach_m(quote, colour, row) / colour.metres_per_gram
        if grams:
            lines.append(YarnUsed(day=reached(0).day, colour=colour.colour, grams=grams, rows=row))
    return lines


def lefts(quote: Quote, *lines: LogLine) -> tuple[YarnLeft, ...]:
    return yarn_left(quote, log(*lines))


def planned_minutes(quote: Quote, first: int, last: int) -> float:
    hours = work_hours(rows_work(quote).of(first, last), quote.workshop)
    return math.fsum(t.minutes for t in hours.tasks if t.part in Doing.AT_THE_HOOK.parts)


@given(kind=kinds, share=shares)
def test_where_all_goes_as_planned_the_yarn_done_and_left_is_the_whole(
    kind: tuple[int, int], share: float
) -> None:
    quote = quote_of(*kind)
    row = round(share * made_rows(quote).all)
    for left, colour in zip(
        lefts(quote, *all_used(quote, row)), quote.estimate.colours, strict=True
    ):
        assert left.ratio == pytest.approx(1)
        assert left.used_m + left.needed_m == pytest.approx(colour.metres)
        assert left.rows_to_come == len([n for n in left.planned.rows if n > left.rows_done])


@given(kind=kinds, share=shares)
def test_where_all_goes_as_planned_what_was_bought_lasts(
    kind: tuple[int, int], share: float
) -> None:
    quote = quote_of(*kind)
    row = round(share * made_rows(quote).all)
    for left in lefts(quote, *all_used(quote, row), reached(row)):
        assert left.rows_lasting == left.rows_lasting_surely == left.rows_to_come
        assert left.is_enough


@given(kind=kinds, share=shares)
def test_where_all_goes_as_planned_the_hours_spent_and_left_are_the_whole(
    kind: tuple[int, int], share: float
) -> None:
    quote = quote_of(*kind)
    rows = made_rows(quote).all
    row = round(share * (rows - 1)) + 1
    left = hours_left(quote, log(hook(1, row, planned_minutes(quote, 1, row))))
    whole = sum(quote.estimate.hours.of(part) for part in Doing.AT_THE_HOOK.parts)
    spent = left.spent[Doing.AT_THE_HOOK] / 60
    assert spent + float(left.of(Doing.AT_THE_HOOK)) == pytest.approx(float(whole), abs=0.05)
    assert left.of(Doing.OFFICE) == quote.estimate.hours.of(Part.OFFICE)


@given(
    kind=kinds,
    row=st.integers(1, 90),
    times=st.floats(0.5, 2),
    more=st.floats(1, 1.5),
    had=st.integers(1, 9),
)
def test_more_used_never_lasts_longer_and_never_asks_for_fewer_balls(
    kind: tuple[int, int], row: int, times: float, more: float, had: int
) -> None:
    quote = quote_of(*kind)
    shelf = [taken(colour, 100.0 * had) for colour in COLOURS]
    few = lefts(quote, *shelf, *all_used(quote, row, times), reached(row))
    many = lefts(quote, *shelf, *all_used(quote, row, times * more), reached(row))
    for less, greater in zip(few, many, strict=True):
        assert greater.needed_m >= less.needed_m - NEAR
        assert greater.rows_lasting <= less.rows_lasting
        assert greater.rows_lasting_surely <= greater.rows_lasting
        assert greater.to_buy.skeins >= less.to_buy.skeins


@given(kind=kinds, row=st.integers(0, 90), times=st.floats(0.5, 2), had=st.integers(2, 9))
def test_with_the_balls_to_buy_it_is_enough_and_with_one_less_it_is_not(
    kind: tuple[int, int], row: int, times: float, had: int
) -> None:
    """Walked again with the new balls beside those in hand; no more was used than there was."""
    quote = quote_of(*kind)
    shelf = [taken(colour, 100.0 * had) for colour in COLOURS]
    lines = [*shelf, *all_used(quote, row, times), reached(row)]
    for left in lefts(quote, *lines):
        if left.used_m > left.had.all_m:
            continue
        bought = [taken(left.colour, 100.0)] * left.to_buy.skeins
        after = _of(left.colour, quote, [*lines, *bought])
        assert after.is_enough
        assert after.rows_lasting_surely == after.rows_to_come
        if bought:
            assert not _of(left.colour, quote, [*lines, *bought[1:]]).is_enough


def _of(colour: str, quote: Quote, lines: list[LogLine]) -> YarnLeft:
    return next(left for left in lefts(quote, *lines) if left.colour == colour)


@given(
    design=st.integers(0, 2),
    row=st.integers(0, 90),
    times=st.floats(0.7, 1.5),
    had=st.integers(2, 9),
)
def test_at_an_edge_no_fewer_rows_are_asked_for_than_the_metres_need(
    design: int, row: int, times: float, had: int
) -> None:
    quote = quote_of(design, 1, Join.AT_AN_EDGE)
    shelf = [taken(colour, 100.0 * had) for colour in COLOURS]
    for left in lefts(quote, *shelf, *all_used(quote, row, times), reached(row)):
        short_m = left.needed_high_m - left.in_hand_m
        assert left.to_buy.skeins * 200 >= short_m - NEAR
        assert 0 <= left.rows_lasting_surely <= left.rows_lasting <= left.rows_to_come


@given(
    sessions=st.lists(
        st.tuples(st.integers(2, 50), st.integers(1, 50), st.floats(0.6, 2)), min_size=1, max_size=8
    )
)
def test_the_pooled_pace_lies_between_those_it_pools(
    sessions: list[tuple[int, int, float]],
) -> None:
    quote = quote_of(0)
    lines = [
        hook(first, first + rows, times * planned_minutes(quote, first, first + rows))
        for first, rows, times in sessions
    ]
    base = TimedStitch(stitch="hdc")
    told = [
        timing.minutes / timing.stitches
        for timing in session_timings(quote, log(*lines))
        if timing.timed == base
    ]
    before = paces_of(quote.workshop)[base].minutes_each
    pooled_shop = hours_left(quote, log(*lines)).workshop
    pooled = paces_of(pooled_shop)[base].minutes_each
    assert min(before, *told) - NEAR <= pooled <= max(before, *told) + NEAR
    assert pooled == pytest.approx(pace_of(sessions_of(pooled_shop)[base]).minutes_each)


@given(kind=kinds, lines=st.lists(st.tuples(st.integers(1, 210), st.floats(1, 1440)), max_size=6))
def test_what_is_left_is_never_under_nothing(
    kind: tuple[int, int], lines: list[tuple[int, float]]
) -> None:
    quote = quote_of(*kind)
    sessions: list[Session] = [hook(1, row, minutes) for row, minutes in lines]
    left = hours_left(quote, log(*sessions))
    assert all(left.hours.of(part) >= 0 for part in Part)
    assert 0 <= left.hours.low <= left.hours.total <= left.hours.high


@given(used_m=st.floats(0.1, 1e5), planned_m=st.floats(0.1, 1e5), ahead_m=st.floats(0, 1e5))
def test_the_ratio_is_that_of_used_to_planned_whatever_the_yarn(
    used_m: float, planned_m: float, ahead_m: float
) -> None:
    use = YarnUse(used_m=used_m, planned_m=planned_m)
    assert use.really_m(planned_m) == pytest.approx(used_m)
    assert use.really_m(ahead_m) == pytest.approx(ahead_m * used_m / planned_m)


@given(reserve=st.floats(0, 1), one=shares, other=shares)
def test_the_more_is_known_the_less_is_held_in_reserve(
    reserve: float, one: float, other: float
) -> None:
    known, more = sorted((one, other))
    assert 0 <= reserve_left(reserve, more) <= reserve_left(reserve, known) <= reserve
