"""By how much ranges have to be widened, so that the next order's figure is within its own.

What is asked is that the next real figure is inside 19 times in 20, whichever way the ranges
fail: too narrow, or round a figure that is off as a rule.

Sources: from 19 cases on, an order statistic (distribution-free prediction: Wilks, Ann. Math.
Stat. 12, 1941; as split conformal prediction it is in Vovk, Gammerman & Shafer, *Algorithmic
Learning in a Random World*): the ⌈0.95·(n + 1)⌉-th smallest of n misses holds the next at least
19 times in 20 whatever their distribution. For fewer there is no such one among them, and
Student's t predicts the next of a normal sample (Hahn & Meeker, *Statistical Intervals*).
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from quoting.core.ground.student_t import two_sided_t
from quoting.core.making.coverage import coverage_at
from quoting.core.making.outturn import CONFIDENCE, Outturn
from quoting.core.workshop.ranges import MOST_WIDENED

HUNDREDTHS = 100
"""Factors are told, and taken over, to two decimals, rounded up."""


class Method(StrEnum):
    """What a factor rests on."""

    ORDER_STATISTIC = "order statistic"
    STUDENT_T = "student's t"


@dataclass(frozen=True, slots=True, kw_only=True)
class Widening:
    """The factor that so many cases ask for, from 1 to the most that a workshop takes.

    `present` is the workshop's own; `is_needed` says that with it the ranges are proved too narrow.
    """

    factor: float
    present: float
    cases: int
    method: Method
    is_needed: bool

    @property
    def is_other(self) -> bool:
        """Whether it is another than the workshop's own."""
        return self.factor != self.present


def widening_of(outturns: Sequence[Outturn], present: float) -> Widening | None:
    """Return what figures with their ranges ask for; None of fewer than two, which tell nothing."""
    if len(outturns) < 2:
        return None
    misses = [outturn.misses for outturn in outturns]
    rank = math.ceil(round(CONFIDENCE * (len(misses) + 1), 9))
    by_rank = rank <= len(misses)
    factor = sorted(map(abs, misses))[rank - 1] if by_rank else _foretold(misses)
    return Widening(
        factor=_rounded_up(min(max(1.0, factor), MOST_WIDENED)),
        present=present,
        cases=len(misses),
        method=Method.ORDER_STATISTIC if by_rank else Method.STUDENT_T,
        is_needed=coverage_at(outturns, present).is_too_narrow,
    )


def _foretold(misses: Sequence[float]) -> float:
    """Return how far the next may lie from the figure stated: |x̄| + t·s·√(1 + 1/n)."""
    if not all(map(math.isfinite, misses)):
        return math.inf
    n = len(misses)
    reach = two_sided_t(CONFIDENCE, n - 1) * statistics.stdev(misses) * math.sqrt(1 + 1 / n)
    return abs(statistics.fmean(misses)) + reach


def _rounded_up(factor: float) -> float:
    return math.ceil(round(factor * HUNDREDTHS, 6)) / HUNDREDTHS
