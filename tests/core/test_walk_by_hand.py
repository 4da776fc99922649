"""The walk by whole runs is the walk pass by pass, whatever the stripes, balls and blankets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.estimate.ball_walk import walk_colour
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.strands import Visit
from quoting.core.order.design import Design
from quoting.core.order.order import Order
from quoting.core.workshop.habits import Habits, Join
from tests.core.random_squares import motif_habits, squares_orders, visits_of
from tests.core.test_strand_properties import ball_lengths, blankets, designs, habits, visited
from tests.core.walk_by_hand import walked_by_hand

full_balls = st.sampled_from([0.0, 12.0, 40.0])


@given(designs, habits, blankets, ball_lengths, full_balls)
def test_each_strand_is_the_one_that_hands_would_make(
    design: Design, how: Habits, copies: int, balls_m: list[float], full_m: float
) -> None:
    _, visits = visited(design, how)
    for line in visits.values():
        assert_walked_as_by_hand(line, how, Supply(balls_m=balls_m, full_m=full_m), copies)


@given(squares_orders, motif_habits, blankets, ball_lengths, full_balls, st.integers(0, 3))
def test_so_it_is_in_parts_that_are_made_several_times(
    order: Order, how: Habits, copies: int, balls_m: list[float], full_m: float, held: int
) -> None:
    supply = Supply(balls_m=balls_m, full_m=full_m, held=held)
    for line in visits_of(order, how).values():
        assert_walked_as_by_hand(line, how, supply, copies)


def assert_walked_as_by_hand(
    visits: Sequence[Visit], how: Habits, supply: Supply, blankets: int
) -> None:
    """Assert that a colour's strands, and what becomes of its balls, are as by hand."""
    walk = walk_colour("", visits, supply, tail_m=how.tail_m, blankets=blankets, join=how.join)
    hand = walked_by_hand(
        visits,
        supply.balls_m,
        tail_m=how.tail_m,
        blankets=blankets,
        at_an_edge=how.join is Join.AT_AN_EDGE,
        full_m=supply.full_m,
        on_the_shelf=supply.held,
    )
    found = [(strand.ball, strand.why.value) for strand in walk.strands]
    assert found == [(ball, why) for ball, why, _ in hand.strands]
    metres = [strand.yarn_m for strand in walk.strands]
    assert metres == pytest.approx([metres for *_, metres in hand.strands])
    assert [end is not None for end in walk.ran_out_at] == [
        ball in hand.used_up for ball in range(len(supply.balls_m))
    ]
    assert (walk.missing_m > 0, walk.long_pass) == (hand.missing, hand.long_pass)


@given(designs, habits, blankets, st.floats(5, 60))
def test_a_supply_without_end_gives_the_walk_with_as_many_balls_as_it_began(
    design: Design, how: Habits, copies: int, length_m: float
) -> None:
    how = replace(how, join=Join.AT_AN_EDGE)
    _, visits = visited(design, how)
    for line in visits.values():
        endless, counted = (
            walk_colour(
                "",
                line,
                replace(supply, full_m=length_m),
                tail_m=how.tail_m,
                blankets=copies,
                join=how.join,
            )
            for supply in (Supply(more_m=length_m), Supply(balls_m=[length_m] * 4000))
        )
        begun = len(endless.ball_used_m)
        assert endless.strands == counted.strands
        assert counted.ball_used_m[:begun] == endless.ball_used_m
        assert not any(counted.ball_used_m[begun:])
