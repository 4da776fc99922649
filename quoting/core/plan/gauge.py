"""The gauge of a stitch in a yarn: its size, its yarn, and how sure these are."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import NamedTuple

from quoting.core.workshop.categories import rough_stitch_width_cm
from quoting.core.workshop.stitches import HEIGHT_RATIO, YARN_RATIO, Stitch
from quoting.core.workshop.swatches import Swatch
from quoting.core.workshop.workshop import Workshop

Z_95 = 1.96
ESTIMATED_LIMITS = 0.15
ROUGH_LIMITS = 0.25
PATTERN_LIMITS = 0.35
"""Texture is in no ratio: what a pattern takes that has no swatch of its own."""

CM_OF_YARN_PER_CM2 = 10.0
"""With no swatch, yarn per area is this over the stitch width in cm."""


FLAT = (Stitch.CH, Stitch.SLIP)
"""What has no height of its own."""


class Fabric(NamedTuple):
    """What the yarn of a stitch is measured by: its swatch, or a motif, perhaps one of its rounds.

    `round` is 0 where the rounds of a motif were not measured one by one.
    """

    motif: str = ""
    round: int = 0


BY_SWATCH = Fabric()


class Made(NamedTuple):
    """A stitch, `ch` too, in a yarn, as it is worked in a fabric: what has one gauge."""

    yarn: str
    stitch: str
    fabric: Fabric = BY_SWATCH


class Sureness(StrEnum):
    """What a figure rests on, from the surest down."""

    MEASURED = "measured"
    ONE_TIMING = "one timing"
    ESTIMATED = "estimated"
    ROUGH = "rough"


@dataclass(frozen=True, slots=True, kw_only=True)
class Gauge:
    """One stitch in one yarn.

    `basis` names the swatch that the figures rest on: errors of one basis go together.
    `basis_error` is the relative standard uncertainty of the yarn that the basis leaves;
    `guess_limits` the 95 % limits added for a figure taken by a ratio, `borrowed_limits` those of
    the guess that this yarn works up as the one that was measured, which is one for all its
    stitches. With `one_guess` all that rests on the basis is off together by `guess_limits`, else
    each stitch by itself. `swatched` says whether any swatch stands behind it, of whatever
    stitch, or only the yarn's category.
    """

    stitch: str
    kind: Stitch
    width_cm: float
    height_cm: float
    yarn_m: float
    sureness: Sureness
    basis: str
    basis_error: float
    guess_limits: float = 0.0
    borrowed_limits: float = 0.0
    swatched: bool = True
    one_guess: bool = False


def gauge_of(workshop: Workshop, yarn_name: str, stitch: str) -> Gauge:
    """Return the gauge of a stitch or pattern in a yarn.

    It is measured where the stitch has swatches; taken by the trade's ratios from the nearest
    stitch that has one, else, which for a pattern is rough; and from the yarn's category, where
    the yarn has none at all. Chains and slip stitches have their part of a single crochet's yarn.
    """
    if stitch in FLAT:
        return _flat(workshop, yarn_name, Stitch(stitch))
    kind = workshop.basic_stitch(stitch, "stitch")
    swatches = [s for s in workshop.swatches if s.yarn == yarn_name]
    if not swatches:
        return _rough(workshop, yarn_name, stitch, kind)
    base_name = _nearest_swatched(workshop, swatches, stitch, kind)
    base = _measured(workshop, [s for s in swatches if s.stitch == base_name])
    if base_name == stitch:
        return base
    return _by_ratio(base, stitch, kind)


def has_swatch(workshop: Workshop, yarn_name: str) -> bool:
    """Return whether anything at all has been measured in this yarn."""
    return any(swatch.yarn == yarn_name for swatch in workshop.swatches)


def _measured(workshop: Workshop, swatches: Sequence[Swatch]) -> Gauge:
    """Return the mean of the swatches of one stitch in one yarn."""
    first = swatches[0]
    kind = workshop.basic_stitch(first.stitch, "stitch")
    turning = workshop.turning_chain(first.stitch)
    per_gram = workshop.yarn(first.yarn).metres_per_gram
    yarn_m = [
        s.yarn_per_stitch_m(kind=kind, turning=turning, metres_per_gram=per_gram) for s in swatches
    ]
    return Gauge(
        stitch=first.stitch,
        kind=kind,
        width_cm=statistics.fmean(s.gauge.stitch_width_cm for s in swatches),
        height_cm=statistics.fmean(s.gauge.row_height_cm for s in swatches),
        yarn_m=statistics.fmean(yarn_m),
        sureness=Sureness.MEASURED,
        basis=f"{first.yarn}/{first.stitch}",
        basis_error=max(*(s.reading_error for s in swatches), _spread(yarn_m)),
    )


def _spread(readings: Sequence[float]) -> float:
    """Return s·√(1 + 1/n) over the mean: how far one more reading may lie (JCGM 100)."""
    if len(readings) < 2:
        return 0.0
    deviation = statistics.stdev(readings)
    return deviation * math.sqrt(1 + 1 / len(readings)) / statistics.fmean(readings)


def _nearest_swatched(
    workshop: Workshop, swatches: Sequence[Swatch], stitch: str, kind: Stitch
) -> str:
    """Return the swatched stitch to reckon from: itself, else the nearest in height.

    Of several as near, a basic one, then the lower, then the first by name: the order of the
    file tells nothing.
    """

    def distance(name: str) -> tuple[bool, float, bool, float, str]:
        other = workshop.basic_stitch(name, "stitch")
        ratio = HEIGHT_RATIO[other] / HEIGHT_RATIO[kind]
        return name != stitch, abs(math.log(ratio)), name != other, ratio, name

    return min((swatch.stitch for swatch in swatches), key=distance)


def _by_ratio(base: Gauge, stitch: str, kind: Stitch) -> Gauge:
    ratio = HEIGHT_RATIO[kind] / HEIGHT_RATIO[base.kind]
    is_pattern = stitch != kind
    return replace(
        base,
        stitch=stitch,
        kind=kind,
        height_cm=base.height_cm * ratio,
        yarn_m=base.yarn_m * ratio,
        sureness=Sureness.ROUGH if is_pattern else Sureness.ESTIMATED,
        guess_limits=PATTERN_LIMITS if is_pattern else ESTIMATED_LIMITS,
    )


def _rough(workshop: Workshop, yarn_name: str, stitch: str, kind: Stitch) -> Gauge:
    """Return the middle of the category's range; a single crochet is taken to be square."""
    width = rough_stitch_width_cm(workshop.yarn(yarn_name).category)
    height = width * HEIGHT_RATIO[kind]
    return Gauge(
        stitch=stitch,
        kind=kind,
        width_cm=width,
        height_cm=height,
        yarn_m=CM_OF_YARN_PER_CM2 / width * (width * height) / 100,
        sureness=Sureness.ROUGH,
        basis=f"{yarn_name}/category",
        basis_error=(ROUGH_LIMITS if stitch == kind else PATTERN_LIMITS) / Z_95,
        swatched=False,
    )


def _flat(workshop: Workshop, yarn_name: str, stitch: Stitch) -> Gauge:
    """Return the gauge of what has no height of its own: its part of a single crochet's yarn.

    Chains lie within what was measured; slip stitches make a seam, whose yarn is all a guess.
    """
    single = gauge_of(workshop, yarn_name, Stitch.SC)
    is_guess = stitch is Stitch.SLIP and single.swatched
    part = YARN_RATIO[stitch] / YARN_RATIO[Stitch.SC]
    return replace(
        single,
        stitch=stitch.value,
        kind=stitch,
        height_cm=0.0,
        yarn_m=single.yarn_m * part,
        guess_limits=ESTIMATED_LIMITS if is_guess else 0.0,
    )
