"""Where a ball is used up, and how far that may shift."""

from dataclasses import replace

import pytest

from quoting.core.estimate.ball_ends import ball_ends
from quoting.core.estimate.ball_walk import walk_colour
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.strands import Visit
from quoting.core.plan.passes import Edge
from quoting.core.workshop.habits import Habits, Join


def rows_of_one_colour(rows: int, metres_a_row: float) -> list[Visit]:
    edges = (Edge.START, Edge.FAR)
    return [
        Visit(
            pass_index=row,
            starts=edges[row % 2],
            ends=edges[(row + 1) % 2],
            yarn_m=metres_a_row,
            follows=row > 0,
            carry_m=None,
        )
        for row in range(rows)
    ]


def ends_of(balls_m, *, habits=None, rows=30, share=0.1):
    habits = habits or Habits()
    visits = rows_of_one_colour(rows, 9.0)
    supply = Supply(balls_m=balls_m)
    walk = walk_colour("oat", visits, supply, tail_m=habits.tail_m, join=habits.join)
    return ball_ends(walk, visits, balls_m, share, habits)


def test_with_more_yarn_a_stitch_a_ball_ends_in_an_earlier_row():
    first, second = ends_of((200.0, 200.0))
    assert (first.soonest.pass_index, first.expected.pass_index, first.latest.pass_index) == (
        20,
        22,
        24,
    )
    assert second.expected is None
    assert second.latest is None


@pytest.mark.parametrize("join", list(Join))
def test_the_range_holds_what_is_expected(join):
    habits = replace(Habits(), join=join)
    for length in range(60, 140, 7):
        for end in ends_of((float(length),) * 6, habits=habits):
            order = [
                999 if point is None else point.pass_index
                for point in (end.soonest, end.expected, end.latest)
            ]
            assert order == sorted(order)
