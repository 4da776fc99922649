"""The border of a circle or a hexagon: into each stitch, or by length where widths differ."""

from __future__ import annotations

import math

import pytest

from quoting.core.plan.passes import Plan
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.swatches import Reading
from tests.core.test_from_centre import WIDE_CM, centre_plan
from tests.examples import band
from tests.motif_examples import motif_workshop, tall_swatch


def bordered(counting: Counting, rows: int) -> Plan:
    """Return 51 rounds in a border, in dc at 17 stitches and so many rows to 10 cm."""
    gauge = Reading(stitches=17, width_cm=10, rows=rows, height_cm=10)
    return centre_plan(
        counting=counting,
        rounds=51,
        workshop=motif_workshop(swatches=(tall_swatch(gauge=gauge),)),
        design={"border": (band("dc", rounds=2),)},
    )


def codes(plan: Plan) -> set[str]:
    return {caution.code.value for caution in plan.cautions}


def test_where_a_circle_lies_flat_its_border_goes_into_each_stitch() -> None:
    """At 9 rows: 51 × 2 / 0.9 = 113.3 cm across, 356 cm round, 606 stitches of the swatch."""
    plan = bordered(Counting.CIRCLE, 9)
    assert math.pi * 51 * 2 / 0.9 / WIDE_CM == pytest.approx(605.3, abs=0.1)
    assert plan.rounds[0].stitches == {"dc": 51 * 12}
    assert not codes(plan) & {"rounds-cup", "rounds-ruffle"}


@pytest.mark.parametrize("rows", [9, 10])
def test_where_a_hexagon_lies_nearly_flat_its_border_goes_into_each_stitch(rows: int) -> None:
    """At 10 rows: 102 cm across, 58.9 cm a side, 100.1 stitches of the swatch on 102."""
    plan = bordered(Counting.HEXAGON, rows)
    assert plan.rounds[0].sides == (51 * 2,) * 6


@pytest.mark.parametrize(("rows", "stitches"), [(7, 778), (8, 681), (11, 495), (13, 419)])
def test_round_a_circle_that_ruffles_or_cups_a_border_goes_by_length(
    rows: int, stitches: int
) -> None:
    """π × 51 × 2 × 10 / rows cm, at 1.7 stitches a cm."""
    plan = bordered(Counting.CIRCLE, rows)
    assert round(math.pi * 51 * 2 * 10 / rows * 1.7) == stitches
    assert plan.rounds[0].stitches == {"dc": stitches}
    assert codes(plan) & {"rounds-cup", "rounds-ruffle"}


@pytest.mark.parametrize(("rows", "stitches"), [(7, 143), (8, 125), (12, 83), (13, 77)])
def test_round_a_hexagon_that_ruffles_or_cups_a_border_goes_by_length(
    rows: int, stitches: int
) -> None:
    """A side is the width across over √3, at 1.7 stitches a cm."""
    plan = bordered(Counting.HEXAGON, rows)
    assert round(51 * 2 * 10 / rows / math.sqrt(3) * 1.7) == stitches
    assert plan.rounds[0].sides == (stitches,) * 6
