"""What the yarn that an order used tells of the yarn in a stitch, as further swatches."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.yarn_needed import StitchIn
from quoting.core.ground.measures import LEAST_CM
from quoting.core.making.log_lines import LogEntry, YarnUsed
from quoting.core.making.made_rows import made_rows
from quoting.core.making.planned_yarn import PlannedYarn, planned_yarn
from quoting.core.making.progress import of_colour
from quoting.core.making.yarn_left import yarn_use
from quoting.core.making.yarn_use import YarnUse
from quoting.core.plan.gauge import BY_SWATCH, Gauge, Made, Sureness
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Reading, Run, Swatch
from quoting.core.workshop.workshop import Workshop

RUN_STITCHES = 100
"""Of the run that a swatch is given as: what they take is shown in whole millimetres."""

SCALE_STEP_G = 1.0
"""What a kitchen scale shows, by which yarn is taken to be weighed: common practice."""

MOST_RULER_STEP_CM = 100.0
"""What a run may be unsure by at most, as swatches have it."""

GAUGE_CM = 10.0
"""The width and the height over which a mean gauge is told."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """What was told of one yarn, over all its colours: how much, until when, in which stitches."""

    use: YarnUse
    grams: float
    day: date
    stitches: tuple[str, ...]


def swatches_told(
    quote: Quote, entries: tuple[LogEntry, ...], workshop: Workshop
) -> Iterator[Swatch]:
    """Yield a swatch of each stitch that has one in the workshop and whose yarn was told of.

    What was used over what was planned is one ratio for all stitches of a yarn: chains, carries and
    tails are in both, and what extras were given is in neither. It is given as a counted run, as
    unsure as the scale leaves it; the gauge is that of the earlier swatches.
    """
    by_yarn: dict[str, list[ColourEstimate]] = {}
    for colour in quote.estimate.colours:
        by_yarn.setdefault(colour.source.yarn, []).append(colour)
    for yarn, colours in by_yarn.items():
        used = _told_of(quote, entries, colours)
        for stitch in used.stitches if used is not None else ():
            gauge = quote.plan.gauges[Made(yarn, stitch)]
            before = [s for s in workshop.swatches if (s.yarn, s.stitch) == (yarn, stitch)]
            if used is not None and gauge.sureness is Sureness.MEASURED and before:
                yield from _further_swatch(used, gauge, before)


def _told_of(
    quote: Quote, entries: tuple[LogEntry, ...], colours: Sequence[ColourEstimate]
) -> _Told | None:
    rows, uses, lines, stitches = (
        made_rows(quote),
        list[YarnUse](),
        list[YarnUsed](),
        list[StitchIn](),
    )
    for colour in colours:
        own = of_colour(quote, entries, YarnUsed, colour.colour)
        planned = planned_yarn(colour, rows)
        use = _in_stitches(planned, *yarn_use(colour, planned, own))
        if use.planned_m and use.used_m:
            uses.append(use)
            lines += own
            stitches += colour.yarn.counts
    if not uses:
        return None
    return _Told(
        use=YarnUse(
            used_m=math.fsum(use.used_m for use in uses),
            planned_m=math.fsum(use.planned_m for use in uses),
        ),
        grams=math.fsum(line.used_g for line in lines),
        day=max(line.day for line in lines),
        stitches=tuple(
            made.stitch
            for made in dict.fromkeys(stitches)
            if made.stitch != Stitch.CH and made.fabric == BY_SWATCH
        ),
    )


def _in_stitches(planned: PlannedYarn, use: YarnUse, upto: int) -> YarnUse:
    """Return the yarn without that of extras, which is told of with the last of a colour's rows."""
    if planned.left_m(upto):
        return use
    return replace(use, used_m=max(0.0, use.used_m - planned.extras_m))


def _further_swatch(used: _Told, gauge: Gauge, before: Sequence[Swatch]) -> Iterator[Swatch]:
    """Yield the swatch of a stitch, unless it is there already, or tells of next to no yarn."""
    length_cm = round(used.use.really_m(gauge.yarn_m) * 100 * RUN_STITCHES, 1)
    if length_cm < LEAST_CM:
        return
    step_cm = min(MOST_RULER_STEP_CM, length_cm * SCALE_STEP_G / used.grams)
    run = Run(stitches=RUN_STITCHES, length_cm=length_cm, ruler_step_cm=max(0.1, round(step_cm, 1)))
    if all((swatch.run, swatch.day) != (run, used.day) for swatch in before):
        yield replace(
            before[0],
            gauge=before[0].gauge if len(before) == 1 else _mean_reading(gauge),
            piece=None,
            run=run,
            gauge_before_washing=None,
            day=used.day,
        )


def _mean_reading(gauge: Gauge) -> Reading:
    """Return a reading that leaves the mean of several as it is."""
    return Reading(
        stitches=GAUGE_CM / gauge.width_cm,
        width_cm=GAUGE_CM,
        rows=GAUGE_CM / gauge.height_cm,
        height_cm=GAUGE_CM,
    )
