"""What is told of the balls to have: metres to buy, grams from stock, colours of extras."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from quoting.core.estimate import ColourEstimate
from quoting.core.order import Extra
from quoting.core.skeins import Bought, SkeinChoice
from quoting.core.workshop import Habits
from quoting.core.yarns import PutUp, Stock
from tests.core.plain_yarn import ball, put_up
from tests.examples import sample_design, sample_order, sample_quote, sample_workshop, sample_yarn

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


def test_grams_from_stock_are_those_of_the_balls_that_were_there() -> None:
    held = Stock(colour="teal", weight_g=95)
    teal = colours(yarn={"stock": (held,)}, design=sample_design(mix_lots=True))["teal"]
    assert teal.choice.stock == (held,)
    assert teal.choice.bought
    assert 95 - 2 * 0.15 / teal.metres_per_gram <= teal.from_stock_g <= 95
    assert teal.from_stock_g < teal.grams


def test_an_extra_that_takes_no_yarn_of_its_colour_asks_for_no_ball_of_it() -> None:
    label = Extra(what="Name label", colour="plum")
    fringe = Extra(what="Fringe", colour="moss", yarn_m=20)
    assert set(colours(extras=(label, fringe))) == {"oat", "teal", "rust", "moss"}


def test_the_longest_ball_to_be_had_is_a_new_one_else_one_from_stock() -> None:
    new = Bought(put_up=put_up(50, 100, "3"), packs=2)
    assert SkeinChoice(bought=(new,), stock=(ball(400),)).full_ball_m(2.0) == 100
    assert SkeinChoice(stock=(ball(60), ball(75))).full_ball_m(2.0) == 150
    assert SkeinChoice().full_ball_m(2.0) == 0
