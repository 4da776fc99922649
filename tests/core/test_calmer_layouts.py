"""Motifs of fewer colours each: as many rounds of every colour over all of them, and fewer ends."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import permutations

import pytest

from quoting.core.estimate.strands import Why
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Layout, Pool
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.alternatives import OFFERED, Alternative
from quoting.core.weighing.calmer_designs import calmer_designs
from quoting.core.weighing.calmer_layouts import calmer_layouts
from tests.examples import COLOURS, TODAY
from tests.motif_examples import FIVE, motif_workshop, sample_squares, squares_order

WORKSHOP = motif_workshop()
INNER = FIVE[:4]


def quoted(body: JoinedSquares) -> Quote:
    counted = replace(body, columns=8, rows=11)
    return quote_order(squares_order(body=counted, border=()), WORKSHOP, today=TODAY)


def layouts(found: Alternative) -> tuple[Layout, ...]:
    assert isinstance(found.design.body, JoinedSquares)
    return found.design.body.layouts


LOUD = quoted(sample_squares())


def test_fewer_colours_a_motif_leave_two_ends_for_each_run() -> None:
    """Of one motif: AAAAE 4 ends, AABBE 6, AABCE 8, where ABCDE has 10 (constructions, 1)."""
    found = calmer_layouts(LOUD, today=TODAY)
    assert len(found) == OFFERED
    motifs = LOUD.plan.grid.count if LOUD.plan.grid else 0
    for other, ends in zip(found, (4, 6, 8), strict=True):
        joined = 2 * other.quote.estimate.ended(Why.RAN_OUT)
        assert other.quote.estimate.ends == ends * motifs + joined
        assert other.distance == pytest.approx(0.6)


def test_over_all_motifs_every_colour_has_as_many_rounds() -> None:
    for other in calmer_layouts(LOUD, today=TODAY):
        assert other.quote.plan.rows_by_colour == LOUD.plan.rows_by_colour
        assert {layout.colours[-1] for layout in layouts(other)} == {"oat"}


def test_each_colour_comes_as_often_at_every_place() -> None:
    for other in calmer_layouts(LOUD, today=TODAY):
        for place in range(4):
            assert Counter(layout.colours[place] for layout in layouts(other)) == Counter(INNER)


def test_two_runs_of_four_colours_are_pairs_that_follow_one_another() -> None:
    _, pairs, _ = calmer_layouts(LOUD, today=TODAY)
    a, b, c, d = INNER
    assert [layout.colours[:4] for layout in layouts(pairs)] == [
        (a, a, b, b),
        (b, b, c, c),
        (c, c, d, d),
        (d, d, a, a),
    ]


def test_a_pool_becomes_layouts_with_its_last_rounds() -> None:
    body = replace(sample_squares(), layouts=(), pool=Pool(colours=INNER, outer=("oat",)))
    found = calmer_layouts(quoted(body), today=TODAY)
    assert [other.quote.estimate.ends for other in found] == sorted(
        other.quote.estimate.ends for other in found
    )
    assert all(len(layouts(other)) == 4 for other in found)
    assert {layout.colours[-1] for other in found for layout in layouts(other)} == {"oat"}


def test_motifs_whose_last_round_joins_them_keep_it() -> None:
    body = sample_squares(method=JoinMethod.CONTINUOUS)
    found = calmer_layouts(quoted(body), today=TODAY)
    assert found
    assert all(layout.colours[-1] == "oat" for other in found for layout in layouts(other))
    assert all(len(layout.colours) == 5 for other in found for layout in layouts(other))


def test_rounds_that_all_layouts_end_in_are_kept_and_others_are_not() -> None:
    alike = quoted(sample_squares((*INNER, "oat"), ("rust", "plum", "teal", "moss", "oat")))
    assert {
        layout.colours[-2:]
        for other in calmer_layouts(alike, today=TODAY)
        for layout in layouts(other)
    } == {("moss", "oat")}
    unlike = quoted(sample_squares(FIVE, FIVE[::-1]))
    calmest = calmer_layouts(unlike, today=TODAY)[0]
    assert {len(set(layout.colours)) for layout in layouts(calmest)} == {1}


def test_runs_that_take_more_layouts_than_a_blanket_may_have_are_left_out() -> None:
    """Of six colours in 40 orders one run takes 6 layouts, two take 30, three more than 60."""
    orders = list(permutations(COLOURS, 4))[::9]
    many = quoted(sample_squares(*((*inner, "oat") for inner in orders)))
    found = calmer_layouts(many, today=TODAY)
    assert [len(layouts(other)) for other in found] == [6, 30]


def test_motifs_of_one_run_are_left_as_they_are() -> None:
    plain = quoted(sample_squares(("teal",) * 4 + ("oat",)))
    assert calmer_layouts(plain, today=TODAY) == ()
    same = quoted(sample_squares(("teal",) * 5, ("teal",) * 5))
    assert calmer_layouts(same, today=TODAY) == ()
    few = quote_order(
        squares_order(body=replace(sample_squares(), columns=1, rows=1), border=()),
        WORKSHOP,
        today=TODAY,
    )
    assert calmer_layouts(few, today=TODAY) == ()


def test_squares_are_calmed_where_fewer_ends_are_sought() -> None:
    assert calmer_designs(LOUD, today=TODAY) == calmer_layouts(LOUD, today=TODAY)
