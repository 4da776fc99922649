"""Skeins: the cheapest whole balls, against every choice there is and against a MILP solver."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

import pulp
import pytest

from quoting.core.errors import Refused
from quoting.core.skeins import Bought, SkeinChoice, choose_skeins
from quoting.core.yarns import PutUp, Stock, Yarn

TAIL_M = 0.15
COLOUR = "moss"


def put_up(weight_g: float, length_m: float, price: str, pack: int = 1) -> PutUp:
    return PutUp(weight_g=weight_g, length_m=length_m, price=Decimal(price), pack=pack)


def ball(weight_g: float, lot: str = "", colour: str = COLOUR) -> Stock:
    return Stock(colour=colour, weight_g=weight_g, lot=lot)


def yarn(*sold: PutUp, stock: tuple[Stock, ...] = ()) -> Yarn:
    colours = {COLOUR: "#556b2f", "rust": "#b7410e"}
    return Yarn(name="Plain", put_ups=sold, colours=colours, stock=stock)


def choose(need_m: float, wool: Yarn, *, tail_m: float = TAIL_M, mix: bool = False) -> SkeinChoice:
    return choose_skeins(need_m, wool, COLOUR, tail_m=tail_m, mix_lots=mix)


def packs(choice: SkeinChoice) -> list[tuple[float, int, int]]:
    return [(some.put_up.weight_g, some.put_up.pack, some.packs) for some in choice.bought]


SMALL, LARGE = put_up(50, 100, "2.50"), put_up(100, 200, "4.80")


@pytest.mark.parametrize("mix", [False, True])
def test_nothing_is_taken_for_no_need(mix: bool) -> None:  # noqa: FBT001 - a parameter
    assert choose(0, yarn(SMALL, stock=(ball(50),)), mix=mix) == SkeinChoice()


def test_a_ball_is_enough_for_its_own_length_and_no_more() -> None:
    assert choose(100, yarn(SMALL)).skeins == 1
    assert choose(100.000001, yarn(SMALL)).skeins == 2


def test_each_ball_after_the_first_costs_two_more_tails() -> None:
    assert choose(199.7, yarn(SMALL)).skeins == 2
    assert choose(199.71, yarn(SMALL)).skeins == 3


def test_a_need_shorter_than_its_tails_still_takes_a_ball() -> None:
    assert choose(0.1, yarn(SMALL)).skeins == 1


def test_sums_that_a_float_cannot_hold_do_not_cost_a_ball() -> None:
    need_m = sum([0.1] * 1000)
    assert need_m != 100
    assert choose(need_m + 1e-10, yarn(SMALL)).skeins == 1


def test_the_cheaper_put_up_is_bought_whole() -> None:
    assert packs(choose(250, yarn(SMALL, LARGE))) == [(50, 1, 3)]
    assert packs(choose(390, yarn(SMALL, LARGE))) == [(100, 1, 2)]


def test_only_a_mixed_order_joins_two_put_ups() -> None:
    choice = choose(250, yarn(SMALL, LARGE), mix=True)
    assert packs(choice) == [(100, 1, 1), (50, 1, 1)]
    assert choice.cost == Decimal("7.30")
    assert choice.balls_m(2) == (200, 100)


def test_singles_and_packs_of_the_same_ball_go_together() -> None:
    wool = yarn(SMALL, put_up(50, 100, "10.00", pack=5))
    choice = choose(650, wool)
    assert packs(choice) == [(50, 5, 1), (50, 1, 2)]
    assert (choice.skeins, choice.cost, choice.bought_g) == (7, Decimal("15.00"), 350)


def test_a_pack_is_bought_for_fewer_balls_where_it_is_cheaper() -> None:
    wool = yarn(SMALL, put_up(50, 100, "7.00", pack=5))
    assert packs(choose(290, wool)) == [(50, 5, 1)]


def test_at_one_cost_the_least_is_left_over() -> None:
    wool = yarn(put_up(50, 100, "2.50"), put_up(50, 95, "2.50"))
    assert [some.put_up.length_m for some in choose(180, wool).bought] == [95]


def test_at_one_cost_and_length_the_fewest_balls_are_taken() -> None:
    wool = yarn(put_up(50, 100, "2.50"), put_up(100, 200, "5.00"))
    assert packs(choose(200, wool, tail_m=0, mix=True)) == [(100, 1, 1)]


def test_of_equals_the_first_listed_is_bought() -> None:
    first, second = put_up(50, 100, "2.50"), put_up(51, 100, "2.50")
    assert choose(90, yarn(first, second)).bought[0].put_up == first
    assert choose(90, yarn(second, first)).bought[0].put_up == second


def test_a_lot_that_is_enough_is_taken_before_any_is_bought() -> None:
    choice = choose(150, yarn(SMALL, stock=(ball(40, "A"), ball(300, "B"))))
    assert (choice.stock, choice.bought) == ((ball(300, "B"),), ())
    assert choice.cost == 0
    assert choice.balls_m(2) == (600,)


def test_a_mixed_order_too_takes_one_lot_that_is_enough() -> None:
    assert choose(90, yarn(SMALL, stock=(ball(300, "B"),)), mix=True).stock == (ball(300, "B"),)


def test_of_the_lots_the_one_with_least_left_over_is_taken() -> None:
    stock = (ball(90, "A"), ball(40, "B"), ball(45, "B"), ball(99, "C"))
    assert choose(165, yarn(SMALL, stock=stock)).stock == stock[1:3]


def test_only_the_balls_needed_are_taken_from_a_lot() -> None:
    stock = (ball(50, "A"), ball(35, "A"), ball(30, "A"))
    assert choose(90, yarn(SMALL, stock=stock)).stock == (ball(50, "A"),)
    assert choose(60, yarn(SMALL, stock=stock)).stock == (ball(30, "A"),)


def test_balls_without_a_lot_are_not_one_lot() -> None:
    stock = (ball(40), ball(40))
    choice = choose(150, yarn(SMALL, stock=stock))
    assert (choice.stock, choice.skeins) == ((), 2)
    assert choose(150, yarn(SMALL, stock=(ball(40, "A"), ball(40, "A")))).skeins == 0


def test_another_colour_in_stock_is_left_alone() -> None:
    assert choose(50, yarn(SMALL, stock=(ball(100, colour="rust"),))).stock == ()


def test_a_mixed_order_fills_up_what_is_in_stock() -> None:
    choice = choose(190, yarn(SMALL, stock=(ball(48, "A"),)), mix=True)
    assert (choice.stock, choice.skeins) == ((ball(48, "A"),), 1)
    assert choice.balls_m(2) == (96, 100)


def test_a_ball_no_longer_than_its_tails_is_never_taken() -> None:
    with pytest.raises(Refused) as refused:
        choose(1, yarn(put_up(1, 0.3, "0.01")))
    assert [(m.place, m.code) for m in refused.value.mistakes] == [("put_ups", "balls-too-short")]
    assert packs(choose(1, yarn(put_up(1, 0.3, "0.01"), SMALL), mix=True)) == [(50, 1, 1)]


def test_stock_serves_where_what_is_sold_is_too_short() -> None:
    wool = yarn(put_up(0.1, 0.2, "0.01"), stock=(ball(40), ball(35)))
    assert choose(140, wool, mix=True).stock == wool.stock
    with pytest.raises(Refused):
        choose(160, wool, mix=True)


def test_prices_in_proportion_are_no_harder_for_a_very_long_need() -> None:
    sold = [put_up(grams, 2 * grams, str(Decimal("0.046") * grams)) for grams in (50, 100, 200)]
    choice = choose(30_000, yarn(*sold), mix=True)
    # 15 000 g hold 30 000 m, less what the joins take; of 50 g more, 75 joins take 22.5 m of 100
    assert choice.cost == Decimal("692.30")


def test_one_large_ball_is_taken_before_four_small_ones_that_cost_and_measure_the_same() -> None:
    wool = yarn(put_up(100, 200, "4.00"), put_up(50, 100, "2.00"), put_up(200, 400, "8.00"))
    assert packs(choose(380, wool, mix=True)) == packs(choose(380, yarn(put_up(200, 400, "8.00"))))


# Every choice, written out: the reference for random cases.

Ranking = tuple[Fraction, int, int, tuple[int, ...]]


def gain_um(length_m: float, tail_m: float) -> int:
    return round((length_m - 2 * tail_m) * 1_000_000)


def exact(value: float) -> Fraction:
    return Fraction(str(value))


def every(wool: Yarn, target: int, tail_m: float, *, mix: bool) -> Iterator[tuple[int, ...]]:
    """Give the counts (stock as listed, then put-ups as listed) of each choice allowed."""
    held, sold = len(wool.stock), wool.put_ups
    gains = [one.pack * gain_um(one.length_m, tail_m) for one in sold]
    most = [-(-target // gain) if gain > 0 else 0 for gain in gains]
    shelves = list(itertools.product((0, 1), repeat=held))
    shops = list(itertools.product(*(range(count + 1) for count in most)))
    if mix:
        yield from (shelf + shop for shelf in shelves for shop in shops)
    else:
        balls = [(one.weight_g, one.length_m) for one in sold]
        for shop in shops:
            if len({one for one, count in zip(balls, shop, strict=True) if count}) == 1:
                yield (0,) * held + shop


def from_one_lot(wool: Yarn) -> Iterator[tuple[int, ...]]:
    for shelf in itertools.product((0, 1), repeat=len(wool.stock)):
        lots = {
            one.lot or str(number)
            for number, (one, taken) in enumerate(zip(wool.stock, shelf, strict=True))
            if taken
        }
        if len(lots) == 1:
            yield shelf + (0,) * len(wool.put_ups)


def things(wool: Yarn, tail_m: float) -> list[tuple[Fraction, int, int, int]]:
    """Return the cost, gain, length and balls of everything there is, as listed."""
    per_gram = min(Fraction(p.price) / (p.pack * exact(p.weight_g)) for p in wool.put_ups)
    lengths = [one.weight_g * wool.metres_per_gram for one in wool.stock]
    return [
        (per_gram * exact(one.weight_g), gain_um(length, tail_m), gain_um(length, 0), 1)
        for one, length in zip(wool.stock, lengths, strict=True)
    ] + [
        (
            Fraction(one.price),
            one.pack * gain_um(one.length_m, tail_m),
            one.pack * gain_um(one.length_m, 0),
            one.pack,
        )
        for one in wool.put_ups
    ]


def is_enough(counts: tuple[int, ...], wool: Yarn, tail_m: float, target: int) -> bool:
    taken = [(x[1], n) for x, n in zip(things(wool, tail_m), counts, strict=True) if n]
    return all(gain > 0 for gain, _ in taken) and sum(g * n for g, n in taken) >= target


def rank(counts: tuple[int, ...], wool: Yarn, tail_m: float) -> Ranking:
    """Cost, length, balls and the order of listing, counted out in full."""
    taken = list(zip(things(wool, tail_m), counts, strict=True))
    return (
        sum((one[0] * count for one, count in taken), Fraction(0)),
        sum(one[2] * count for one, count in taken),
        sum(one[3] * count for one, count in taken),
        tuple(-count for count in counts),
    )


def best_by_hand(need_m: float, wool: Yarn, tail_m: float, *, mix: bool) -> Ranking | None:
    target = max(1, math.ceil((need_m - 2 * tail_m - 1e-9) * 1_000_000))
    lots = [c for c in from_one_lot(wool) if is_enough(c, wool, tail_m, target)]
    if lots:
        return min((rank(counts, wool, tail_m) for counts in lots), key=lambda r: r[1:])
    choices = (
        c for c in every(wool, target, tail_m, mix=mix) if is_enough(c, wool, tail_m, target)
    )
    return min((rank(counts, wool, tail_m) for counts in choices), default=None)


def ranked(choice: SkeinChoice, wool: Yarn, tail_m: float) -> Ranking:
    """Rank a choice; equal balls are told apart as the first listed, so list each only once."""
    bought = {some.put_up: some.packs for some in choice.bought}
    counts = [int(one in choice.stock) for one in wool.stock]
    counts += [bought.get(one, 0) for one in wool.put_ups]
    return rank(tuple(counts), wool, tail_m)


def random_yarn(dice: random.Random, *, held: int, sold: int) -> Yarn:
    """Make a yarn in which ties are common: few weights, and prices often in proportion."""
    kinds = {}
    for _ in range(dice.randint(1, sold)):
        grams, pack = dice.choice((25, 50, 50, 100)), dice.choice((1, 1, 1, 2, 3))
        length_m = grams * 2 + dice.choice((0, 0, 0, 5, -7.5))
        price = pack * grams * Decimal("0.04") + dice.choice((0, 0, 0, 1, -1)) * Decimal("0.1")
        kinds[grams, length_m, pack] = put_up(grams, length_m, str(price), pack)
    stock = {
        ball(dice.choice((0.1, 10, 25, 40, 50)), dice.choice(("", "A", "B"))): None
        for _ in range(dice.randint(0, held))
    }
    return yarn(*kinds.values(), stock=tuple(stock))


@pytest.mark.parametrize("mix", [False, True])
@pytest.mark.parametrize("seed", range(6))
def test_no_choice_there_is_beats_the_one_chosen(
    seed: int,
    mix: bool,  # noqa: FBT001 - a parameter
) -> None:
    dice = random.Random(seed)
    for _ in range(250):
        wool, tail_m = random_yarn(dice, held=4, sold=3), dice.choice((0.0, 0.15, 0.3))
        need_m = dice.choice((dice.uniform(0.01, 330), 10 * dice.randint(1, 33) - 2 * tail_m))
        choice = choose(need_m, wool, tail_m=tail_m, mix=mix)
        expected = best_by_hand(need_m, wool, tail_m, mix=mix)
        assert ranked(choice, wool, tail_m) == expected, (need_m, wool, tail_m)


def milp_cost(need_m: float, wool: Yarn, tail_m: float) -> float:
    """Return the least cost of new skeins, put-ups mixed, by PuLP's bundled CBC solver."""
    problem = pulp.LpProblem("skeins", pulp.LpMinimize)
    counts = [
        pulp.LpVariable(f"packs{number}", lowBound=0, cat="Integer")
        for number in range(len(wool.put_ups))
    ]
    both = list(zip(wool.put_ups, counts, strict=True))
    problem += pulp.lpSum(float(one.price) * count for one, count in both)
    gains_m = [one.pack * (one.length_m - 2 * tail_m) * count for one, count in both]
    problem += pulp.lpSum(gains_m) >= need_m - 2 * tail_m
    problem.solve(pulp.PULP_CBC_CMD(msg=False, gapRel=0, gapAbs=0))
    assert pulp.LpStatus[problem.status] == "Optimal"
    return float(pulp.value(problem.objective))


def any_yarn(dice: random.Random) -> Yarn:
    """Make a yarn of odd lengths and prices, larger balls mostly cheaper for a gram."""
    weights = dice.sample((25, 50, 75, 100, 150, 200), dice.randint(2, 4))
    return yarn(
        *(
            put_up(
                grams,
                round(grams * dice.uniform(1.7, 2.3), 1),
                str(round(grams ** dice.uniform(0.9, 1.0) * 0.06, 2)),
            )
            for grams in weights
        )
    )


@pytest.mark.filterwarnings("ignore::DeprecationWarning")  # of PuLP, about its next version
@pytest.mark.parametrize("seed", range(4))
def test_the_cost_is_that_of_an_exact_solver(seed: int) -> None:
    """A MILP of the same definition, solved by CBC with no gap allowed."""
    dice = random.Random(seed)
    for _ in range(75):
        need_m, wool = round(dice.uniform(50, 4000), 2), any_yarn(dice)
        cost = choose(need_m, wool, mix=True).cost
        assert float(cost) == pytest.approx(milp_cost(need_m, wool, TAIL_M), abs=1e-6)


def test_what_is_bought_counts_its_balls_and_cost_unrounded() -> None:
    some = Bought(put_up=put_up(50, 100, "7.005", pack=5), packs=3)
    assert (some.balls, some.cost) == (15, Decimal("21.015"))
