"""What the yarn that an order used tells of the yarn in a stitch, as further swatches."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from quoting.core.ground.measures import LEAST_CM
from quoting.core.making.log_lines import LogEntry
from quoting.core.making.yarn_told import YarnTold, colours_by_yarn, yarn_told
from quoting.core.plan.gauge import BY_SWATCH, Gauge, Made, Sureness
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Reading, Run, Swatch
from quoting.core.workshop.workshop import Workshop

RUN_STITCHES = 100
"""Of the run that a swatch is given as: what they take is shown in whole millimetres."""

MOST_RULER_STEP_CM = 100.0
"""What a run may be unsure by at most, as swatches have it."""

GAUGE_CM = 10.0
"""The width and the height over which a mean gauge is told."""


def swatches_told(
    quote: Quote, entries: tuple[LogEntry, ...], workshop: Workshop
) -> Iterator[Swatch]:
    """Yield a swatch of each stitch that has one in the workshop and whose yarn was told of.

    What was used over what was planned is one ratio for all stitches of a yarn: chains, carries and
    tails are in both, and what extras were given is in neither. It is given as a counted run, as
    unsure as the scale leaves it; the gauge is that of the earlier swatches.
    """
    for yarn, colours in colours_by_yarn(quote).items():
        told = yarn_told(quote, entries, colours)
        if told is None:
            continue
        for stitch in _measured_flat(told):
            gauge = quote.plan.gauges[Made(yarn, stitch)]
            before = [s for s in workshop.swatches if (s.yarn, s.stitch) == (yarn, stitch)]
            if gauge.sureness is Sureness.MEASURED and before:
                yield from _further_swatch(told, gauge, before)


def _measured_flat(told: YarnTold) -> tuple[str, ...]:
    """Return the stitches that its yarn was told of in, those of motifs and chains left out."""
    return tuple(
        made.stitch
        for made in told.stitches
        if made.stitch != Stitch.CH and made.fabric == BY_SWATCH
    )


def _further_swatch(used: YarnTold, gauge: Gauge, before: Sequence[Swatch]) -> Iterator[Swatch]:
    """Yield the swatch of a stitch, unless it is there already, or tells of next to no yarn."""
    length_cm = round(used.use.really_m(gauge.yarn_m) * 100 * RUN_STITCHES, 1)
    if length_cm < LEAST_CM:
        return
    step_cm = min(MOST_RULER_STEP_CM, length_cm * used.unsure_by)
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
