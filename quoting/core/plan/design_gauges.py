"""The gauges that one design needs: every stitch of it, in every yarn of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from quoting.core.order.design import Design, Kind
from quoting.core.plan.gauge import ESTIMATED_LIMITS, Gauge, Made, Sureness, gauge_of, has_swatch
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Workshop


def design_gauges(design: Design, workshop: Workshop) -> dict[Made, Gauge]:
    """Return the gauge of every stitch, `ch` too, in every yarn that the design uses.

    A yarn with no swatch, beside one that has, is taken to work up as that one does. That is one
    guess, and all its stitches are off together by it.
    """
    in_body = (stitch for _, stitch in design.body.stitches_with_places())
    in_border = (band.stitch for band in design.border)
    motifs = [workshop.motif(name) for _, name in design.body.motifs_with_places()]
    named = [design.stitch, *in_body, *in_border, *(motif.stitch for motif in motifs)]
    stitches = dict.fromkeys([*named, *design.body.also_worked, Stitch.CH.value])
    in_colours = (source.yarn for source in design.colours.values())
    yarns = dict.fromkeys([design.yarn, *in_colours, *(motif.yarn for motif in motifs)])
    gauges = {}
    for yarn in yarns:
        borrowed = not has_swatch(workshop, yarn) and has_swatch(workshop, design.yarn)
        for stitch in stitches:
            gauge = gauge_of(workshop, design.yarn if borrowed else yarn, stitch)
            gauges[Made(yarn, stitch)] = borrowed_gauge(gauge) if borrowed else gauge
    return gauges


def size_gauges(design: Design, gauges: Mapping[Made, Gauge]) -> dict[Kind, Gauge]:
    """Return the gauges that sizes follow: for a yarn without a swatch, the blanket's own."""
    return {
        (made.yarn, made.stitch): gauge
        if gauge.swatched
        else gauges[Made(design.yarn, made.stitch)]
        for made, gauge in gauges.items()
    }


def borrowed_gauge(gauge: Gauge) -> Gauge:
    """Return a gauge of one yarn as that of another, which is taken to work up as it does."""
    return replace(
        gauge,
        sureness=max(gauge.sureness, Sureness.ESTIMATED, key=list(Sureness).index),
        borrowed_limits=ESTIMATED_LIMITS,
    )
