"""What a blanket closes on: its counts, and how far each side is off from what was asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Any

from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.order.resizing import Size, own_size
from quoting.core.quote.quote import Quote
from quoting.core.workshop.rounds import Rounds

APART_CM = 1.0
"""Less between two misses is blocked out: common practice, no source."""


class Counted(StrEnum):
    """What the counts are of."""

    STITCHES = "stitches"
    ROWS = "rows"
    ROUNDS = "rounds"
    STARTS_ON = "starts_on"
    COLUMNS = "columns"
    MOTIF_ROWS = "motif_rows"
    MOTIFS = "motifs"
    BORDER_ROUNDS = "border_rounds"


@dataclass(frozen=True, slots=True, kw_only=True)
class Closing:
    """The counts of one blanket, and how much wider and longer it comes out than was asked.

    `whole_motifs` says that both sides go by whole motifs, so that they may be off by unlike
    amounts: a border adds the same to both.
    """

    counts: Mapping[Counted, int]
    off_width_cm: float
    off_height_cm: float
    whole_motifs: bool = False

    @property
    def meets_one_side_at_most(self) -> bool:
        """Whether no border could bring both sides to what was asked."""
        return self.whole_motifs and abs(self.off_width_cm - self.off_height_cm) >= APART_CM


def closing_of(quote: Quote, asked: Size | None = None) -> Closing:
    """Return what a quote closes on, off from a size; from what its own order asks by default."""
    plan, size = quote.plan, asked or own_size(quote.order)
    counts = COUNTS.get(type(quote.order.design.body), _of_rows)(quote)
    if plan.rounds:
        counts = {**counts, Counted.BORDER_ROUNDS: len(plan.rounds)}
    return Closing(
        counts=counts,
        off_width_cm=plan.width_cm - size.width_cm,
        off_height_cm=plan.height_cm - size.height_cm,
        whole_motifs=plan.grid is not None,
    )


def starts_on(quote: Quote, body: FromCentre) -> int:
    """Return the stitches, or clusters, that a piece from its centre is longer by."""
    plain = Rounds(
        counting=body.counting,
        kind=quote.workshop.basic_stitch(quote.order.design.stitch, "stitch"),
        first_side=body.first_side,
        side_chains=body.side_chains,
    )
    last = len(quote.plan.rows)
    square, longer = (each.round(last).stitches for each in (plain, replace(plain, extra=1)))
    return (quote.plan.stitches - square) // (longer - square) if longer > square else 0


def _of_rows(quote: Quote) -> dict[Counted, int]:
    plan = quote.plan
    body = Counted.ROUNDS if plan.rows[0].grows else Counted.ROWS
    return {Counted.STITCHES: plan.stitches, body: len(plan.rows)}


def _of_centre(quote: Quote) -> dict[Counted, int]:
    body = quote.order.design.body
    assert isinstance(body, FromCentre), "told by its class"  # noqa: S101
    return {Counted.ROUNDS: len(quote.plan.rows), Counted.STARTS_ON: starts_on(quote, body)}


def _of_squares(quote: Quote) -> dict[Counted, int]:
    grid = quote.plan.grid
    assert grid is not None, "squares lie in a grid"  # noqa: S101
    return {
        Counted.COLUMNS: grid.columns,
        Counted.MOTIF_ROWS: grid.rows,
        Counted.MOTIFS: grid.count,
    }


COUNTS: dict[type[Body], Callable[[Any], dict[Counted, int]]] = {
    FromCentre: _of_centre,
    JoinedSquares: _of_squares,
}
"""The counts of each kind of body; of any other, its stitches and its rows or rounds."""
