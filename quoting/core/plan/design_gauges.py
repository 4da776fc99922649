"""The gauges that one design needs: every stitch of it, in every yarn of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from quoting.core.order.design import Design, Kind
from quoting.core.plan.gauge import ESTIMATED_LIMITS, Gauge, Sureness, gauge_of, has_swatch
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Workshop


def design_gauges(design: Design, workshop: Workshop) -> dict[Kind, Gauge]:
    """Return the gauge of every stitch, `ch` too, in every yarn that the design uses.

    A yarn with no swatch, beside one that has, is taken to work up as that one does. That is one
    guess, and all its stitches are off together by it.
    """
    in_body = (stitch for _, stitch in design.body.stitches_with_places())
    in_border = (band.stitch for band in design.border)
    stitches = dict.fromkeys([design.stitch, *in_body, *in_border, Stitch.CH.value])
    yarns = dict.fromkeys([design.yarn, *(source.yarn for source in design.colours.values())])
    gauges = {}
    for yarn in yarns:
        borrowed = not has_swatch(workshop, yarn) and has_swatch(workshop, design.yarn)
        for stitch in stitches:
            gauge = gauge_of(workshop, design.yarn if borrowed else yarn, stitch)
            gauges[yarn, stitch] = _borrowed(gauge) if borrowed else gauge
    return gauges


def size_gauges(design: Design, gauges: Mapping[Kind, Gauge]) -> dict[Kind, Gauge]:
    """Return the gauges that sizes follow: for a yarn without a swatch, the blanket's own."""
    return {
        kind: gauge if gauge.swatched else gauges[design.yarn, kind[1]]
        for kind, gauge in gauges.items()
    }


def _borrowed(gauge: Gauge) -> Gauge:
    return replace(
        gauge,
        sureness=max(gauge.sureness, Sureness.ESTIMATED, key=list(Sureness).index),
        borrowed_limits=ESTIMATED_LIMITS,
    )
