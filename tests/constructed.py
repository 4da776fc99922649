"""Sample motifs, squares and pieces from the centre, of the scenario of `tests.examples`."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from quoting.core.order.from_centre import FromCentre
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Layout, MotifJoin
from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Workshop
from tests import motif_examples
from tests.examples import sample_design, sample_order, sample_quote
from tests.motif_examples import sample_motif, striped_centre

SUN = sample_motif(name="sun")
"""A motif in clusters of five rounds, 15 cm wide, 12 g each, twenty minutes each."""

LAYOUTS = (
    Layout(colours=("teal", "rust", "plum", "moss", "oat"), share=1),
    Layout(colours=("rust", "rust", "teal", "oat", "oat"), share=2),
)


def motif_workshop(motif: Motif = SUN, **changes: Any) -> Workshop:
    """Return the workshop with a motif, and with a swatch and a timing of double crochet."""
    timings = (
        Timing(stitch="hdc", stitches=500, minutes=27.5, rows=5, hands_on=True),
        Timing(stitch="dc", stitches=400, minutes=30),
    )
    return motif_examples.motif_workshop(motif, **{"timings": timings, **changes})


def squares(method: JoinMethod = JoinMethod.AS_YOU_GO, **changes: Any) -> JoinedSquares:
    """Return three columns and four rows of the motif in two layouts, joined in oat."""
    colour = None if method is JoinMethod.AS_YOU_GO else "oat"
    body = JoinedSquares(
        motif="sun",
        layouts=LAYOUTS,
        join=MotifJoin(method=method, colour=colour),
        columns=3,
        rows=4,
    )
    return replace(body, **changes)


def from_centre(counting: Counting = Counting.SOLID, **changes: Any) -> FromCentre:
    """Return a piece from the centre: two rounds of teal and one of oat, again and again."""
    return striped_centre(counting=counting, **changes)


def constructed_order(body: JoinedSquares | FromCentre, **design: Any) -> Order:
    """Return an order of a body in double crochet, in the border of the scenario."""
    wanted = {"width_cm": 60, "height_cm": 75, "stitch": "dc"} | design
    return sample_order(design=sample_design(body=body, **wanted), extras=(), wanted_by=None)


def constructed_quote(
    body: JoinedSquares | FromCentre, workshop: Workshop | None = None, **design: Any
) -> Quote:
    """Return the quote of such an order."""
    return sample_quote(constructed_order(body, **design), workshop or motif_workshop())
