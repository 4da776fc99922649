"""What follows from a measured motif: its yarn, its side, how it grows, how long it takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from quoting.core.estimate.pace import FEW_SESSIONS, Pace, Span
from quoting.core.estimate.stitching_time import paces_of
from quoting.core.ground.errors import Refused
from quoting.core.plan.gauge import Gauge, gauge_of
from quoting.core.plan.motif_gauges import FEW_WEIGHED, motif_sides
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.timings import TimedStitch
from quoting.core.workshop.workshop import Workshop


class GrowthBy(StrEnum):
    """What it is known by how much wider each round makes a motif."""

    TWO_SIDES = "by its two sides"
    SWATCH = "by the rows of the swatch in its stitch"
    ALL_ROUNDS = "all its rounds taken alike"


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredMotif:
    """A motif with the yarn of one, what a round adds to its side, and its pace if it was timed."""

    motif: Motif
    metres: float
    grams: float
    growth_cm: float
    growth_by: GrowthBy
    pace: Pace | None

    @property
    def minutes(self) -> Span | None:
        """The minutes of one and their range, None where it was not timed."""
        return self.pace.predict(1) if self.pace is not None else None

    @property
    def weighed_few(self) -> bool:
        """Whether more of them on the scale would say more of one."""
        weighed = self.motif.weighed
        return weighed is not None and weighed.motifs < FEW_WEIGHED

    @property
    def for_a_start(self) -> int:
        """Timings without which nothing is promised of its pace."""
        return FEW_SESSIONS - min(FEW_SESSIONS, len(self.motif.timings))


def measured_motifs(workshop: Workshop) -> Iterator[MeasuredMotif]:
    """Yield what follows from each motif of a workshop."""
    paces = _paces(workshop)
    for motif in workshop.motifs:
        per_gram = workshop.yarn(motif.yarn).metres_per_gram
        gauge = gauge_of(workshop, motif.yarn, motif.stitch)
        metres = motif.metres(per_gram)
        yield MeasuredMotif(
            motif=motif,
            metres=metres,
            grams=metres / per_gram,
            growth_cm=motif_sides(motif, gauge).growth_cm,
            growth_by=_growth_by(motif, gauge),
            pace=paces.get(motif.timed),
        )


def _growth_by(motif: Motif, gauge: Gauge) -> GrowthBy:
    if motif.earlier is not None:
        return GrowthBy.TWO_SIDES
    as_swatch = gauge.swatched and motif_sides(motif, gauge).growth_cm == 2 * gauge.height_cm
    return GrowthBy.SWATCH if as_swatch else GrowthBy.ALL_ROUNDS


def _paces(workshop: Workshop) -> Mapping[TimedStitch, Pace]:
    """Return the paces of all that was timed; none where turns take more than all of a timing."""
    try:
        return paces_of(workshop)
    except Refused:
        return {}
