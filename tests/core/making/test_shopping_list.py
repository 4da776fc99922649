"""The shopping list of several orders buys what their estimates need together, the shelf once."""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.estimate.ball_walk import walk_runs
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.runs import runs_of
from quoting.core.making.shopping_lines import BuyLine, ShoppingList
from quoting.core.making.shopping_list import ToMake, shopping_list
from quoting.core.order.design import ColourSource
from quoting.core.order.order import Extra, Order
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Stock
from tests.core.making.logs import log, reached, taken, used
from tests.examples import (
    LARGE,
    SMALL,
    WOOL,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

HAIR = 1e-6
SHOP = sample_workshop(yarns=(sample_yarn(put_ups=(SMALL,)),))
COT = sample_quote(workshop=SHOP)
"""207 g of oat, 183 g of teal and of rust with the reserve; 60 g of oat are on the shelf."""


def listed(*orders: ToMake | Quote, workshop: Workshop = SHOP) -> ShoppingList:
    to_make = [ToMake(quote=order) if isinstance(order, Quote) else order for order in orders]
    return shopping_list(to_make, workshop)


def balls(found: ShoppingList) -> dict[str, int]:
    counts: dict[str, int] = defaultdict(int)
    for line in found.to_buy:
        counts[line.colour] += sum(some.balls for some in line.bought)
    return dict(counts)


def test_the_list_of_one_order_is_what_its_estimate_chooses() -> None:
    chosen = {colour.colour: colour.choice.skeins for colour in COT.estimate.colours}
    found = listed(COT)
    assert balls(found) == chosen
    assert found.cost == sum(colour.choice.cost for colour in COT.estimate.colours)


def test_two_orders_by_hand() -> None:
    """By hand: two of 207 g take 5 balls of 100 g where each alone takes 3, for 4.60 each."""
    found = listed(COT, COT)
    assert balls(found) == {"oat": 5, "teal": 4, "rust": 4}
    assert found.cost == 13 * Decimal("4.60")
    assert [portion.order for portion in found.to_buy[0].portions] == [0, 1]
    assert found.to_buy[0].portions[0].grams == pytest.approx(207, abs=1)


def test_a_lot_is_taken_for_one_order_though_either_would_take_it() -> None:
    wool = sample_yarn(put_ups=(SMALL,), stock=(Stock(colour="teal", weight_g=190, lot="5"),))
    shop = sample_workshop(yarns=(wool,))
    quote = sample_quote(workshop=shop)
    assert all(not c.choice.skeins for c in quote.estimate.colours if c.colour == "teal")
    found = listed(quote, quote, workshop=shop)
    (line,) = found.shelf
    assert (line.colour, line.lot, len(line.portions)) == ("teal", "5", 1)
    assert line.grams == pytest.approx(183, abs=1)
    assert balls(found)["teal"] == 2


def test_a_spare_ball_adds_its_price_to_each_line() -> None:
    found = listed(COT)
    assert found.spare_cost == 3 * Decimal("4.60")
    assert [sum(some.balls for some in line.with_spare) for line in found.to_buy] == [4, 3, 3]


def test_a_spare_adds_nothing_where_a_pack_brings_it() -> None:
    pack = replace(SMALL, pack=4, price=Decimal("9.00"))
    shop = sample_workshop(yarns=(sample_yarn(put_ups=(SMALL, pack)),))
    (oat, *_) = listed(sample_quote(workshop=shop), workshop=shop).to_buy
    assert (sum(some.balls for some in oat.bought), oat.spare_cost) == (4, 0)


def test_yarn_that_is_told_to_be_there_is_not_bought_again() -> None:
    got = [taken("oat", 300), taken("teal", 200)]
    found = listed(ToMake(quote=COT, entries=log(*got)))
    assert balls(found) == {"rust": 2}
    assert found.there == ((0, "oat"), (0, "teal"))


def test_what_is_missing_is_bought_in_the_lot_that_is_there() -> None:
    entries = log(taken("teal", 100, lot="88"))
    found = listed(ToMake(quote=COT, entries=entries), COT)
    missing = [line for line in found.to_buy if line.lot]
    assert [(line.colour, line.lot, line.bought[0].balls) for line in missing] == [
        ("teal", "88", 1)
    ]
    assert missing[0].spare_cost == Decimal("4.60")
    assert balls(found)["teal"] == 1 + 2


def test_an_order_whose_rows_are_begun_has_its_yarn() -> None:
    found = listed(ToMake(quote=COT, entries=log(reached(10))))
    assert (found.to_buy, len(found.there)) == ((), 3)


def test_what_was_used_tells_that_a_colour_is_there() -> None:
    found = listed(ToMake(quote=COT, entries=log(used("rust", 1, rows=0))))
    assert (0, "rust") in found.there


def test_a_ball_that_is_sold_no_more_is_still_asked_for() -> None:
    other = sample_workshop(yarns=(sample_yarn(put_ups=(LARGE,)),))
    entries = log(taken("teal", 100, lot="88"))
    found = listed(ToMake(quote=COT, entries=entries), workshop=other)
    (missing,) = (line for line in found.to_buy if line.lot)
    assert missing.bought[0].put_up == SMALL


def test_a_yarn_that_the_workshop_has_no_more_is_bought_as_it_was() -> None:
    other = sample_workshop(
        yarns=(sample_yarn(name="fell dk", stock=()),),
        swatches=(),
    )
    assert {line.yarn for line in listed(COT, workshop=other).to_buy} == {WOOL}


def test_one_name_of_a_yarns_colour_is_bought_with_another() -> None:
    """The cream of one order is the oat of the other: one colour of one yarn."""
    design = sample_design(
        sections=(section("cream"),),
        first_rows=(),
        border=(),
        colours={"cream": ColourSource(yarn=WOOL, colour="oat")},
    )
    cream = sample_quote(sample_order(design=design, extras=()), SHOP)
    oats = [line for line in listed(COT, cream).to_buy if line.colour == "oat"]
    assert len(oats) == 1


def random_order(dice: random.Random, number: int) -> Order:
    colours = dice.sample(["oat", "teal", "rust"], dice.randint(1, 3))
    design = sample_design(
        width_cm=dice.choice((40, 60, 75)),
        height_cm=dice.choice((50, 70, 90)),
        sections=(section(*colours, rows=dice.choice((1, 2, 6))),),
        mix_lots=dice.random() < 0.3,
    )
    extras = (Extra(what="Tassels", colour="oat", yarn_m=12.0),) if dice.random() < 0.3 else ()
    return sample_order(
        title=f"Order {number}", design=design, extras=extras, quantity=dice.choice((1, 1, 2))
    )


def random_shop(dice: random.Random, join: Join = Join.ANYWHERE) -> Workshop:
    stock = tuple(
        Stock(
            colour=dice.choice(("oat", "teal", "rust")),
            weight_g=dice.choice((40, 90, 150, 260)),
            lot=dice.choice("AB"),
        )
        for _ in range(dice.randint(0, 4))
    )
    wool = sample_yarn(put_ups=dice.choice(((SMALL,), (SMALL, LARGE))), stock=stock)
    return sample_workshop(yarns=(wool,), habits=Habits(join=join))


def bought_apart(quotes: Sequence[Quote], shop: Workshop) -> Decimal:
    """Return the money where each order in its turn has what the ones before left of the shelf."""
    cost = Decimal(0)
    for quote in quotes:
        found = listed(sample_quote(quote.order, shop), workshop=shop)
        cost += found.cost
        for line in found.shelf:
            shop = without(shop, line.colour, line.lot, line.grams)
    return cost


def without(shop: Workshop, colour: str, lot: str, grams: float) -> Workshop:
    """Return the workshop with so much less of a lot, its largest balls begun first."""
    (wool,) = shop.yarns
    rest = []
    for ball in sorted(wool.stock, key=lambda ball: -ball.weight_g):
        gone = min(ball.weight_g, grams) if (ball.colour, ball.lot) == (colour, lot) else 0.0
        grams -= gone
        if ball.weight_g - gone > 0.01:
            rest.append(replace(ball, weight_g=ball.weight_g - gone))
    return replace(shop, yarns=(replace(wool, stock=tuple(rest)),))


def walks_through(line: BuyLine, quotes: Sequence[Quote]) -> bool:
    """Work all orders of a line, one after another, with the reserve, from the balls bought."""
    runs, extras_m = [], 0.0
    for portion in line.portions:
        quote = quotes[portion.order]
        (colour,) = (c for c in quote.estimate.colours if c.source.colour == line.colour)
        visits = [visit.with_more(colour.reserve) for visit in colour.visits]
        runs += runs_of(visits) * colour.blankets
        extras_m += colour.yarn.extras_m
    balls_m = [b.put_up.length_m for b in line.bought for _ in range(b.balls)]
    walk = walk_runs(
        line.colour, runs, Supply(balls_m=balls_m), tail_m=0.15, blankets=1, join=Join.ANYWHERE
    )
    return walk.missing_m <= HAIR and extras_m <= walk.left_m + HAIR


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(25))
def test_three_orders_get_what_they_need_together_for_no_more_than_apart(seed: int) -> None:
    dice = random.Random(seed)
    shop = random_shop(dice)
    quotes = [sample_quote(random_order(dice, number), shop) for number in range(3)]
    found = listed(*quotes, workshop=shop)
    mixing = {n for n, quote in enumerate(quotes) if quote.order.design.mix_lots}
    got: dict[tuple[int, str], list[float]] = defaultdict(list)
    for line in (*found.shelf, *found.to_buy):
        for portion in line.portions:
            got[portion.order, line.colour].append(portion.grams)
    for number, quote in enumerate(quotes):
        for colour in quote.estimate.colours:
            grams = got[number, colour.source.colour]
            joins_m = max(0, len(colour.balls_m) - 1) * 2 * colour.tail_m
            needed_g = (colour.metres_to_buy - joins_m) / colour.metres_per_gram
            assert sum(grams) >= needed_g - HAIR
            assert number in mixing or len(grams) == 1
    for line in found.shelf:
        held = [
            b.weight_g for b in shop.yarns[0].stock if (b.colour, b.lot) == (line.colour, line.lot)
        ]
        assert line.grams <= sum(held) + HAIR
    for line in found.to_buy:
        if not mixing & {portion.order for portion in line.portions}:
            assert walks_through(line, quotes)
    assert found.cost <= bought_apart(quotes, shop)


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(6))
def test_at_an_edge_each_order_has_no_fewer_balls_than_its_estimate_asks(seed: int) -> None:
    dice = random.Random(seed)
    shop = random_shop(dice, Join.AT_AN_EDGE)
    bare = replace(shop, yarns=(replace(shop.yarns[0], put_ups=(SMALL,), stock=()),))
    quotes = [sample_quote(random_order(dice, number), bare) for number in range(3)]
    wanted: dict[str, int] = defaultdict(int)
    for quote in quotes:
        for colour in quote.estimate.colours:
            wanted[colour.source.colour] += colour.choice.skeins
    assert balls(listed(*quotes, workshop=bare)) == dict(wanted)
    assert listed(*quotes, workshop=shop).cost <= listed(*quotes, workshop=bare).cost
