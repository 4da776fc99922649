"""How much wider the ranges are told than the measurements alone would have them."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.ground.errors import Checks

MOST_WIDENED = 50.0
"""A range that would have to be wider still says nothing any more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranges:
    """Factors of the half-widths of hours and of yarn, never under 1.

    They come from what finished orders really took, and a maker takes them over or types them.
    """

    hours: float = 1.0
    yarn: float = 1.0

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("hours", self.hours, least=1, most=MOST_WIDENED)
        checks.number("yarn", self.yarn, least=1, most=MOST_WIDENED)
        checks.done()
