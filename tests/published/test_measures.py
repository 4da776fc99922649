"""Units and their exact factors."""

from __future__ import annotations

import pytest

from quoting.core.measures import CM_PER, CM_PER_INCH, CM_PER_YARD, GRAMS_PER, GRAMS_PER_OUNCE, tex


def test_inch_yard_and_ounce_are_exact() -> None:
    """NIST Handbook 44, appendix C."""
    assert CM_PER_INCH == CM_PER["in"] == 2.54
    assert CM_PER_YARD == CM_PER["yd"] == 91.44
    assert CM_PER["ft"] == 30.48
    assert GRAMS_PER_OUNCE == GRAMS_PER["oz"] == 28.349523125
    assert GRAMS_PER["lb"] == pytest.approx(453.59237, abs=1e-12)


def test_tex_is_grams_for_a_kilometre() -> None:
    """ISO 1144: 200 m in 100 g are 500 tex, which is Nm 2.0 (metres in a gram)."""
    assert tex(200, 100) == 500
    assert 1000 / tex(200, 100) == 2.0
    assert tex(350, 100) == pytest.approx(100_000 / 350)
