"""How often the real figure was within the range that was quoted, and how much that says."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from quoting.core.ground.binomial import ShareLimits, exact_limits
from quoting.core.making.outturn import CONFIDENCE, Outturn


@dataclass(frozen=True, slots=True, kw_only=True)
class Coverage:
    """Of `cases`, at least one, so many were inside; `limits` are the 95 % limits of the share."""

    inside: int
    cases: int

    @property
    def limits(self) -> ShareLimits:
        """Between what the share lies that the ranges hold in the long run."""
        return exact_limits(self.inside, self.cases, CONFIDENCE)

    @property
    def is_too_narrow(self) -> bool:
        """Whether the ranges are proved too narrow: not even the upper limit is what is meant."""
        return self.limits.high < CONFIDENCE


def stated_coverage(outturns: Sequence[Outturn]) -> Coverage:
    """Return how often the ranges held as they were quoted."""
    return Coverage(inside=sum(o.was_inside for o in outturns), cases=len(outturns))


def coverage_at(outturns: Sequence[Outturn], factor: float) -> Coverage:
    """Return how often they would have held as measured, widened by a factor."""
    return Coverage(inside=sum(o.would_be_inside(factor) for o in outturns), cases=len(outturns))
