"""Exact factors between the units a maker meets and those used inside (cm, m, g).

Source: NIST Handbook 44, appendix C: inch, yard and ounce are exact by definition.
"""

from __future__ import annotations

from enum import StrEnum

CM_PER_INCH = 2.54
CM_PER_YARD = 91.44
GRAMS_PER_OUNCE = 28.349523125

LEAST_CM, LEAST_G, LEAST_YARN_M = 0.01, 0.1, 0.1
"""Less than these no maker measures, and a figure that is divided by less has no end."""

CM_PER = {"mm": 0.1, "cm": 1.0, "m": 100.0, "in": CM_PER_INCH, "ft": 30.48, "yd": CM_PER_YARD}
GRAMS_PER = {"g": 1.0, "kg": 1000.0, "oz": GRAMS_PER_OUNCE, "lb": 16 * GRAMS_PER_OUNCE}


class Units(StrEnum):
    """What pages and documents show: centimetres, metres, grams, or inches, yards, ounces."""

    METRIC = "cm"
    INCHES = "in"


def tex(metres: float, grams: float) -> float:
    """Return a yarn's linear density in tex: grams per kilometre (ISO 1144)."""
    return 1000.0 * grams / metres
