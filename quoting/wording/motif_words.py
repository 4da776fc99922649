"""What a motif is by the way that it grows, and how motifs are joined, as a maker says it."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.order.joined_squares import CROCHETED, SEWN, JoinMethod
from quoting.core.quote.quote import Quote
from quoting.core.workshop.rounds import Counting
from quoting.wording.speech import Speech

LAYOUTS_TOLD = 8
"""How many layouts of colours are told one by one, at the most."""

SHAPES: Mapping[Counting, str] = {
    Counting.CLUSTERS: "a square in clusters of three, with spaces",
    Counting.SOLID: "a solid square",
    Counting.CIRCLE: "a circle",
    Counting.HEXAGON: "a hexagon",
}
"""What each way of growing makes."""

_JOINS = {
    JoinMethod.AS_YOU_GO: "as you go",
    JoinMethod.CONTINUOUS: "in one last round",
    JoinMethod.WHIPSTITCH: "whipstitch",
    JoinMethod.MATTRESS: "mattress stitch",
    JoinMethod.FLAT_BRAID: "flat braid",
}
"""What the joins are called that are not called by their stitch."""

_EXPLAINED = {
    JoinMethod.AS_YOU_GO: "as you go, in the last round",
    JoinMethod.CONTINUOUS: "as you go, all last rounds without a cut",
    JoinMethod.FLAT_BRAID: "flat braid, its loops joined",
}
"""The joins whose names alone do not say how they are made."""


def shape_words(counting: Counting) -> str:
    """Return what a motif that grows so is."""
    return SHAPES[counting]


def join_words(method: JoinMethod, speech: Speech) -> str:
    """Return what a join is called, stitches by the names that the workshop gives them."""
    return _JOINS.get(method) or speech.stitch_in_full(CROCHETED[method].value)


def join_choice(method: JoinMethod, speech: Speech) -> str:
    """Return a join as one of those to choose from: `sewn: whipstitch`."""
    manner = "sewn" if method in SEWN else "crocheted"
    return _EXPLAINED.get(method) or f"{manner}: {join_words(method, speech)}"


def minutes_a_motif(quote: Quote) -> str:
    """Return what the minutes of one motif are called, by what is in them.

    One that was timed has the beginning of its rounds and its changes of colour in it.
    """
    named = {worked.fabric.motif for worked in quote.plan.passes if worked.fabric.motif}
    timed = any(quote.workshop.motif(name).timings for name in named)
    what = "Minutes a motif" if timed else "Minutes of stitching a motif"
    return f"{what}, pulling back with it"
