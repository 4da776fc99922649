"""One colour's walk with balls in hand: joins, part balls, scraps, and what is missing."""

from __future__ import annotations

import pytest

from quoting.core.estimate.ball_walk import ColourWalk, walk_colour
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.strands import Point, Stretch, Visit, Why
from quoting.core.plan.passes import Edge
from quoting.core.workshop.habits import Join

TAIL_M = 0.5  # two tails take a metre, which keeps the figures plain


def visit(
    index: int, yarn_m: float = 10, *, follows: bool = True, carry_m: float | None = None
) -> Visit:
    edges = (Edge.START, Edge.FAR) if index % 2 else (Edge.FAR, Edge.START)
    return Visit(
        pass_index=index,
        starts=edges[0],
        ends=edges[1],
        yarn_m=yarn_m,
        follows=follows and index > 0,
        carry_m=carry_m,
    )


def walk(
    visits: list[Visit], *balls_m: float, join: Join = Join.ANYWHERE, tail_m: float = TAIL_M
) -> ColourWalk:
    return walk_colour("oat", visits, Supply(balls_m=balls_m), tail_m=tail_m, join=join)


def balls_in_order(walked: ColourWalk) -> list[int]:
    return [strand.ball for strand in walked.strands]


def test_an_endless_ball_is_never_used_up() -> None:
    walked = walk_colour("oat", [visit(0), visit(1)], tail_m=TAIL_M)
    assert (walked.yarn_m, len(walked.strands)) == (21, 1)
    assert list(walked.ran_out_at) == [None]


def test_a_ball_that_runs_out_in_a_row_is_joined_there() -> None:
    walked = walk([visit(0), visit(1)], 16, 16)
    first, second = walked.strands
    assert (first.why, second.why) == (Why.RAN_OUT, Why.FINISHED)
    assert first.ends == second.starts == Point(0, 1, Edge.WITHIN)
    assert first.stretches == (Stretch(0, 0, 1), Stretch(1, 0, 0.5))
    assert second.stretches == (Stretch(1, 0.5, 1),)
    assert walked.ball_used_m == (16.0, 6.0)
    assert walked.ran_out_at == (first.ends, None)


def test_a_ball_that_ends_with_the_row_is_joined_at_the_edge() -> None:
    walked = walk([visit(0), visit(1)], 11, 11)
    first, second = walked.strands
    assert (first.why, first.ends) == (Why.RAN_OUT, Point(0, 0, Edge.START))
    assert second.starts == Point(0, 1, Edge.START)
    assert walked.ran_out_at == (first.ends, second.ends)


def test_at_an_edge_a_row_is_begun_only_with_enough_and_the_scrap_is_waste() -> None:
    walked = walk([visit(n) for n in range(3)], 16, 40, join=Join.AT_AN_EDGE)
    first, second = walked.strands
    assert first.ends == Point(0, 0, Edge.START)
    assert second.starts == Point(0, 1, Edge.START)
    assert (walked.ball_used_m, walked.long_pass) == ((11, 21), False)


def test_at_an_edge_a_pass_longer_than_a_full_ball_is_joined_within() -> None:
    walked = walk([visit(0, 30)], 16, 16, 16, join=Join.AT_AN_EDGE)
    assert [strand.ends.edge for strand in walked.strands] == [Edge.WITHIN, Edge.START]
    assert walked.long_pass
    assert not walk([visit(0, 30)], 16, 16, 16).long_pass


def test_at_an_edge_a_ball_too_short_for_a_row_waits_for_a_shorter_one() -> None:
    visits = [visit(0, 10), visit(1, 10), visit(3, 4, follows=False)]
    walked = walk(visits, 6, 40, join=Join.AT_AN_EDGE)
    assert balls_in_order(walked) == [1, 1]
    visits = [visit(0, 10), visit(1, 10), visit(3, 4, follows=False)]
    assert balls_in_order(walk(visits, 6, 22, join=Join.AT_AN_EDGE)) == [1, 0]


def test_part_balls_come_before_a_fresh_one_the_oldest_first() -> None:
    cut = [visit(n, 5, follows=False) for n in (0, 2, 4, 6)]
    walked = walk(cut, 13, 20)
    assert balls_in_order(walked) == [0, 0, 1, 1]
    assert [strand.why for strand in walked.strands[:2]] == [Why.CUT, Why.CUT]
    # 13 holds two of 6 m and 1 m over, under two tails: waste
    assert walked.ran_out_at[0] == Point(0, 2, Edge.START)


def test_a_scrap_under_two_tails_is_waste() -> None:
    walked = walk([visit(0, 5, follows=False), visit(2, 5, follows=False)], 6.9, 20)
    assert balls_in_order(walked) == [0, 1]
    assert walked.ball_used_m == (6, 6)


def test_a_scrap_over_two_tails_is_worked_up() -> None:
    walked = walk([visit(0, 5, follows=False), visit(2, 5, follows=False)], 9, 20)
    assert balls_in_order(walked) == [0, 0, 1]
    (stretch,) = walked.strands[1].stretches
    assert (stretch.begins, stretch.ends) == pytest.approx((0, 0.4))


def test_a_carry_keeps_the_strand_and_costs_its_climb() -> None:
    walked = walk([visit(0), visit(3, follows=False, carry_m=0.04)], 40)
    (strand,) = walked.strands
    assert strand.yarn_m == pytest.approx(10 + 0.04 + 10 + 1)
    assert len(strand.carries) == 1


def test_a_ball_too_short_for_the_carry_ends_where_it_was_left() -> None:
    walked = walk([visit(0), visit(3, follows=False, carry_m=0.04)], 11.03, 40)
    first, second = walked.strands
    assert (first.why, first.ends) == (Why.RAN_OUT, Point(0, 0, Edge.START))
    assert (first.carries, second.carries) == ((), ())


def test_at_an_edge_a_carry_needs_the_whole_row_after_it() -> None:
    visits = [visit(0), visit(3, follows=False, carry_m=0.04)]
    assert len(walk(visits, 21.03, 40, join=Join.AT_AN_EDGE).strands) == 2
    assert len(walk(visits, 21.04, 40, join=Join.AT_AN_EDGE).strands) == 1


def test_yarn_that_is_not_there_is_counted_as_missing() -> None:
    walked = walk([visit(0), visit(1)], 16)
    assert walked.missing_m == pytest.approx(5 + 1)
    assert walked.strands[-1].ball == -1


def test_no_balls_at_all_leave_everything_missing() -> None:
    assert walk([visit(0)]).missing_m == 11


def test_a_colour_that_is_never_worked_has_no_strands() -> None:
    walked = walk([], 16)
    assert (walked.strands, walked.ball_used_m, walked.missing_m) == ((), (0.0,), 0.0)


def test_a_pass_without_yarn_is_passed_through() -> None:
    walked = walk([visit(0, 0), visit(1)], 40)
    assert walked.strands[0].stretches == (Stretch(0, 0, 1), Stretch(1, 0, 1))


def test_of_two_part_balls_the_older_comes_first() -> None:
    lengths = {0: 5, 2: 8, 4: 5}
    visits = [visit(n, yarn_m, follows=False) for n, yarn_m in lengths.items()]
    # 13 m leave 7 after the first, too few for 8 and two tails; then both balls are begun
    assert balls_in_order(walk(visits, 13, 20, join=Join.AT_AN_EDGE)) == [0, 1, 0]


def test_a_scrap_left_at_an_edge_is_never_taken_up_again() -> None:
    visits = [visit(0), visit(1), visit(3, 3, follows=False)]
    walked = walk(visits, 16, 22, 40, join=Join.AT_AN_EDGE)
    assert balls_in_order(walked) == [0, 1, 1]


def test_at_an_edge_a_pass_just_short_of_a_full_ball_is_no_long_pass() -> None:
    walked = walk([visit(0), visit(1)], 11.5, 11.5, join=Join.AT_AN_EDGE)
    assert not walked.long_pass
    assert [strand.ends.edge for strand in walked.strands] == [Edge.START, Edge.FAR]


def test_a_ball_that_is_just_enough_for_a_row_and_its_tails_is_taken_for_it() -> None:
    walked = walk([visit(0), visit(1)], 11, 11, join=Join.AT_AN_EDGE)
    assert balls_in_order(walked) == [0, 1]
    assert (walked.missing_m, walked.long_pass) == (0, False)


def test_a_row_that_a_ball_could_only_finish_without_its_tails_is_joined_within() -> None:
    walked = walk([visit(0, 10)], 10.5, 10.5, join=Join.AT_AN_EDGE)
    assert walked.long_pass
    assert [strand.ends.edge for strand in walked.strands] == [Edge.WITHIN, Edge.START]
    assert walked.missing_m == 0


def test_with_no_ball_to_come_a_row_is_missed_and_is_not_too_long() -> None:
    walked = walk([visit(0), visit(1)], 14, join=Join.AT_AN_EDGE)
    assert (walked.missing_m, walked.long_pass) == (11, False)
    assert balls_in_order(walked) == [0, -1]


def test_the_ball_of_a_strand_that_is_cut_must_have_tails_for_the_row_as_well() -> None:
    """By hand: of 30 m, 10 and two tails leave 19; with two more tails 18, for a row of 18.5."""
    walked = walk([visit(0), visit(3, 18.5, follows=False)], 30, 8, join=Join.AT_AN_EDGE)
    assert (walked.missing_m, walked.long_pass) == (0, True)
    assert balls_in_order(walked) == [0, 0, 1]
