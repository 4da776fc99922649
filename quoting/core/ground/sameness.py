"""How near two figures are to be the same, where sums of floats stand a hair apart.

A float has some sixteen significant digits (IEEE 754 binary64), so that a sum of thousands of
lengths under ten kilometres is right to far less than a billionth.
"""

from __future__ import annotations

NEAR = 1e-9
"""Of a sum or two, in whatever unit: centimetres, metres, rows, days."""

NEAR_DIGITS = 9
"""Decimals to which figures that are ranked are rounded, so that equals are equal."""

HAIR = 1e-6
"""Of lengths that were added up over a whole blanket: no hand or ruler tells it."""
