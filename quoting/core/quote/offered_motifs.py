"""What a buyer is told of the motifs that a blanket is joined of."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.order.joined_squares import JoinMethod
from quoting.core.plan.layout_colours import joined_in, layouts_made
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class OfferedMotifs:
    """So many motifs of one side across and down, in layouts of colours, and how they are joined.

    `join_colour` is None where the join has no yarn of its own. `mixed` says that chance decides
    which colours a motif has, so that the layouts are only what may come of it.
    """

    columns: int
    rows: int
    side_cm: float
    layouts: int
    join: JoinMethod
    join_colour: str | None = None
    mixed: bool = False

    @property
    def count(self) -> int:
        """How many motifs there are."""
        return self.columns * self.rows


def offered_motifs(quote: Quote) -> OfferedMotifs | None:
    """Return the motifs that a blanket is joined of; None where there are none."""
    grid = quote.plan.grid
    if grid is None:
        return None
    return OfferedMotifs(
        columns=grid.columns,
        rows=grid.rows,
        side_cm=grid.side_cm,
        layouts=len(layouts_made(quote.plan)),
        join=grid.method,
        join_colour=joined_in(quote.plan),
        mixed=any(worked.drawn for worked in quote.plan.passes),
    )
