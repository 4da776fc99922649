"""How good quotes were: what finished orders really took, beside what was quoted for them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from quoting.core.making.bias import Bias, bias_of
from quoting.core.making.case import Case
from quoting.core.making.coverage import Coverage, coverage_at, stated_coverage
from quoting.core.making.groups import Group, groups_by
from quoting.core.making.outturn import Outturn
from quoting.core.making.widening import Widening, widening_of
from quoting.core.workshop.ranges import Ranges

Size = tuple[float, float]
"""Width and height, in cm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Accuracy:
    """How near hours, or yarn, came to what was quoted, over the orders that tell it.

    `coverage` is of the ranges as they were quoted, `coverage_now` of the same as wide as the
    workshop would have them today; they and the `widening` are None where no order tells them.
    """

    bias: Bias
    coverage: Coverage | None
    coverage_now: Coverage | None
    widening: Widening | None


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackRecord:
    """What the finished orders say together; `cases` come in the order they were finished."""

    cases: tuple[Case, ...]
    hours: Accuracy | None
    grams: Accuracy | None
    by_size: tuple[Group[Size], ...]
    by_stitch: tuple[Group[str], ...]
    by_buyer: tuple[Group[str], ...]

    @property
    def without_hours(self) -> int:
        """How many orders do not tell their hours, and are left out of what is said of these."""
        return sum(case.hours is None for case in self.cases)

    @property
    def partly_projected(self) -> int:
        """How many tell their hours of some rows only: the others went by the pace of these."""
        told = (case for case in self.cases if case.hours is not None)
        return sum(bool(case.outcome.projected) for case in told)

    @property
    def without_grams(self) -> int:
        """How many do not tell their yarn."""
        return sum(case.grams is None for case in self.cases)

    @property
    def currencies(self) -> tuple[str, ...]:
        """The currencies of what was earned, each once."""
        return tuple(dict.fromkeys(c.currency for c in self.cases if c.earned is not None))


def track_record(cases: Sequence[Case], ranges: Ranges) -> TrackRecord:
    """Return what finished orders say of the quotes of a workshop with these ranges."""
    ordered = tuple(sorted(cases, key=lambda case: (case.finished, case.order_id)))
    hours = [case.hours for case in ordered if case.hours is not None]
    grams = [case.grams for case in ordered if case.grams is not None]
    return TrackRecord(
        cases=ordered,
        hours=_accuracy(hours, ranges.hours),
        grams=_accuracy(grams, ranges.yarn),
        by_size=groups_by(ordered, lambda case: (case.stated.width_cm, case.stated.height_cm)),
        by_stitch=groups_by(ordered, lambda case: case.stated.stitch),
        by_buyer=groups_by(ordered, lambda case: case.buyer),
    )


def _accuracy(outturns: Sequence[Outturn], present: float) -> Accuracy | None:
    if not outturns:
        return None
    ranged = [outturn for outturn in outturns if outturn.half_width is not None]
    return Accuracy(
        bias=bias_of(outturns),
        coverage=stated_coverage(ranged) if ranged else None,
        coverage_now=coverage_at(ranged, present) if ranged else None,
        widening=widening_of(ranged, present),
    )
