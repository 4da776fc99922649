"""Skeins for several orders together: the shelf counts once, what is left of a ball goes on."""

from __future__ import annotations

from decimal import Decimal

import pytest

from quoting.core.estimate.fitting import fit, most_held
from quoting.core.ground.errors import Refused
from tests.core.needs import apart, bought, need, taken, together
from tests.core.plain_yarn import COLOUR, ball, put_up, yarn

SMALL = put_up(100, 200, "4.60")
LARGE = put_up(400, 800, "17.00")
MORE_THAN_A_BALL_ALONE = 200.1


def test_two_orders_by_hand() -> None:
    """By hand, tails of 0.15 m: a ball of 200 m brings 199.7, and the first 0.3 more.

    350 m take 2 balls and 420 m take 3; 770 m take 4, as 3 bring 599.4.
    """
    needs = [need(350), need(420)]
    assert bought(apart(needs, yarn(SMALL))) == {100: 5}
    assert bought(together(needs, yarn(SMALL))) == {100: 4}
    assert together(needs, yarn(SMALL)).cost == Decimal("18.40")


def test_together_a_larger_ball_can_be_cheaper_than_any_for_each() -> None:
    """By hand: 770 m come from one ball of 800 m for 17.00, less than four for 18.40."""
    shared = together([need(350), need(420)], yarn(SMALL, LARGE))
    assert (bought(shared), shared.cost) == ({400: 1}, Decimal("17.00"))
    assert shared.new[0].portions[1].metres == pytest.approx(420)


def test_a_lot_that_is_enough_for_either_goes_where_it_saves_most() -> None:
    """By hand: 100 g are 200 m. They save 190 m two balls, with 30 m to come they save one."""
    wool = yarn(SMALL, stock=(ball(100, "A"),))
    shared = together([need(30), need(MORE_THAN_A_BALL_ALONE), need(190)], wool)
    assert taken(shared) == {"A": {2: 190}}
    assert bought(shared) == {100: 2}


def test_orders_share_a_lot_once() -> None:
    wool = yarn(SMALL, stock=(ball(100, "A"),))
    assert bought(together([need(150)], wool)) == {}
    assert bought(together([need(150), need(150)], wool)) == {100: 1}
    assert taken(together([need(90), need(100)], wool)) == {"A": {0: 90, 1: 100}}


def test_an_order_is_never_cut_between_two_lots() -> None:
    wool = yarn(SMALL, stock=(ball(60, "A"), ball(60, "B")))
    shared = together([need(130), need(130)], wool)
    assert (taken(shared), bought(shared)) == ({}, {100: 2})


def test_an_order_that_mixes_lots_takes_what_the_others_leave() -> None:
    """By hand: of two lots of 120 m one has 100 m taken; 20 m, 120 m and a new ball are left."""
    wool = yarn(SMALL, stock=(ball(60, "A"), ball(60, "B")))
    shared = together([need(100), need(300, mix=True)], wool)
    assert bought(shared) == {100: 1}
    assert sum(some for lot in taken(shared).values() for some in lot.values()) > 235


def test_mixing_orders_that_the_shelf_is_enough_for_buy_nothing() -> None:
    wool = yarn(SMALL, stock=(ball(60, "A"), ball(60, "B")))
    assert together([need(100), need(130, mix=True)], wool).new == ()


def test_balls_of_two_kinds_are_bought_where_no_one_kind_is_as_cheap() -> None:
    """By hand: 780 m take the large ball; with 150 m more, a small one is cheaper than a second."""
    shared = together([need(780), need(150)], yarn(SMALL, LARGE))
    assert bought(shared) == {400: 1, 100: 1}
    assert [[some.need for some in new.portions] for new in shared.new] == [[0], [1]]


def test_needs_that_end_just_with_their_balls_are_bought_for_one_by_one() -> None:
    """By hand: 200 m are a ball each; in one line the second would begin with a join."""
    needs = [need(200), need(200)]
    assert bought(together(needs, yarn(SMALL))) == {100: 2}


def test_balls_needed_are_told_where_a_pack_brings_more() -> None:
    pack = put_up(100, 200, "15.00", pack=5)
    (new,) = together([need(350), need(420)], yarn(SMALL, pack)).new
    assert (new.needed, new.balls, new.cost) == (4, 5, Decimal("15.00"))


def test_balls_that_are_shorter_than_their_tails_are_refused() -> None:
    with pytest.raises(Refused):
        together([need(10), need(10)], yarn(put_up(1, 0.2, "1.00")))


def test_lots_without_a_name_are_each_one_of_its_own() -> None:
    wool = yarn(SMALL, stock=(ball(60), ball(60)))
    shared = together([need(100), need(110)], wool)
    assert [[some.need for some in lot.portions] for lot in shared.held] == [[0], [1]] or [
        [some.need for some in lot.portions] for lot in shared.held
    ] == [[1], [0]]


def test_lengths_are_fit_into_rooms_if_there_is_any_way() -> None:
    assert fit([5, 4, 3], [7, 5]) == (1, 0, 0)
    assert fit([5, 5], [9]) is None
    assert fit([], []) == ()


def test_after_so_many_steps_no_way_is_looked_for_any_more() -> None:
    assert fit([2] * 30 + [3] * 31, range(60, 90)) is not None
    assert fit([1_000_000 + n for n in range(24)], [2_500_000 + n for n in range(11)]) is None


def test_where_too_many_ways_would_have_to_be_tried_each_has_its_own(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("quoting.core.estimate.fitting.MOST_TRIED", 1)
    assert bought(together([need(350), need(420)], yarn(SMALL))) == {100: 5}


def test_what_rooms_hold_at_most_is_found_among_many_ways() -> None:
    assert most_held([6, 5, 5], [10]) == 10
    assert most_held([2**n for n in range(20)], [10**6, 10**6 // 2, 10**6 // 3]) == 2**20 - 1


def test_the_colours_name_is_that_of_the_shelf() -> None:
    other = ball(100, "A", colour="rust")
    assert other.colour != COLOUR
    assert taken(together([need(50), need(60)], yarn(SMALL, stock=(other,)))) == {}
