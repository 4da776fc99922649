"""Yarn categories, their gauges and hooks, and what one measurement of yarn per area says."""

from __future__ import annotations

import pytest

from quoting.core.plan.gauge import Gauge, gauge_of
from quoting.core.workshop.categories import HOOK_MM, SC_IN_FOUR_INCHES, rough_stitch_width_cm
from quoting.core.workshop.swatches import Reading, Run, Swatch
from quoting.notation import FILE_MARKS, read_measure
from tests.examples import WOOL, sample_swatch, sample_workshop


@pytest.mark.parametrize(
    ("category", "stitches", "hook_mm"),
    [
        (1, (21, 32), (2.25, 3.5)),
        (2, (16, 20), (3.5, 4.5)),
        (3, (12, 17), (4.5, 5.5)),
        (4, (11, 14), (5.5, 6.5)),
        (5, (8, 11), (6.5, 9.0)),
    ],
)
def test_categories_have_their_published_gauge_and_hooks(
    category: int, stitches: tuple[int, int], hook_mm: tuple[float, float]
) -> None:
    """Craft Yarn Council, Standard Yarn Weight System (2018): single crochet to 4 in."""
    assert SC_IN_FOUR_INCHES[category] == stitches
    assert HOOK_MM[category] == hook_mm


def test_a_rough_stitch_is_that_of_the_middle_of_the_published_range() -> None:
    """Craft Yarn Council (2018): 11 to 14 to 4 in, so 12.5 to 10.16 cm."""
    assert rough_stitch_width_cm(4) == pytest.approx(10.16 / 12.5)


def test_a_gauge_over_four_inches_is_not_one_over_ten_centimetres() -> None:
    """NIST Handbook 44, appendix C: 4 in are 10.16 cm, so the mistake is 1.6 %."""
    four = read_measure("4 in", FILE_MARKS)
    right = Reading(stitches=16, width_cm=four, rows=12, height_cm=four)
    wrong = Reading(stitches=16, width_cm=10, rows=12, height_cm=10)
    assert right.stitch_width_cm / wrong.stitch_width_cm == pytest.approx(1.016)
    assert right.row_height_cm / wrong.row_height_cm == pytest.approx(1.016)


INCHES_IN_A_SQUARE = {"sc": 785.5, "hdc": 802.0, "dc": 790.0}
"""One published measurement: the yarn of a square of 5 by 5 inches, in one medium yarn."""

CM_PER_CM2 = {"sc": 12.37, "hdc": 12.63, "dc": 12.44}
"""The same in centimetres of yarn for a square centimetre."""


def unravelled(stitch: str) -> Swatch:
    """Return a square as a maker would type it: how many inches it is, and its yarn unravelled."""
    side, yarn = (
        read_measure(f"{inches} in", FILE_MARKS) for inches in (5, INCHES_IN_A_SQUARE[stitch])
    )
    return sample_swatch(
        stitch=stitch,
        gauge=Reading(stitches=16, width_cm=side, rows=20, height_cm=side),
        piece=None,
        run=Run(stitches=16 * 20, length_cm=yarn),
    )


def yarn_on(gauge: Gauge) -> float:
    """Return the centimetres of yarn in a square centimetre."""
    return gauge.yarn_m * 100 / (gauge.width_cm * gauge.height_cm)


@pytest.mark.parametrize("stitch", list(CM_PER_CM2))
def test_the_measured_squares_are_as_published(stitch: str) -> None:
    """One published measurement: 12.37, 12.63 and 12.44 cm of yarn per cm²."""
    gauge = gauge_of(sample_workshop(swatches=(unravelled(stitch),)), WOOL, stitch)
    assert yarn_on(gauge) == pytest.approx(CM_PER_CM2[stitch], abs=0.005)


@pytest.mark.parametrize("stitch", ["hdc", "dc"])
def test_yarn_by_ratio_agrees_with_measured_squares_within_two_and_a_half_per_cent(
    stitch: str,
) -> None:
    """One published measurement: from the square of sc alone the others are foretold."""
    gauge = gauge_of(sample_workshop(swatches=(unravelled("sc"),)), WOOL, stitch)
    assert yarn_on(gauge) == pytest.approx(CM_PER_CM2[stitch], rel=0.025)


@pytest.mark.parametrize("stitch", list(CM_PER_CM2))
def test_yarn_without_a_swatch_agrees_with_measured_squares_within_three_per_cent(
    stitch: str,
) -> None:
    """One published measurement, in a medium yarn: category 4."""
    gauge = gauge_of(sample_workshop(swatches=()), WOOL, stitch)
    assert yarn_on(gauge) == pytest.approx(CM_PER_CM2[stitch], rel=0.03)
