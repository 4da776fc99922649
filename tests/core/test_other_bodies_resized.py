"""Squares and pieces from the centre at other sizes: their own counts belong to one size."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.order.joined_squares import JoinedSquares, Layout
from quoting.core.order.resizing import Size
from quoting.core.weighing.comparison import compare_sizes
from tests.examples import TODAY
from tests.motif_examples import (
    FIVE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_squares,
    squares_order,
)

WORKSHOP = motif_workshop()
COT, KING = Size(width_cm=80, height_cm=100), Size(width_cm=230, height_cm=250)


def test_squares_that_were_counted_out_come_in_every_size_in_the_same_shares() -> None:
    counted = (Layout(colours=FIVE, count=22), Layout(colours=FIVE[::-1], count=66))
    body = replace(sample_squares(), layouts=counted, columns=8, rows=11)
    compared = compare_sizes(squares_order(body=body), WORKSHOP, [COT, KING], today=TODAY)
    assert compared.refused == ()
    for size in compared.sizes:
        plan = size.quote.plan
        few, many = (part.count for part in plan.parts if part.layout is not None)
        assert few + many == plan.grid.count
        assert few / (few + many) == pytest.approx(0.25, abs=0.02)
        assert abs(plan.width_cm - size.size.width_cm) <= 7.5
        assert abs(plan.height_cm - size.size.height_cm) <= 7.5


def test_at_its_own_size_the_order_keeps_its_own_counts() -> None:
    body = replace(sample_squares(), columns=5, rows=5)
    own = Size(width_cm=130, height_cm=170)
    compared = compare_sizes(squares_order(body=body), WORKSHOP, [own, COT], today=TODAY)
    same, cot = (size.quote for size in compared.sizes)
    assert (same.plan.grid.columns, same.plan.grid.rows) == (5, 5)
    assert isinstance(cot.order.design.body, JoinedSquares)
    assert (cot.order.design.body.columns, cot.order.design.body.rows) == (None, None)


def test_own_rounds_from_the_centre_belong_to_one_size() -> None:
    body = replace(sample_centre("teal", "oat"), rounds=12, starts_on=3)
    compared = compare_sizes(centre_order(body=body), WORKSHOP, [COT, KING], today=TODAY)
    for size in compared.sizes:
        assert size.quote.plan.width_cm == pytest.approx(size.size.width_cm, abs=1.2)
        assert size.quote.plan.height_cm == pytest.approx(size.size.height_cm, abs=1.5)


def test_a_size_under_one_motif_is_refused_and_the_others_are_compared() -> None:
    small = Size(width_cm=8, height_cm=8)
    compared = compare_sizes(squares_order(), WORKSHOP, [small, COT], today=TODAY)
    assert [refusal.mistakes[0].code for refusal in compared.refused] == ["less-than-a-motif"]
    assert len(compared.sizes) == 1
