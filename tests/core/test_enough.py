"""Balls that were chosen are enough, and none of their packs could be left out."""

from __future__ import annotations

import random
from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.estimate.enough import metres_short, metres_spare, packs_enough
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.skeins import Bought
from quoting.core.order.order import Extra, Order
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import PutUp, Stock
from tests.examples import (
    COLOURS,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

YARD = 0.9144
"""Metres (NIST Handbook 44, appendix C)."""


def random_order(chance: random.Random) -> Order:
    """Return an order of a size, stripes, extras and quantity left to chance."""
    colours = chance.sample(list(COLOURS), chance.randint(1, 4))
    design = sample_design(
        width_cm=chance.uniform(30, 90),
        height_cm=chance.uniform(40, 90),
        sections=(section(*colours, rows=chance.randint(1, 3)),),
        mix_lots=chance.random() < 0.5,
    )
    fringe = Extra(what="Fringe", colour=colours[0], yarn_m=chance.choice([31.0, 200.0]))
    extras = chance.choice([(), (fringe,)])
    return sample_order(design=design, quantity=chance.randint(1, 3), extras=extras)


def random_put_up(chance: random.Random) -> PutUp:
    """Return balls of any length, many of them labelled in yards, priced by their weight."""
    grams = chance.choice([25, 50, 100, 56.7])
    length = grams * chance.uniform(1.5, 2.5)
    price = Decimal(str(round(grams * 0.045 + chance.uniform(0, 0.4), 2)))
    length_m = round(length) * YARD if chance.random() < 0.5 else round(length, 3)
    return PutUp(weight_g=grams, length_m=length_m, price=price, pack=chance.choice([1, 1, 1, 3]))


def random_workshop(chance: random.Random) -> Workshop:
    """Return a workshop with yarn on its shelf and several ways to buy it."""
    stock = tuple(
        Stock(colour=chance.choice(list(COLOURS)), weight_g=chance.uniform(5, 300), lot=lot)
        for lot in ("", "12", "12", "771")
    )
    put_ups = tuple({random_put_up(chance) for _ in range(chance.randint(1, 3))})
    habits = Habits(
        tail_cm=chance.choice([10, 15, 20.5]),
        join=chance.choice(list(Join)),
        allowance=chance.choice([None, None, 0.0, 0.1]),
    )
    return sample_workshop(yarns=(sample_yarn(put_ups=put_ups, stock=stock),), habits=habits)


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(300))
def test_as_chosen_no_colour_is_short_and_no_pack_could_be_left_out(seed: int) -> None:
    """At an edge more packs are bought than the metres ask for: whole rows ask for them."""
    chance = random.Random(seed)
    shop = random_workshop(chance)
    for colour in sample_quote(random_order(chance), shop).estimate.colours:
        assert metres_short(colour) == 0
        for some in colour.choice.bought:
            enough = packs_enough(colour, some)
            assert enough == some.packs or (
                shop.habits.join is Join.AT_AN_EDGE and enough < some.packs
            )


def with_packs(colour: ColourEstimate, packs: int) -> tuple[ColourEstimate, Bought]:
    """Return a colour as it would be with other packs of its one put-up, and these."""
    some = replace(colour.choice.bought[0], packs=packs)
    return replace(colour, choice=replace(colour.choice, bought=(some,))), some


@pytest.mark.parametrize("packs", [1, 2, 3, 5])
def test_packs_taken_away_are_missed_and_packs_too_many_are_told(packs: int) -> None:
    """Of balls of 100 m and two tails of 15 cm each brings 99.7 m to what is to be had.

    Teal takes some 326 m; with a reserve of a tenth some 359 m are to be had: four balls.
    """
    ball = PutUp(weight_g=50, length_m=100, price=Decimal("2.30"))
    shop = sample_workshop(
        yarns=(sample_yarn(put_ups=(ball,), stock=()),), habits=Habits(allowance=0.1)
    )
    teal = next(c for c in sample_quote(None, shop).estimate.colours if c.colour == "teal")
    chosen = teal.choice.bought[0].packs
    changed, some = with_packs(teal, packs)
    assert packs_enough(changed, some) == chosen
    missing = (chosen - packs) * (100 - 2 * 0.15) - metres_spare(teal)
    assert metres_short(changed) == pytest.approx(max(0, missing))
