"""How far each colour's yarn lasts while an order is made, and what to buy."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.making.log_lines import LogLine, YarnUsed
from quoting.core.making.made_rows import made_rows
from quoting.core.making.planned_yarn import PlannedYarn, planned_yarn
from quoting.core.making.yarn_left import YarnLeft, yarn_left
from quoting.core.order.order import Extra
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.yarns import Stock
from tests.core.making.logs import log, reached, taken, used
from tests.examples import (
    LARGE,
    SMALL,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

PLAIN = sample_order(design=sample_design(sections=(section("teal"),), border=()), extras=())
"""A row of oat and then teal alone: what of teal is done follows from its rows."""


def small_balls(stock: tuple[Stock, ...] = (), **changes: Any) -> Quote:
    wool = sample_yarn(put_ups=(SMALL,), stock=stock)
    return sample_quote(PLAIN, sample_workshop(yarns=(wool,), **changes))


QUOTE = sample_quote()
TEAL = small_balls()


def left_of(colour: str, quote: Quote, *lines: LogLine) -> YarnLeft:
    return next(left for left in yarn_left(quote, log(*lines)) if left.colour == colour)


def plan_of(colour: str, quote: Quote) -> PlannedYarn:
    estimate = next(some for some in quote.estimate.colours if some.colour == colour)
    return planned_yarn(estimate, made_rows(quote))


def used_as_planned(colour: str, quote: Quote, rows: int, times: float = 1.0) -> YarnUsed:
    left = left_of(colour, quote)
    return used(colour, times * left.planned.reach_m[rows] / left.metres_per_gram, rows)


@pytest.mark.parametrize("join", list(Join))
@pytest.mark.parametrize("quantity", [1, 3])
def test_row_by_row_the_yarn_is_that_of_the_estimate(join: Join, quantity: int) -> None:
    quote = sample_quote(sample_order(quantity=quantity), sample_workshop(habits=Habits(join=join)))
    for colour in quote.estimate.colours:
        planned = planned_yarn(colour, made_rows(quote))
        assert planned.all_m == pytest.approx(colour.metres)
        assert len(planned.rows) == quantity * len(
            [visit for visit in colour.visits if visit.pass_index]
        )


def test_a_row_takes_its_stitches_and_where_a_strand_begins_or_ends_its_tail() -> None:
    """By hand, row 1 of oat with its chain: the yarn of both passes and two tails."""
    oat = TEAL.estimate.colours[0]
    chain, row = oat.visits[:2]
    assert plan_of("oat", TEAL).reach_m[1] == pytest.approx(chain.yarn_m + row.yarn_m + 0.30)


def test_rows_of_other_colours_take_nothing() -> None:
    oat = plan_of("oat", TEAL)
    assert oat.rows == (1,)
    assert oat.reach_m[1] == oat.reach_m[-1]
    assert [oat.rows_upto(done) for done in (0, 1, 50)] == [0, 1, 1]


def test_before_the_first_row_all_is_as_it_was_planned() -> None:
    for left, colour in zip(yarn_left(QUOTE, ()), QUOTE.estimate.colours, strict=True):
        assert left.ratio == 1
        assert left.used_m == 0
        assert left.needed_m == pytest.approx(colour.metres)
        assert left.reserve == colour.reserve
        assert left.in_hand_m == pytest.approx(math.fsum(colour.balls_m))
        assert left.rows_lasting == left.rows_lasting_surely == left.rows_to_come
        assert left.is_enough


def test_yarn_used_as_planned_leaves_what_was_planned() -> None:
    left = left_of("teal", TEAL, used_as_planned("teal", TEAL, 40))
    assert left.ratio == pytest.approx(1)
    assert left.told_rows == 40
    assert left.needed_m == pytest.approx(left.planned.left_m(40))
    assert left.is_enough


def test_what_is_still_needed_goes_as_what_is_done_went() -> None:
    left = left_of("teal", TEAL, used_as_planned("teal", TEAL, 40, times=1.25), reached(40))
    assert left.ratio == pytest.approx(1.25)
    assert left.row_really_m == pytest.approx(1.25 * left.row_planned_m)
    assert left.needed_m == pytest.approx(1.25 * left.planned.left_m(40))
    assert left.whole_m == pytest.approx(1.25 * left.planned.reach_m[-1])


def test_a_row_was_planned_to_take_what_those_told_of_were() -> None:
    left = left_of("teal", TEAL, used_as_planned("teal", TEAL, 41))
    assert left.row_planned_m == pytest.approx(left.planned.reach_m[41] / 40)
    untold = left_of("teal", TEAL)
    rows = len(untold.planned.rows)
    assert untold.row_planned_m == pytest.approx(untold.planned.reach_m[-1] / rows)


def test_rows_done_since_yarn_was_told_of_count_as_they_go() -> None:
    line = used_as_planned("teal", TEAL, 40, times=1.1)
    then, now = left_of("teal", TEAL, line), left_of("teal", TEAL, line, reached(60))
    since_m = then.planned.reach_m[60] - then.planned.reach_m[40]
    assert now.used_m == pytest.approx(then.used_m + 1.1 * since_m)
    assert now.whole_m == pytest.approx(then.whole_m)
    assert now.told_rows == 40


def test_yarn_of_rows_that_were_ripped_back_is_there_again() -> None:
    line = used_as_planned("teal", TEAL, 40)
    back = left_of("teal", TEAL, line, reached(30))
    assert back.ratio == pytest.approx(1)
    assert back.used_m == pytest.approx(back.planned.reach_m[30])


def test_the_range_narrows_as_more_is_told() -> None:
    lefts = [left_of("teal", TEAL, used_as_planned("teal", TEAL, rows)) for rows in (10, 40, 90)]
    assert lefts[0].reserve > lefts[1].reserve > lefts[2].reserve
    for left in lefts:
        assert left.needed_low_m < left.needed_m < left.needed_high_m
    all_rows = made_rows(TEAL).all
    done = left_of("teal", TEAL, used_as_planned("teal", TEAL, all_rows), reached(all_rows))
    assert done.needed_m == pytest.approx(0, abs=1e-9)
    assert done.rows_to_come == done.rows_lasting == 0


def test_colours_that_were_not_told_of_stay_as_planned() -> None:
    assert left_of("rust", QUOTE, used("teal", 90, 20)).ratio == 1


def test_more_yarn_than_planned_asks_for_a_ball_of_the_lot_in_time() -> None:
    """The maker is told how many rows what she has lasts for, and how many there are to come."""
    lines = (taken("teal", 600, lot="771"), used_as_planned("teal", TEAL, 50, times=1.3))
    left = left_of("teal", TEAL, *lines, reached(50))
    assert left.lot == "771"
    assert 0 < left.rows_lasting < left.rows_to_come
    assert left.rows_lasting_surely <= left.rows_lasting
    short_m = left.needed_high_m - left.in_hand_m
    assert left.to_buy.skeins == math.ceil(short_m / 200)


def test_rows_lasting_are_counted_by_walking_them() -> None:
    """By hand: a row of teal takes row_m; one ball works as many as its metres less two tails."""
    left = left_of("teal", TEAL, taken("teal", 100))
    row_m = left.planned.reach_m[10] - left.planned.reach_m[9]
    assert left.rows_lasting == int((200 - 0.30) / row_m)


def test_a_strand_that_goes_on_has_its_tails_already() -> None:
    """By hand: after 10 rows the ball has what they left, and needs no further tails."""
    lines = (taken("teal", 100), used_as_planned("teal", TEAL, 10), reached(10))
    left = left_of("teal", TEAL, *lines)
    row_m = left.planned.reach_m[10] - left.planned.reach_m[9]
    assert left.rows_lasting == int((200 - 0.30) / row_m) - 9


def test_new_balls_are_the_cheapest_that_are_sold() -> None:
    wool = sample_yarn(put_ups=(SMALL, LARGE), stock=())
    quote = sample_quote(PLAIN, sample_workshop(yarns=(wool,)))
    left = left_of("teal", quote, taken("teal", 200))
    assert 600 < left.needed_high_m - left.in_hand_m < 800
    assert [(some.put_up, some.packs) for some in left.to_buy.bought] == [(LARGE, 1)]
    assert left.to_buy.cost == Decimal("17.00")


def test_what_is_taken_counts_and_not_what_was_planned() -> None:
    planned, all_taken = left_of("teal", TEAL), left_of("teal", TEAL, taken("teal", 350))
    assert planned.had.balls_m == (200,) * len(planned.had.balls_m)
    assert all_taken.had.balls_m == (700,)
    assert left_of("teal", TEAL, taken("teal", 300)).had.balls_m == (200, 200, 200)
    from_shelf = taken("teal", 300, from_shelf=True, lot="9")
    assert left_of("teal", TEAL, from_shelf).had.balls_m == (600,)


def test_the_lot_is_that_of_the_shelf_until_another_is_taken() -> None:
    quote = small_balls((Stock(colour="teal", weight_g=2000, lot="14"),))
    assert left_of("teal", quote).lot == "14"
    lines = (taken("teal", 100, lot="15"), taken("teal", 100))
    assert left_of("teal", quote, *lines).lot == "15"
    assert left_of("teal", TEAL).lot == ""


def test_all_that_there_is_being_used_nothing_is_in_hand() -> None:
    left = left_of("teal", TEAL, taken("teal", 100), used("teal", 120, 12), reached(12))
    assert left.in_hand_m == 0
    assert left.rows_lasting == 0
    assert left.to_buy.skeins


def test_yarn_told_of_before_any_row_of_the_colour_is_used_and_tells_no_ratio() -> None:
    left = left_of("teal", TEAL, used("teal", 3, 0))
    assert left.ratio == 1
    assert left.used_m == pytest.approx(6)


def test_extras_take_what_they_were_given_whatever_the_stitches_take() -> None:
    tassels = Extra(what="Tassels", cost=Decimal(0), colour="rust", yarn_m=30)
    quote = sample_quote(
        sample_order(design=PLAIN.design, extras=(tassels,)),
        sample_workshop(yarns=(sample_yarn(put_ups=(SMALL,), stock=()),)),
    )
    rust = left_of("rust", quote)
    assert (rust.needed_m, rust.needed_high_m, rust.rows_to_come) == (30, 30, 0)
    assert rust.is_enough
    assert rust.row_planned_m == 0
    assert left_of("rust", quote, taken("rust", 10)).to_buy.skeins == 1
    used_more = left_of("rust", quote, used("rust", 5, 3))
    assert (used_more.ratio, used_more.needed_m) == (1, 30)


@pytest.mark.parametrize("quantity", [1, 2])
def test_at_an_edge_rows_that_the_balls_cannot_finish_ask_for_more(quantity: int) -> None:
    wool = sample_yarn(put_ups=(SMALL,), stock=())
    shop = sample_workshop(yarns=(wool,), habits=Habits(join=Join.AT_AN_EDGE))
    quote = sample_quote(sample_order(design=PLAIN.design, extras=(), quantity=quantity), shop)
    assert left_of("teal", quote).is_enough
    few = left_of("teal", quote, taken("teal", 300))
    row_m = few.planned.reach_m[10] - few.planned.reach_m[9]
    assert few.rows_lasting == 3 * int((200 - 0.30) / row_m)
    assert few.to_buy.skeins >= math.ceil((few.needed_high_m - 600) / 200)


def test_a_row_begun_with_the_last_of_a_ball_is_not_one_that_it_lasts_for() -> None:
    left = left_of("teal", TEAL, taken("teal", 100))
    assert left.rows_lasting + 1 < left.rows_to_come
    assert left.rows_lasting_surely < left.rows_lasting
