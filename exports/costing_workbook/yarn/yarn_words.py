"""The words by which the lines of yarn find one another: no two alike."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TypeVar

from quoting.core.plan.gauge import Gauge
from quoting.core.quote.quote import Quote
from quoting.core.workshop.yarns import PutUp, Yarn
from quoting.wording import Speech, sold_as

Thing = TypeVar("Thing")


def put_up_words(yarn: Yarn, speech: Speech) -> Mapping[PutUp, str]:
    """Return how each put-up of a yarn is sold: `100 g skeins`, `100 g skeins (2)`."""
    return told_apart((some, sold_as(some.weight_g, some.pack, speech)) for some in yarn.put_ups)


def stitch_words(quote: Quote, speech: Speech) -> Mapping[str, str]:
    """Return the words of every stitch of an order; a pattern may be called like another's."""
    counts = (stitch for colour in quote.estimate.colours for stitch in colour.yarn.counts)
    return told_apart((stitch, speech.stitch(stitch)) for stitch in dict.fromkeys(counts))


def basis_words(gauge: Gauge, quote: Quote, speech: Speech) -> str:
    """Return what a gauge rests on: `swatch of hdc in moor aran`."""
    for swatch in quote.workshop.swatches:
        if gauge.basis == f"{swatch.yarn}/{swatch.stitch}":
            return f"swatch of {speech.stitch(swatch.stitch)} in {swatch.yarn}"
    return f"category of {gauge.basis.rpartition('/')[0]}"


def told_apart(called: Iterable[tuple[Thing, str]]) -> dict[Thing, str]:
    """Return the words of things, numbered where they would read alike."""
    found: dict[Thing, str] = {}
    for thing, said in called:
        taken, number, word = set(found.values()), 1, said
        while word in taken:
            number += 1
            word = f"{said} ({number})"
        found[thing] = word
    return found
