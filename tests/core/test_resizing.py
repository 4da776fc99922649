"""Another size of the same design: what stays, what goes with the old size."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.core.order.design import MAX_SIDE_CM, Design
from quoting.core.order.resizing import Size, own_size, resize_order
from quoting.core.plan.plan import plan_order
from tests.examples import band, sample_design, sample_order, sample_workshop, section, stripes

TALL = Size(width_cm=80, height_cm=200)
sides_cm = st.floats(0.1, MAX_SIDE_CM)


def resized(design: Design, size: Size) -> Design:
    return resize_order(sample_order(design=design), size).design


def test_two_sizes_are_one_when_their_sides_are_whatever_they_are_called() -> None:
    metric, inches = (
        Size(width_cm=80, height_cm=100, label="80x100cm"),
        Size(width_cm=80, height_cm=100, label="31.5x39.4in"),
    )
    assert metric == inches
    assert len({metric, inches}) == 1
    assert metric != Size(width_cm=100, height_cm=80)
    assert metric != "80x100cm"


def test_a_hair_of_arithmetic_makes_no_other_size() -> None:
    sums = Size(width_cm=0.1 + 0.2, height_cm=1)
    assert sums == Size(width_cm=0.3, height_cm=1)
    assert hash(sums) == hash(Size(width_cm=0.3, height_cm=1))


def test_a_size_is_called_as_it_was_asked_and_otherwise_by_its_sides() -> None:
    assert str(Size(width_cm=80, height_cm=100, label="cot")) == "cot"
    assert str(Size(width_cm=80, height_cm=97.5)) == "80x97.5cm"


@pytest.mark.parametrize("side", [0, -1, MAX_SIDE_CM + 1, math.nan, math.inf])
def test_a_size_that_is_no_size_is_refused_with_both_sides_named(side: float) -> None:
    with pytest.raises(Refused) as caught:
        Size(width_cm=side, height_cm=side)
    assert [mistake.path for mistake in caught.value.mistakes] == ["width", "height"]


def test_at_its_own_size_an_order_stays_as_it_is() -> None:
    order = sample_order(design=sample_design(stitches=97, sections=(section("oat", repeats=9),)))
    assert resize_order(order, Size(width_cm=80, height_cm=100)) == order


def test_the_makers_own_stitch_count_goes_with_the_size_it_was_counted_for() -> None:
    assert resized(sample_design(stitches=97), TALL).body.stitches is None


@given(sides_cm, sides_cm)
def test_nothing_but_the_size_changes_where_the_stripes_share_the_height(
    width_cm: float, height_cm: float
) -> None:
    asked = sample_order(quantity=2)
    other = resize_order(asked, Size(width_cm=width_cm, height_cm=height_cm))
    assert (other.design.width_cm, other.design.height_cm) == (width_cm, height_cm)
    assert resize_order(other, Size(width_cm=80, height_cm=100)) == asked


def test_sections_of_exact_repeats_keep_their_proportion_at_another_height() -> None:
    """Ten rows against twenty, at twice the height and more: still one to two."""
    design = sample_design(
        sections=(section("teal", "rust", repeats=5), section("oat", "plum", repeats=10)),
        first_rows=(),
        border=(),
    )
    plan = plan_order(sample_order(design=resized(design, TALL)), sample_workshop())
    lower, upper = plan.rows_by_section
    assert lower + upper > 100
    assert abs(2 * lower - upper) <= 4
    assert abs(plan.height_cm - TALL.height_cm) < 2


def test_where_some_sections_share_the_height_the_others_keep_their_exact_repeats() -> None:
    design = sample_design(sections=(section("teal", repeats=5), section("oat", share=1)))
    assert resized(design, TALL).body.sections == design.body.sections


def test_the_first_and_last_rows_and_the_border_come_along() -> None:
    design = sample_design(last_rows=stripes("moss"), border=(band(rounds=3), band("hdc")))
    other = resized(design, TALL)
    assert (other.body.first_rows, other.body.last_rows) == (
        design.body.first_rows,
        design.body.last_rows,
    )
    assert other.border == design.border


def test_at_its_own_size_an_order_stays_as_it_is_with_the_makers_own_count() -> None:
    order = sample_order(design=sample_design(stitches=99))
    nearly = Size(width_cm=80 + 1e-9, height_cm=100)
    assert resize_order(order, nearly) is order
    assert own_size(order) == nearly
