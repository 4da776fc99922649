"""A figure as it was quoted, and as it turned out."""

from __future__ import annotations

import math
from dataclasses import dataclass

from quoting.core.ground.sameness import NEAR

CONFIDENCE = 0.95
"""How often a quoted range is meant to hold, and how sure the limits are that are told of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Outturn:
    """What was stated, above 0, with the half-width of its 95 % range, and what it really was.

    The range was `widened_by` a factor of the workshop's when it was stated. A quote that was
    given before ranges were kept has no half-width.
    """

    stated: float
    real: float
    half_width: float | None = None
    widened_by: float = 1.0

    @property
    def ratio(self) -> float:
        """How many times as much it was."""
        return self.real / self.stated

    @property
    def was_inside(self) -> bool:
        """Whether it was within the range that was stated."""
        return self.would_be_inside(self.widened_by)

    @property
    def misses(self) -> float:
        """How many half-widths of the range as measured it was over what was stated.

        A range of no width, which nothing can be within, is missed by as much as can be told.
        """
        off = self.real - self.stated
        measured = (self.half_width or 0.0) / self.widened_by
        if not measured:
            return math.copysign(math.inf, off) if off else 0.0
        return off / measured

    def would_be_inside(self, factor: float) -> bool:
        """Return whether it would be within the range as measured, widened by a factor."""
        return abs(self.misses) <= factor * (1 + NEAR)
