"""Whether what is quoted is too little or too much as a rule, and how much single orders differ."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from quoting.core.ground.student_t import two_sided_t
from quoting.core.making.outturn import CONFIDENCE, Outturn


@dataclass(frozen=True, slots=True, kw_only=True)
class Bias:
    """The mean of real/stated − 1 over some cases, with its 95 % limits.

    `spread` is the standard deviation of the ratios; it and the limits are None of a single case,
    which says nothing of the next.
    """

    cases: int
    mean: float
    spread: float | None = None
    low: float | None = None
    high: float | None = None

    @property
    def is_shown(self) -> bool:
        """Whether it is more than chance: nought lies outside its limits."""
        return self.low is not None and self.high is not None and self.low * self.high > 0


def bias_of(outturns: Sequence[Outturn]) -> Bias:
    """Return the bias of one or more figures: x̄ ± t(n − 1)·s/√n, Student's t."""
    off = [outturn.ratio - 1 for outturn in outturns]
    mean = math.fsum(off) / len(off)
    if len(off) == 1:
        return Bias(cases=1, mean=mean)
    spread = statistics.stdev(off)
    limits = two_sided_t(CONFIDENCE, len(off) - 1) * spread / math.sqrt(len(off))
    return Bias(cases=len(off), mean=mean, spread=spread, low=mean - limits, high=mean + limits)
