"""Skeins: the cheapest whole balls, case by case."""

from __future__ import annotations

from decimal import Decimal
from functools import reduce
from operator import add

import pytest

from quoting.core.estimate.skeins import Bought, SkeinChoice
from quoting.core.ground.errors import Refused
from tests.core.plain_yarn import ball, choose, put_up, yarn


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
    need_m = reduce(add, [0.1] * 1000)  # newer Pythons' sum would hold it
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


def test_of_equals_the_larger_is_bought_wherever_it_is_listed() -> None:
    light, heavy = put_up(50, 100, "2.50"), put_up(51, 100, "2.50")
    assert choose(90, yarn(light, heavy)).bought[0].put_up == heavy
    assert choose(90, yarn(heavy, light)).bought[0].put_up == heavy


def test_a_lot_that_is_enough_is_taken_before_any_is_bought() -> None:
    choice = choose(150, yarn(SMALL, stock=(ball(40, "A"), ball(300, "B"))))
    assert (choice.stock, choice.bought) == ((ball(300, "B"),), ())
    assert choice.cost == 0
    assert choice.balls_m(2) == (600,)


def test_a_mixed_order_too_takes_one_lot_that_is_enough() -> None:
    assert choose(90, yarn(SMALL, stock=(ball(300, "B"),)), mix=True).stock == (ball(300, "B"),)


def test_of_the_lots_the_one_with_least_left_over_is_taken() -> None:
    stock = (ball(90, "A"), ball(40, "B"), ball(45, "B"), ball(99, "C"))
    assert choose(165, yarn(SMALL, stock=stock)).stock == (stock[2], stock[1])


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


def test_lots_that_are_enough_together_are_used_before_anything_is_bought() -> None:
    """163 g of lots of 60 and 140 g are charged 7.50; two new balls would be 9.60."""
    wool = yarn(LARGE, stock=(ball(60, "A"), ball(140, "B")))
    assert choose(326, wool, mix=True) == SkeinChoice(stock=(ball(140, "B"), ball(60, "A")))
    assert choose(326, wool).skeins == 2
    assert choose(400, wool, mix=True).bought


def test_of_lots_that_may_be_mixed_those_with_least_left_over_are_taken() -> None:
    wool = yarn(LARGE, stock=(ball(90, "A"), ball(40, "B"), ball(45, "C"), ball(70, "D")))
    assert choose(190, wool, mix=True).stock == (ball(70, "D"), ball(40, "B"))


def test_a_ball_no_longer_than_its_tails_is_never_taken() -> None:
    with pytest.raises(Refused) as refused:
        choose(1, yarn(put_up(1, 0.3, "0.01")))
    assert [(m.path, m.code) for m in refused.value.mistakes] == [("yarns", "balls-too-short")]
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


def test_what_is_bought_counts_its_balls_and_cost_unrounded() -> None:
    some = Bought(put_up=put_up(50, 100, "7.005", pack=5), packs=3)
    assert (some.balls, some.cost) == (15, Decimal("21.015"))
