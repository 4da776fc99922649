"""Strands, as laws: whatever the stripes, the balls and the limits, these hold."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.estimate.estimate import estimate_plan
from quoting.core.estimate.strands import Point, Visit, Why
from quoting.core.ground.errors import Refused
from quoting.core.order.design import Design
from quoting.core.plan.gauge import Made
from quoting.core.plan.passes import Edge, Pass, Work
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.yarns import PutUp
from tests.core.random_strands import (
    HAIR_M,
    TAIL_M,
    ball_lengths,
    blankets,
    designs,
    habits,
    strands_of,
    visited,
    walks_of,
    way,
)
from tests.examples import WOOL, sample_design, sample_order, sample_workshop, sample_yarn


@given(designs, habits, blankets, ball_lengths)
def test_every_pass_is_worked_once_from_end_to_end(
    design: Design, how: Habits, copies: int, balls_m: list[float]
) -> None:
    plan, visits = visited(design, how)
    parts: dict[tuple[int, int], list[tuple[float, float]]] = {}
    for strand in strands_of(walks_of(visits, how, copies, balls_m)):
        for blanket, index, begins, ends in way(strand):
            assert plan.passes[index].colour == strand.colour
            parts.setdefault((blanket, index), []).append((begins, ends))
    assert set(parts) == {(n, i) for n in range(copies) for i in range(len(plan.passes))}
    for tiles in parts.values():
        edges = [0.0] + [end for _, end in tiles]
        assert [begin for begin, _ in tiles] == edges[:-1]
        assert edges == sorted(edges)
        assert edges[-1] == pytest.approx(1)


@given(designs, habits, blankets, ball_lengths)
def test_strands_of_one_colour_follow_one_another(
    design: Design, how: Habits, copies: int, balls_m: list[float]
) -> None:
    _, visits = visited(design, how)
    for walk in walks_of(visits, how, copies, balls_m):
        steps = [step for strand in walk.strands for step in way(strand)]
        spans = [((p, i + begins), (p, i + ends)) for p, i, begins, ends in steps]
        flat = [moment for span in spans for moment in span]
        assert flat == sorted(flat)


@given(designs, habits, blankets, ball_lengths)
def test_metres_are_stitches_and_carries_and_two_tails_a_strand(
    design: Design, how: Habits, copies: int, balls_m: list[float]
) -> None:
    plan, visits = visited(design, how)
    for walk in walks_of(visits, how, copies, balls_m):
        stitches_m = copies * sum(
            count * plan.gauges[Made(WOOL, stitch)].yarn_m
            for worked in plan.passes
            if worked.colour == walk.colour
            for stitch, count in worked.stitches.items()
        )
        climbs_cm = [
            sum(p.height_cm for p in plan.passes[carry.from_pass + 1 : carry.to_pass])
            for strand in walk.strands
            for carry in strand.carries
        ]
        tails_m = 2 * TAIL_M * len(walk.strands)
        expected_m = stitches_m + 1.1 * sum(climbs_cm) / 100 + tails_m
        assert walk.yarn_m == pytest.approx(expected_m)


@given(designs, habits, blankets, ball_lengths)
def test_no_ball_gives_more_than_it_has(
    design: Design, how: Habits, copies: int, balls_m: list[float]
) -> None:
    _, visits = visited(design, how)
    for walk in walks_of(visits, how, copies, balls_m):
        taken_m = [0.0] * len(balls_m)
        missing_m = 0.0
        for strand in walk.strands:
            if strand.ball < 0:
                missing_m += strand.yarn_m
            else:
                taken_m[strand.ball] += strand.yarn_m
        assert walk.ball_used_m == pytest.approx(taken_m)
        assert walk.missing_m == pytest.approx(missing_m)
        assert all(used <= length + HAIR_M for used, length in zip(taken_m, balls_m, strict=True))


@given(designs, habits, blankets, ball_lengths)
def test_a_carry_takes_a_strand_from_the_edge_where_it_was_left(
    design: Design, how: Habits, copies: int, balls_m: list[float]
) -> None:
    plan, visits = visited(design, how)
    for strand in strands_of(walks_of(visits, how, copies, balls_m)):
        for carry in strand.carries:
            left, taken = plan.passes[carry.from_pass], plan.passes[carry.to_pass]
            between = plan.passes[carry.from_pass + 1 : carry.to_pass]
            assert left.ends is taken.starts is carry.edge
            assert left.colour == taken.colour == strand.colour
            assert 0 < len(between) <= how.carry_rows
            assert sum(p.height_cm for p in between) <= how.carry_height_cm + 1e-6
            assert all(p.colour != strand.colour for p in between)
            if taken.work is Work.ROW:
                assert len(between) % 2 == 0


def by_hand(passes: Sequence[Pass], how: Habits) -> tuple[int, int]:
    """Count strands and carries with endless balls, straight from the rules in words."""
    waiting: dict[str, tuple[Edge, int, float]] = {}
    strands, carries, worked, climbed, in_hand = 0, 0, 0, 0.0, ""
    for one in passes:
        if one.colour != in_hand:
            edge, then, height = waiting.get(one.colour, (Edge.WITHIN, 0, 0.0))
            here = edge is one.starts and worked - then <= how.carry_rows
            if here and climbed - height <= how.carry_height_cm + 1e-9:
                carries += 1
            else:
                strands += 1
        in_hand, worked, climbed = one.colour, worked + 1, climbed + one.height_cm
        waiting[one.colour] = (one.ends, worked, climbed)
    return strands, carries


@given(designs, habits, blankets)
def test_endless_balls_give_the_strands_that_the_rules_in_words_give(
    design: Design, how: Habits, copies: int
) -> None:
    plan, visits = visited(design, how)
    found = strands_of(walks_of(visits, how, copies))
    strands, carries = by_hand(plan.passes, how)
    assert len(found) == copies * strands
    assert sum(len(strand.carries) for strand in found) == copies * carries
    assert not any(strand.why is Why.RAN_OUT for strand in found)
    colours_used = len({p.colour for p in plan.passes})
    assert sum(s.why is Why.FINISHED for s in found) == copies * colours_used


@given(designs, habits, st.integers(0, 10), st.floats(0, 20))
def test_a_wider_limit_never_means_more_ends(
    design: Design, how: Habits, more_rows: int, more_cm: float
) -> None:
    wider = replace(
        how,
        carry_rows=how.carry_rows + more_rows,
        carry_height_cm=how.carry_height_cm + more_cm,
    )
    counts = [
        len(strands_of(walks_of(visited(design, limits)[1], limits))) for limits in (how, wider)
    ]
    assert counts[1] <= counts[0]


def when(point: Point) -> tuple[int, int]:
    return point.blanket, point.pass_index


def in_one_piece(visits: Sequence[Visit]) -> dict[int, float]:
    """Return for each pass the yarn that must be of one strand: the chain's is with row 1."""
    yarn_m = {visit.pass_index: visit.yarn_m for visit in visits}
    return yarn_m | (dict.fromkeys((0, 1), yarn_m[0] + yarn_m[1]) if 0 in yarn_m else {})


@given(designs, habits, blankets, ball_lengths)
def test_at_an_edge_only_a_pass_longer_than_the_balls_to_come_is_joined_within(
    design: Design, how: Habits, copies: int, balls_m: list[float]
) -> None:
    how = replace(how, join=Join.AT_AN_EDGE)
    _, visits = visited(design, how)
    for walk in walks_of(visits, how, copies, balls_m):
        yarn_m = in_one_piece(visits[walk.colour])
        begun: dict[int, tuple[int, int]] = {}
        for strand in walk.strands:
            begun.setdefault(strand.ball, when(strand.starts))
        for strand in walk.strands:
            if strand.ends.edge is Edge.WITHIN:
                here = when(strand.ends)
                later = [m for n, m in enumerate(balls_m) if begun.get(n, (99, 0)) > here]
                assert all(yarn_m[here[1]] > m - 2 * TAIL_M for m in later)
                assert walk.long_pass


@given(designs, habits, blankets, st.floats(0.7, 60))
def test_with_balls_of_one_length_a_long_pass_is_one_longer_than_a_full_ball(
    design: Design, how: Habits, copies: int, length_m: float
) -> None:
    how = replace(how, join=Join.AT_AN_EDGE)
    _, visits = visited(design, how)
    balls_m = [length_m] * 4000
    for walk in walks_of(visits, how, copies, balls_m):
        longest_m = max(in_one_piece(visits[walk.colour]).values())
        assert walk.long_pass == (longest_m > length_m - 2 * TAIL_M + 1e-6)


@given(designs, habits, blankets, st.lists(st.floats(5, 60), min_size=1, max_size=3), st.booleans())
def test_the_balls_chosen_are_always_enough(
    design: Design,
    how: Habits,
    copies: int,
    lengths_m: list[float],
    mix_lots: bool,  # noqa: FBT001 - a parameter
) -> None:
    sold = tuple(
        PutUp(weight_g=length / 2, length_m=length, price=Decimal(n))
        for n, length in enumerate(lengths_m, 2)
    )
    how = replace(how, allowance=0.0)
    workshop = sample_workshop(habits=how, yarns=(sample_yarn(put_ups=sold),))
    order = sample_order(design=replace(design, mix_lots=mix_lots), extras=(), quantity=copies)
    estimate = estimate_plan(plan_order(order, workshop), order, workshop)
    assert estimate.ends == 2 * len(estimate.strands)
    for colour in estimate.colours:
        assert colour.walk.missing_m < HAIR_M
        assert colour.metres <= math.fsum(colour.balls_m) + HAIR_M


def test_a_ball_no_longer_than_its_tails_makes_no_blanket() -> None:
    short = PutUp(weight_g=1, length_m=1, price=Decimal(1))
    workshop = sample_workshop(
        yarns=(sample_yarn(put_ups=(short,), stock=()),), habits=Habits(tail_cm=50)
    )
    order = sample_order(design=sample_design())
    with pytest.raises(Refused, match="balls-too-short"):
        estimate_plan(plan_order(order, workshop), order, workshop)
