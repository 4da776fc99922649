"""The words of stitches and of what their yarn rests on, by which lines find one another."""

from __future__ import annotations

from collections.abc import Mapping

from exports.told_apart import told_apart
from quoting.core.plan.gauge import Gauge
from quoting.core.quote.quote import Quote
from quoting.wording import Speech


def stitch_words(quote: Quote, speech: Speech) -> Mapping[str, str]:
    """Return the words of every stitch of an order; a pattern may be called like another's."""
    counts = (stitch for colour in quote.estimate.colours for stitch in colour.yarn.counts)
    stitches = list(dict.fromkeys(counts))
    return dict(zip(stitches, told_apart(map(speech.stitch, stitches)), strict=True))


def basis_words(gauge: Gauge, quote: Quote, speech: Speech) -> str:
    """Return what a gauge rests on: `swatch of hdc in moor aran`."""
    for swatch in quote.workshop.swatches:
        if gauge.basis == f"{swatch.yarn}/{swatch.stitch}":
            return f"swatch of {speech.stitch(swatch.stitch)} in {swatch.yarn}"
    return f"category of {gauge.basis.rpartition('/')[0]}"
