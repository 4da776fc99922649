"""What the table of a quote says of a body: its stitches, its rounds, its motifs and their join."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.plan.layout_colours import layouts_made
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, body_counts_words, body_words, join_words
from quoting.wording.motif_words import LAYOUTS_TOLD

Said = tuple[str, str]


def body_facts(quote: Quote, speech: Speech) -> Iterator[Said]:
    """Yield names and what is said of a body, whatever its construction."""
    body = quote.order.design.body
    return FACTS.get(type(body), _of_rows)(quote, body, speech)


def _of_rows(quote: Quote, body: Body, speech: Speech) -> Iterator[Said]:
    del body
    stitch = speech.stitch(quote.order.design.stitch)
    yield "Stitches", f"{speech.number(quote.plan.stitches)} {stitch}"


def _of_centre(quote: Quote, body: FromCentre, speech: Speech) -> Iterator[Said]:
    stitch = speech.stitch(quote.order.design.stitch)
    counts = f"{body.counting.value}: {body_counts_words(quote, speech)}"
    yield speech.worded("From the centre"), counts
    yield "Last round", f"{speech.number(quote.plan.stitches)} {stitch}"


def _of_squares(quote: Quote, body: JoinedSquares, speech: Speech) -> Iterator[Said]:
    grid, motif = quote.plan.grid, quote.workshop.motif(body.motif)
    assert grid is not None, "squares lie in a grid"  # noqa: S101
    stitch = speech.stitch(motif.stitch)
    yield "Motifs", f"{body_counts_words(quote, speech)}: {motif.name}"
    last = f"{speech.number(quote.plan.stitches)} {stitch}"
    rounds = speech.count(body.rounds or motif.rounds, "round")
    yield "Each motif", f"{rounds}, the last of {last}; {speech.length(grid.side_cm)} a side"
    yield from _layouts(quote, body, speech)
    colour = f" in {body.join.colour}" if body.join.colour else ""
    edges, lines = speech.count(grid.shared_edges, "edge"), speech.count(grid.seam_lines, "line")
    yield "Joined", f"{join_words(body.join.method, speech)}{colour}: {edges} on {lines}"


def _layouts(quote: Quote, body: JoinedSquares, speech: Speech) -> Iterator[Said]:
    """Yield how many motifs have which colours from the centre outwards; of many, the first."""
    if body.pool is not None:
        yield "From a pool", body_words(body)[0]
    said = [
        f"{speech.number(layout.count)} of {', '.join(layout.colours)}"
        for layout in layouts_made(quote.plan)
    ]
    more = f"; and {len(said) - LAYOUTS_TOLD} more" if len(said) > LAYOUTS_TOLD else ""
    yield speech.worded("Colours"), "; ".join(said[:LAYOUTS_TOLD]) + more


FACTS: dict[type[Body], Callable[[Quote, Any, Speech], Iterator[Said]]] = {
    InRows: _of_rows,
    FromCentre: _of_centre,
    JoinedSquares: _of_squares,
}
"""What is said of each kind of body; of any other, its stitches."""
