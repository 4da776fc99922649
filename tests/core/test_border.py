"""How many stitches each round of a border has, at all three kinds of corner."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.border import (
    Body,
    border_depth_cm,
    border_rounds,
    growth,
    ratio_is_off,
    row_end_ratio,
)
from quoting.core.design import Corner
from quoting.core.gauge import Gauge, Sureness
from quoting.core.plan import plan_order
from quoting.core.stitches import Stitch
from tests.examples import band, plain_gauge, sample_design, sample_order, sample_workshop

SC = plain_gauge(Stitch.SC, 0.8, 0.8)
DC = plain_gauge(Stitch.DC, 0.8, 1.6)
GAUGES = {"sc": SC, "dc": DC}


def body(rows: int = 10, across: int = 20, gauge: Gauge = SC, last: int | None = None) -> Body:
    return Body(first_row=across, last_row=last or across, row_gauges=[gauge] * rows)


@pytest.mark.parametrize(
    ("corner", "counts", "chains"),
    [
        (Corner.CHAIN, [60, 68, 76], 8),
        (Corner.ONE_EXTRA, [64, 72, 80], 0),
        (Corner.THREE_IN_ONE, [68, 76, 84], 0),
    ],
)
def test_rounds_grow_by_the_habit_at_the_corner(
    corner: Corner, counts: list[int], chains: int
) -> None:
    rounds = border_rounds([band(rounds=3, corner=corner)], body(), GAUGES)
    assert [one.stitches for one in rounds] == counts
    assert {one.chains for one in rounds} == {chains}


def test_a_body_wider_at_one_end_has_its_own_stitches_along_each() -> None:
    (first,) = border_rounds([band()], body(last=26), GAUGES)
    assert first.stitches == 20 + 26 + 2 * 10


def test_a_side_comes_to_whole_stitches_once_not_row_by_row() -> None:
    tall = plain_gauge(Stitch.HDC, 0.8, 1.0)
    (first,) = border_rounds([band()], body(rows=9, gauge=tall), GAUGES)
    assert first.stitches == 2 * 20 + 2 * 11  # 9 x 1.25 = 11.25


def test_the_makers_own_ratio_holds_for_the_first_round_only() -> None:
    rounds = border_rounds([band(row_end_ratio=2.0, rounds=2)], body(), GAUGES)
    assert [one.stitches for one in rounds] == [2 * 20 + 2 * 20, 2 * 20 + 2 * 20 + 8]


@pytest.mark.parametrize(
    ("tall", "more"), [(0.4, 8), (0.8, 8), (1.0, 12), (1.2, 12), (1.6, 16), (2.4, 24)]
)
def test_a_round_without_chains_grows_with_its_height_to_the_nearest_four(
    tall: float, more: int
) -> None:
    """By geometry, 8 x height / width; and never less than 8."""
    assert growth(Corner.ONE_EXTRA, plain_gauge(Stitch.SC, 0.8, tall)) == more
    assert growth(Corner.THREE_IN_ONE, plain_gauge(Stitch.SC, 0.8, tall)) == more


@pytest.mark.parametrize(
    ("kind", "more"), [(Stitch.SC, 8), (Stitch.HDC, 8), (Stitch.DC, 16), (Stitch.TR, 24)]
)
def test_a_round_over_chains_grows_by_its_kind_however_tall_it_is(kind: Stitch, more: int) -> None:
    """Common practice, no source: one, one, two or three stitches on each side of the chains."""
    assert growth(Corner.CHAIN, plain_gauge(kind, 0.8, 0.4)) == more
    assert growth(Corner.CHAIN, plain_gauge(kind, 0.8, 4.0)) == more


@pytest.mark.parametrize(
    ("kind", "more"), [(Stitch.SC, 8), (Stitch.HDC, 12), (Stitch.DC, 16), (Stitch.TR, 24)]
)
def test_an_unmeasured_round_grows_by_the_trades_heights(kind: Stitch, more: int) -> None:
    rough = replace(plain_gauge(kind, 1, 1), sureness=Sureness.ROUGH)
    assert growth(Corner.THREE_IN_ONE, rough) == more


def test_a_measured_border_stitch_counts_row_ends_by_its_width() -> None:
    assert row_end_ratio(body(gauge=DC), SC) == pytest.approx(2.0)
    mixed = Body(first_row=20, last_row=20, row_gauges=[SC, SC, DC])
    assert row_end_ratio(mixed, SC) == pytest.approx(4 / 3)


def test_the_border_is_as_deep_as_its_rounds_are_high() -> None:
    assert border_depth_cm([band(rounds=2), band("dc")], GAUGES) == pytest.approx(0.8 * 2 + 1.6)
    assert border_depth_cm([], GAUGES) == 0


def test_a_second_band_goes_on_from_the_first() -> None:
    rounds = border_rounds([band(), band("dc", "rust")], body(), GAUGES)
    assert [(one.colour, one.stitches) for one in rounds] == [("oat", 60), ("rust", 76)]


def test_a_ratio_is_off_beyond_a_tenth_of_the_measured_one() -> None:
    assert not ratio_is_off(1.09, 1.0)
    assert ratio_is_off(1.11, 1.0)
    assert ratio_is_off(0.89, 1.0)
    assert not ratio_is_off(3.29, 3.0)
    assert ratio_is_off(0.44, 0.5)


def test_a_ratio_that_is_off_is_told_with_both_figures() -> None:
    def cautions(ratio: float) -> list[tuple[str, object]]:
        design = sample_design(border=(band(row_end_ratio=ratio),))
        plan = plan_order(sample_order(design=design), sample_workshop())
        return [(one.code, one.facts.get("measured")) for one in plan.cautions]

    assert cautions(1.0) == [("row-ends-off", pytest.approx(1.1875))]
    assert cautions(1.2) == []


def test_a_blanket_without_a_border_has_no_rounds() -> None:
    plan = plan_order(sample_order(design=sample_design(border=())), sample_workshop())
    assert plan.rounds == ()
    assert plan.border_depth_cm == 0
