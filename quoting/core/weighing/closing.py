"""What a blanket closes on: its counts, and how far each side is off from what was asked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from quoting.core.order.resizing import Size, own_size
from quoting.core.plan.passes import Plan
from quoting.core.quote.quote import Quote

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
    amounts: a border adds the same to both. `by_width`: its width alone is asked, as of a circle.
    """

    counts: Mapping[Counted, int]
    off_width_cm: float
    off_height_cm: float
    whole_motifs: bool = False
    by_width: bool = False

    @property
    def meets_one_side_at_most(self) -> bool:
        """Whether no border could bring both sides to what was asked."""
        return self.whole_motifs and abs(self.off_width_cm - self.off_height_cm) >= APART_CM


def closing_of(quote: Quote, asked: Size | None = None) -> Closing:
    """Return what a quote closes on, off from a size; from what its own order asks by default."""
    plan, size = quote.plan, asked or own_size(quote.order)
    counts = _counts(plan)
    if plan.rounds:
        counts |= {Counted.BORDER_ROUNDS: len(plan.rounds)}
    return Closing(
        counts=counts,
        off_width_cm=plan.width_cm - size.width_cm,
        off_height_cm=plan.height_cm - size.height_cm,
        whole_motifs=plan.grid is not None,
        by_width=plan.centre is not None and plan.centre.goes_by_width,
    )


def starts_on(plan: Plan) -> int:
    """Return the stitches, or clusters, that a piece from its centre is longer by."""
    return 0 if plan.counted is None else plan.counted.extra


def _counts(plan: Plan) -> dict[Counted, int]:
    grid = plan.grid
    if grid is not None:
        return {
            Counted.COLUMNS: grid.columns,
            Counted.MOTIF_ROWS: grid.rows,
            Counted.MOTIFS: grid.count,
        }
    if plan.centre is not None:
        return {Counted.ROUNDS: len(plan.rows), Counted.STARTS_ON: starts_on(plan)}
    body = Counted.ROWS if plan.in_rows else Counted.ROUNDS
    return {Counted.STITCHES: plan.stitches, body: len(plan.rows)}
