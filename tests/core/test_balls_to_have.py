"""What is told of the balls to have: metres to buy, grams from stock, colours of extras."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.order.order import Extra
from quoting.core.plan.passes import Edge
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.swatches import Run
from quoting.core.workshop.yarns import PutUp, Stock
from tests.core.plain_yarn import put_up
from tests.examples import (
    sample_design,
    sample_order,
    sample_quote,
    sample_swatch,
    sample_workshop,
    sample_yarn,
    section,
)

PLAIN = Habits(allowance=0.1)


def colours(**changes: Any) -> dict[str, ColourEstimate]:
    """Return what each colour takes of an order of one blanket."""
    habits = changes.pop("habits", PLAIN)
    yarns = (sample_yarn(**changes.pop("yarn", {"stock": ()})),)
    order = sample_order(**({"extras": ()} | changes))
    quote = sample_quote(order, sample_workshop(habits=habits, yarns=yarns))
    return {one.colour: one for one in quote.estimate.colours}


def test_a_single_ball_is_bought_without_the_tails_of_a_join() -> None:
    huge = PutUp(weight_g=2000, length_m=4000, price=Decimal(80))
    teal = colours(yarn={"put_ups": (huge,), "stock": ()})["teal"]
    assert len(teal.balls_m) == 1
    assert teal.metres_to_buy == pytest.approx(1.1 * teal.bare_m)


def test_each_ball_after_the_first_is_bought_with_two_tails_more() -> None:
    small = PutUp(weight_g=50, length_m=100, price=Decimal(3))
    teal = colours(yarn={"put_ups": (small,), "stock": ()})["teal"]
    assert len(teal.balls_m) > 2
    assert teal.metres_to_buy == pytest.approx(
        1.1 * teal.bare_m + 2 * 0.15 * (len(teal.balls_m) - 1)
    )


def test_grams_from_stock_leave_out_the_scrap_that_no_row_could_be_begun_with() -> None:
    """At an edge a ball is laid aside with less than a row of 98 stitches and their chains."""
    held = Stock(colour="teal", weight_g=95)
    habits = Habits(allowance=0.1, join=Join.AT_AN_EDGE)
    mixed = sample_design(mix_lots=True)
    teal = colours(yarn={"stock": (held,)}, design=mixed, habits=habits)["teal"]
    assert teal.choice.stock == (held,)
    assert teal.choice.bought
    scrap_m = (95 - teal.from_stock_g) * teal.metres_per_gram
    row_m = max(strand.yarn_m / len(strand.stretches) for strand in teal.walk.strands)
    assert 0 < scrap_m < row_m
    assert teal.from_stock_g * teal.metres_per_gram == pytest.approx(teal.walk.ball_used_m[0])


def test_where_stock_is_enough_the_yarn_of_extras_is_from_stock_too() -> None:
    fringe = Extra(what="Fringe", colour="teal", yarn_m=20)
    stock = (Stock(colour="teal", weight_g=400),)
    teal = colours(yarn={"stock": stock}, extras=(fringe,))["teal"]
    assert not teal.choice.bought
    assert teal.from_stock_g == pytest.approx(teal.grams)
    assert teal.grams == pytest.approx(
        colours()["teal"].grams + 20 / teal.metres_per_gram, rel=0.01
    )


def test_an_extra_that_takes_no_yarn_asks_for_no_ball() -> None:
    label = Extra(what="Name label")
    fringe = Extra(what="Fringe", colour="moss", yarn_m=20)
    assert set(colours(extras=(label, fringe))) == {"oat", "teal", "rust", "moss"}


def test_a_row_that_only_a_large_ball_can_finish_is_not_joined_for_cheap_small_ones() -> None:
    """By hand: a row takes more than 20 m; every 20 m more are cheapest in two small balls."""
    sold = (put_up(30, 30, "3.10"), put_up(10, 10, "1.00"))
    swatch = sample_swatch(piece=None, run=Run(stitches=20, length_cm=200))
    workshop = sample_workshop(
        habits=Habits(join=Join.AT_AN_EDGE, allowance=0.0, tail_cm=1),
        yarns=(sample_yarn(put_ups=sold, stock=()),),
        swatches=(swatch,),
    )
    two_rows = sample_design(
        stitches=190,
        mix_lots=True,
        first_rows=(),
        border=(),
        sections=(section("teal", repeats=2),),
    )
    (teal,) = sample_quote(sample_order(design=two_rows, extras=()), workshop).estimate.colours
    assert [(some.put_up.length_m, some.packs) for some in teal.choice.bought] == [(30, 2)]
    assert (teal.walk.missing_m, teal.walk.long_pass) == (0, False)
    assert Edge.WITHIN not in {strand.ends.edge for strand in teal.walk.strands}


def test_the_yarn_of_an_extra_is_given_and_has_no_reserve() -> None:
    fringe = Extra(what="Fringe", colour="teal", yarn_m=200)
    with_it, without = colours(extras=(fringe,))["teal"], colours()["teal"]
    assert with_it.bare_m == pytest.approx(without.bare_m + 200)
    joins = len(with_it.balls_m) - len(without.balls_m)
    assert with_it.metres_to_buy == pytest.approx(without.metres_to_buy + 200 + joins * 2 * 0.15)


def test_what_an_extra_takes_from_the_shelf_counts_as_taken_from_it() -> None:
    """By hand: the stock outlasts the blanket and the fringe, and the reserve asks for one more."""
    fringe = Extra(what="Fringe", colour="teal", yarn_m=150)
    habits = Habits(allowance=0.5)
    mixed = sample_design(mix_lots=True)
    bare_g = colours(design=mixed)["teal"].metres / 2
    held = Stock(colour="teal", weight_g=round(bare_g) + 80)
    teal = colours(yarn={"stock": (held,)}, design=mixed, habits=habits, extras=(fringe,))["teal"]
    assert (teal.choice.stock, teal.choice.skeins) == ((held,), 1)
    assert teal.from_stock_g == pytest.approx(teal.grams)
    assert teal.grams == pytest.approx(bare_g + 150 / 2, abs=1)


def test_what_is_charged_from_the_shelf_is_never_more_than_is_on_it() -> None:
    fringe = Extra(what="Fringe", colour="teal", yarn_m=150)
    held = Stock(colour="teal", weight_g=75)
    mixed = sample_design(mix_lots=True)
    teal = colours(yarn={"stock": (held,)}, design=mixed, extras=(fringe,))["teal"]
    assert teal.from_stock_g == pytest.approx(75)
    assert teal.choice.bought
