"""Units and their exact factors."""

from __future__ import annotations

import pytest

from quoting.core.ground.measures import (
    CM_PER,
    CM_PER_INCH,
    CM_PER_YARD,
    GRAMS_PER,
    GRAMS_PER_OUNCE,
    tex,
)
from quoting.notation import FILE_MARKS, LENGTH, MASS, YARN_LENGTH, Quantity, read_measure


def test_inch_yard_and_ounce_are_exact() -> None:
    """NIST Handbook 44, appendix C."""
    assert CM_PER_INCH == CM_PER["in"] == 2.54
    assert CM_PER_YARD == CM_PER["yd"] == 91.44
    assert CM_PER["ft"] == 30.48
    assert GRAMS_PER_OUNCE == GRAMS_PER["oz"] == 28.349523125
    assert GRAMS_PER["lb"] == pytest.approx(453.59237, abs=1e-12)


@pytest.mark.parametrize(
    ("typed", "quantity", "inside"),
    [
        ("1 in", LENGTH, 2.54),
        ("1 ft", LENGTH, 30.48),
        ("1 yd", LENGTH, 91.44),
        ("1 m", LENGTH, 100),
        ("1 yd", YARN_LENGTH, 0.9144),
        ("100 yd", YARN_LENGTH, 91.44),
        ("1 oz", MASS, 28.349523125),
        ("1 lb", MASS, 453.59237),
        ("1 kg", MASS, 1000),
    ],
)
def test_measures_are_read_by_their_exact_factors(
    typed: str, quantity: Quantity, inside: float
) -> None:
    """NIST Handbook 44, appendix C, section 4: the underlined, exact values."""
    assert read_measure(typed, FILE_MARKS, quantity) == pytest.approx(inside, rel=1e-12)


def test_a_yard_is_three_feet_and_a_foot_twelve_inches_and_a_pound_sixteen_ounces() -> None:
    """NIST Handbook 44, appendix C, section 2."""
    for whole, parts, quantity in (
        ("1 yd", "3 ft", LENGTH),
        ("1 ft", "12 in", LENGTH),
        ("1 lb", "16 oz", MASS),
    ):
        read = [read_measure(text, FILE_MARKS, quantity) for text in (whole, parts)]
        assert read[0] == pytest.approx(read[1], rel=1e-12)


def test_tex_is_grams_for_a_kilometre() -> None:
    """ISO 1144: 200 m in 100 g are 500 tex, which is Nm 2.0 (metres in a gram)."""
    assert tex(200, 100) == 500
    assert 1000 / tex(200, 100) == 2.0
    assert tex(350, 100) == pytest.approx(100_000 / 350)
