"""Yarn categories, their gauges and hooks, and what one measurement of yarn per area says."""

from __future__ import annotations

import pytest

from quoting.core.categories import HOOK_MM, SC_IN_FOUR_INCHES, rough_stitch_width_cm
from quoting.core.gauge import gauge_of
from quoting.core.measures import CM_PER_INCH
from quoting.core.swatch import Reading, Run
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
    right = Reading(stitches=16, width_cm=4 * CM_PER_INCH, rows=12, height_cm=4 * CM_PER_INCH)
    wrong = Reading(stitches=16, width_cm=10, rows=12, height_cm=10)
    assert right.stitch_width_cm / wrong.stitch_width_cm == pytest.approx(1.016)
    assert right.row_height_cm / wrong.row_height_cm == pytest.approx(1.016)


INCHES_IN_25_SQUARE_INCHES = {"sc": 785.5, "hdc": 802.0, "dc": 790.0}
"""One published measurement of 5 in squares in one medium yarn."""


def cm_per_cm2(inches: float) -> float:
    return inches / 25 / CM_PER_INCH


def test_the_measured_squares_are_as_published() -> None:
    """One published measurement: 12.37, 12.63 and 12.44 cm of yarn per cm²."""
    found = [round(cm_per_cm2(inches), 2) for inches in INCHES_IN_25_SQUARE_INCHES.values()]
    assert found == [12.37, 12.63, 12.44]


@pytest.mark.parametrize("kind", ["hdc", "dc"])
def test_yarn_by_ratio_agrees_with_measured_squares_within_two_and_a_half_per_cent(
    kind: str,
) -> None:
    """One published measurement: from the square of sc alone the others are foretold."""
    sc_cm = cm_per_cm2(INCHES_IN_25_SQUARE_INCHES["sc"]) * 0.8 * 0.8
    swatch = sample_swatch(
        stitch="sc",
        gauge=Reading(stitches=10, width_cm=8, rows=10, height_cm=8),
        piece=None,
        run=Run(stitches=100, length_cm=100 * sc_cm),
    )
    gauge = gauge_of(sample_workshop(swatches=(swatch,)), WOOL, kind)
    foretold = gauge.yarn_m * 100 / (gauge.width_cm * gauge.height_cm)
    assert foretold == pytest.approx(cm_per_cm2(INCHES_IN_25_SQUARE_INCHES[kind]), rel=0.025)


@pytest.mark.parametrize("kind", list(INCHES_IN_25_SQUARE_INCHES))
def test_yarn_without_a_swatch_agrees_with_measured_squares_within_three_per_cent(
    kind: str,
) -> None:
    """One published measurement, in a medium yarn: category 4."""
    gauge = gauge_of(sample_workshop(swatches=()), WOOL, kind)
    rough = gauge.yarn_m * 100 / (gauge.width_cm * gauge.height_cm)
    assert rough == pytest.approx(cm_per_cm2(INCHES_IN_25_SQUARE_INCHES[kind]), rel=0.03)
