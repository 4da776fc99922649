"""The words of stitches and of what their yarn rests on, by which lines find one another."""

from __future__ import annotations

from collections.abc import Mapping

from exports.told_apart import told_apart
from quoting.core.estimate.yarn_needed import StitchIn
from quoting.core.plan.gauge import Gauge
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import Motif
from quoting.wording import Speech


def stitch_words(quote: Quote, speech: Speech) -> Mapping[StitchIn, str]:
    """Return the words of every stitch of an order; a pattern may be called like another's."""
    counts = (stitch for colour in quote.estimate.colours for stitch in colour.yarn.counts)
    stitches = list(dict.fromkeys(counts))
    return dict(zip(stitches, told_apart(_said(made, speech) for made in stitches), strict=True))


def _said(made: StitchIn, speech: Speech) -> str:
    """Return a stitch in its words: `dc`, or `dc in sun square, round 2`."""
    stitch, motif = speech.stitch(made.stitch), made.fabric.motif
    where = f", round {made.fabric.round}" if made.fabric.round else ""
    return f"{stitch} in {motif}{where}" if motif else stitch


def motif_words(motif: Motif) -> str:
    """Return what a motif is called among what yarn rests on: no swatch is called so."""
    return f"motif {motif.name}"


def basis_words(gauge: Gauge, quote: Quote, speech: Speech) -> str:
    """Return what a gauge rests on: `swatch of hdc in moor aran`."""
    for swatch in quote.workshop.swatches:
        if gauge.basis == f"{swatch.yarn}/{swatch.stitch}":
            return f"swatch of {speech.stitch(swatch.stitch)} in {swatch.yarn}"
    for motif in quote.workshop.motifs:
        if gauge.basis == f"{motif.yarn}/{motif.name}":
            return motif_words(motif)
    return f"category of {gauge.basis.rpartition('/')[0]}"
