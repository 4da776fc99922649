"""Sample motifs, and blankets from the centre and of joined squares, of the tests' scenario.

Each function returns a whole value; keywords replace single fields of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from quoting.core.order.design import Design
from quoting.core.order.from_centre import FromCentre, RoundStripe
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Layout, MotifJoin
from quoting.core.order.order import Order
from quoting.core.workshop.motifs import Motif, MotifTiming, WeighedMotifs
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.swatches import Reading, Swatch
from quoting.core.workshop.workshop import Workshop
from tests.examples import WOOL, band, sample_order, sample_swatch, sample_workshop

SQUARE = "fen square"
FIVE = ("teal", "rust", "plum", "moss", "oat")
"""Five colours, one for each round of the square."""


def tall_swatch(**changes: Any) -> Swatch:
    """Return the swatch of double crochet: 17 stitches and 9 rows to 10 cm."""
    gauge = Reading(stitches=17, width_cm=10, rows=9, height_cm=10)
    return sample_swatch(**{"stitch": "dc", "gauge": gauge, **changes})


def sample_motif(**changes: Any) -> Motif:
    """Return a square of five rounds of clusters, 15 cm a side, of 12 g, made in 20 minutes."""
    motif = Motif(
        name=SQUARE,
        yarn=WOOL,
        counting=Counting.CLUSTERS,
        rounds=5,
        one_side_cm=15,
        weighed=WeighedMotifs(motifs=5, weight_g=60),
        timings=(MotifTiming(motifs=4, minutes=80),),
    )
    return replace(motif, **changes)


def motif_workshop(*motifs: Motif, **changes: Any) -> Workshop:
    """Return the workshop with the motifs, the sample's by default, and a swatch of tall ones."""
    swatches = (sample_swatch(), tall_swatch())
    return sample_workshop(
        **{"motifs": motifs or (sample_motif(),), "swatches": swatches, **changes}
    )


def sample_squares(
    *layouts: Sequence[str], method: JoinMethod = JoinMethod.AS_YOU_GO, **changes: Any
) -> JoinedSquares:
    """Return a body of joined squares: one layout of five colours, joined with oat."""
    body = JoinedSquares(
        motif=SQUARE,
        layouts=tuple(Layout(colours=tuple(colours)) for colours in layouts or (FIVE,)),
        join=MotifJoin(method=method, colour="oat"),
    )
    return replace(body, **changes)


def sample_centre(*colours: str, rounds_each: int = 1, **changes: Any) -> FromCentre:
    """Return a solid body from the centre in stripes of so many rounds each, teal by default."""
    bands = (RoundStripe(colour=colour, rounds=rounds_each) for colour in colours or ("teal",))
    return replace(FromCentre(counting=Counting.SOLID, stripes=tuple(bands)), **changes)


def striped_centre(**changes: Any) -> FromCentre:
    """Return a solid body from the centre: two rounds of teal, one of oat, again and again."""
    stripes = (RoundStripe(colour="teal", rounds=2), RoundStripe(colour="oat"))
    return sample_centre(**{"stripes": stripes, **changes})


def squares_design(**changes: Any) -> Design:
    """Return a blanket of 8 by 11 squares with three rounds of half double crochet round it."""
    design = Design(
        width_cm=130,
        height_cm=170,
        stitch="dc",
        yarn=WOOL,
        body=sample_squares(),
        border=(band("hdc", rounds=3),),
        colours={},
    )
    return replace(design, **changes)


def centre_design(**changes: Any) -> Design:
    """Return a blanket of 75 by 90 cm from the centre, solid and without a border."""
    design = Design(
        width_cm=75, height_cm=90, stitch="dc", yarn=WOOL, body=sample_centre(), colours={}
    )
    return replace(design, **changes)


def squares_order(**changes: Any) -> Order:
    """Return the order of the blanket of squares, without extras; its design's fields change."""
    design = squares_design(**changes)
    return sample_order(design=design, title="Throw in squares", extras=(), for_baby=False)


def centre_order(**changes: Any) -> Order:
    """Return the order of the blanket from the centre, without extras; as `squares_order`."""
    design = centre_design(**changes)
    return sample_order(design=design, title="Throw in rounds", extras=(), for_baby=False)
