"""How little and how much yarn of a colour the work may really take."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.estimate.estimate import ColourEstimate


@dataclass(frozen=True, slots=True, kw_only=True)
class GramsRange:
    """The ends of a 95 % range of a weight."""

    low: float
    high: float


def grams_range(colour: ColourEstimate) -> GramsRange:
    """Return the range of what a colour weighs in the end; the yarn of extras is given."""
    half_width = colour.yarn.limits * colour.walk.yarn_m / colour.metres_per_gram
    return GramsRange(low=max(0.0, colour.grams - half_width), high=colour.grams + half_width)
