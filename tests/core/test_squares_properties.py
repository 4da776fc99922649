"""What holds of every blanket of joined squares: counted once more, motif by motif."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace
from decimal import Decimal
from itertools import groupby

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quoting.core.estimate.ball_walk import walk_colour
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.chores import Part
from quoting.core.estimate.runs import bare_m, runs_of
from quoting.core.estimate.skeins import choose_skeins
from quoting.core.estimate.strands import Why
from quoting.core.estimate.yarn_needed import yarn_by_colour, yarn_by_pass
from quoting.core.ground.sameness import HAIR
from quoting.core.order.joined_squares import SEWN, JoinedSquares, JoinMethod, Layout
from quoting.core.order.order import Order
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Plan
from quoting.core.plan.plan import plan_order
from quoting.core.plan.squares.layouts import largest_remainders
from quoting.core.plan.squares.placing import placed, touching
from quoting.core.plan.squares.seams import YARN_SEWN
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.yarns import PutUp
from tests.core.random_squares import squares_orders, visits_of
from tests.core.random_strands import TAIL_M
from tests.examples import sample_quote, sample_yarn
from tests.motif_examples import (
    FIVE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_motif,
    sample_squares,
    squares_order,
)

CLUSTERS = sample_motif()
SOLID = sample_motif(counting=Counting.SOLID)
NO_STOCK = sample_yarn(stock=())

few = st.integers(1, 14)
round_colours = st.lists(st.sampled_from(FIVE), min_size=1, max_size=9)


def squares_of(order: Order) -> JoinedSquares:
    assert isinstance(order.design.body, JoinedSquares)
    return order.design.body


def grid_of(plan: Plan) -> SquaresGrid:
    assert plan.grid is not None
    return plan.grid


def strands_one_by_one(order: Order, plan: Plan) -> int:
    """Count strands motif by motif, join by join, were no ball ever joined."""
    body, grid = squares_of(order), grid_of(plan)
    joined = grid.count > 1
    inner = -1 if body.join.method is JoinMethod.CONTINUOUS and joined else None
    motifs = sum(len(list(groupby(body.layouts[cell].colours[:inner]))) for cell in grid.layouts)
    border = [band.colour for band in order.design.border for _ in range(band.rounds)]
    return motifs + (strands_of_joins(body, grid) if joined else 0) + len(list(groupby(border)))


def strands_of_joins(body: JoinedSquares, grid: SquaresGrid) -> int:
    """Count what the joins take: a strand for all, a motif, a line, a needleful, or none."""
    method = body.join.method
    lines = [grid.rows] * (grid.columns - 1) + [grid.columns] * (grid.rows - 1)
    if method in SEWN:
        yarn_cm = (edges * grid.side_cm * YARN_SEWN[method] for edges in lines)
        return sum(math.ceil(round(each / body.join.needleful_cm, 9)) for each in yarn_cm)
    return {
        JoinMethod.AS_YOU_GO: 0,
        JoinMethod.CONTINUOUS: 1,
        JoinMethod.FLAT_BRAID: grid.count,
    }.get(method, len(lines))


@settings(max_examples=40)
@given(squares_orders)
def test_ends_are_those_of_the_motifs_counted_one_by_one(order: Order) -> None:
    quote = sample_quote(order, motif_workshop())
    estimate = quote.estimate
    joins = estimate.ended(Why.RAN_OUT)
    assert estimate.ends == 2 * (strands_one_by_one(order, quote.plan) + joins)


@given(squares_orders)
def test_edges_are_those_of_the_grid_counted_one_by_one(order: Order) -> None:
    grid = grid_of(plan_order(order, motif_workshop()))
    cells = {(c, r) for c in range(grid.columns) for r in range(grid.rows)}
    pairs = {((c, r), other) for c, r in cells for other in ((c + 1, r), (c, r + 1))}
    assert grid.shared_edges == sum(other in cells for _, other in pairs)
    lines = {("across", r) for c, r in cells if (c, r + 1) in cells}
    lines |= {("down", c) for c, r in cells if (c + 1, r) in cells}
    assert grid.seam_lines == len(lines)


@given(squares_orders)
def test_each_layout_lies_as_often_as_it_is_made(order: Order) -> None:
    plan = plan_order(order, motif_workshop())
    made = {part.layout: part.count for part in plan.parts if part.kind is PartKind.MOTIF}
    assert Counter(grid_of(plan).layouts) == made
    assert sum(made.values()) == grid_of(plan).count


@given(st.integers(1, 400), st.lists(st.floats(0.01, 100), min_size=1, max_size=9))
def test_shares_come_to_the_whole_and_none_is_a_square_off(total: int, shares: list[float]) -> None:
    counts = largest_remainders(total, shares)
    assert sum(counts) == total
    for count, share in zip(counts, shares, strict=True):
        assert abs(count - total * share / sum(shares)) < 1 + 1e-6


@given(few, few, st.lists(st.integers(1, 4), min_size=2, max_size=6))
def test_like_squares_touch_hardly_ever_where_they_need_not(
    columns: int, rows: int, shares: list[int]
) -> None:
    counts = [n for n in largest_remainders(columns * rows, [*map(float, shares)]) if n]
    cells = placed(counts, columns)
    assert [cells.count(layout) for layout in range(len(counts))] == counts
    if 2 * max(counts) <= columns * rows:
        assert touching(cells, columns) <= 2


@pytest.mark.parametrize(
    ("columns", "counts"),
    [(8, [22, 22, 22, 22]), (8, [44, 44]), (8, [44, 22, 22]), (20, [100] * 4), (9, [47, 5, 47])],
)
def test_usual_mixes_of_squares_never_touch_their_like(columns: int, counts: list[int]) -> None:
    assert touching(placed(counts, columns), columns) == 0


def test_where_a_great_many_would_have_to_change_places_they_stay() -> None:
    """A few hundred of five thousand motifs in the way of two halves: laid, not compared."""
    counts = [2450, 2250, 200]
    cells = placed(counts, columns=70)
    assert [cells.count(layout) for layout in range(3)] == counts


def test_a_layout_of_most_squares_lies_evenly_among_the_others() -> None:
    """One in four: two in each row of eight, none beside another."""
    cells = placed([66, 22], columns=8)
    assert {cells[row * 8 : row * 8 + 8].count(1) for row in range(11)} == {2}
    others = [n for n, cell in enumerate(cells) if cell == 1]
    assert not any(n + 1 in others and (n + 1) % 8 for n in others)
    assert not any(n + 8 in others for n in others)


@given(squares_orders)
def test_yarn_by_round_is_that_of_a_motif(order: Order) -> None:
    """Five rounds of clusters take the 24 m that were weighed, others as W = 26k + 2 has it."""
    plan = plan_order(order, motif_workshop())
    metres = yarn_by_pass(plan, order)
    for number, part in enumerate(plan.parts):
        if part.kind is PartKind.MOTIF:
            mine = [
                m for m, worked in zip(metres, plan.passes, strict=True) if worked.part == number
            ]
            units = [26 * k + 2 for k in range(1, max(6, len(mine) + 1))]
            assert sum(mine) == pytest.approx(24 * sum(units[: len(mine)]) / sum(units[:5]))


@settings(max_examples=40)
@given(round_colours, st.sampled_from([SOLID, CLUSTERS, replace(CLUSTERS, timings=())]))
def test_one_square_by_itself_is_a_piece_from_the_centre(colours: list[str], motif: Motif) -> None:
    """Passes, yarn, ends and hours: there is nothing to lay out or to join."""
    workshop, rounds = motif_workshop(motif), len(colours)
    square = sample_squares(
        layouts=(Layout(colours=tuple(colours)),), columns=1, rows=1, rounds=rounds
    )
    piece = sample_centre(*colours, counting=motif.counting, rounds=rounds, starts_on=0)
    one = sample_quote(squares_order(body=square, border=()), workshop)
    other = sample_quote(centre_order(body=piece), workshop)
    assert [worked.stitches for worked in one.plan.passes] == [
        worked.stitches for worked in other.plan.passes
    ]
    assert one.plan.width_cm == other.plan.width_cm
    assert one.estimate.ends == other.estimate.ends
    metres = [colour.metres for colour in one.estimate.colours]
    assert metres == pytest.approx([colour.metres for colour in other.estimate.colours])
    for part in Part:
        assert one.estimate.hours.of(part) == other.estimate.hours.of(part)


@settings(max_examples=40)
@given(squares_orders)
def test_balls_account_for_every_metre(order: Order) -> None:
    for colour in sample_quote(order, motif_workshop(yarns=(NO_STOCK,))).estimate.colours:
        walk = colour.walk
        assert walk.missing_m == 0
        assert sum(walk.ball_used_m) == pytest.approx(walk.yarn_m)
        lasting = [end is None for end in walk.ran_out_at]
        lengths = zip(colour.balls_m, walk.ball_used_m, lasting, strict=True)
        assert walk.left_m == pytest.approx(sum(m - used for m, used, lasts in lengths if lasts))


@settings(max_examples=60)
@given(squares_orders, st.floats(9, 400))
def test_metres_alone_tell_how_many_balls_are_enough(order: Order, ball_m: float) -> None:
    """Scraps are kept, not joined, and yet each ball after the first wastes two tails at most."""
    ball = PutUp(weight_g=ball_m / 2, length_m=ball_m, price=Decimal(1))
    yarn = sample_yarn(stock=(), put_ups=(ball,))
    visits = visits_of(order, Habits())
    for colour in yarn_by_colour(plan_order(order, motif_workshop()), order, motif_workshop()):
        line = visits[colour.colour]
        need_m = bare_m(runs_of(line), TAIL_M)
        choice = choose_skeins(need_m, yarn, colour.colour, tail_m=TAIL_M, mix_lots=False)
        balls_m = choice.balls_m(yarn.metres_per_gram)
        walk = walk_colour(colour.colour, line, Supply(balls_m=balls_m), tail_m=TAIL_M)
        assert walk.missing_m <= len(balls_m) * HAIR


@settings(max_examples=30)
@given(squares_orders)
def test_with_joins_at_an_edge_balls_are_enough_too(order: Order) -> None:
    """No round is joined, as each ball on sale can work several."""
    workshop = motif_workshop(yarns=(NO_STOCK,), habits=Habits(join=Join.AT_AN_EDGE))
    estimate = sample_quote(order, workshop).estimate
    for colour in estimate.colours:
        assert colour.walk.missing_m == 0
        assert not any(s.begins > 0 or s.ends < 1 for x in colour.walk.strands for s in x.stretches)
