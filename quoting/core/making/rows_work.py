"""What there is to do in some rows of an order: stitches, turns, changes of colour, joins."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.estimate.hours import Workload
from quoting.core.estimate.stitching_time import YarnAndStitch
from quoting.core.estimate.strands import Why
from quoting.core.making.made_rows import MadeRows, PassPlace, made_rows
from quoting.core.plan.passes import Work
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsWork:
    """The rows of a quote, and in which of them a ball is joined, one row for each join.

    `first_row_at` is the index of the pass before which no row was worked.
    """

    quote: Quote
    rows: MadeRows
    joined_in: tuple[int, ...]
    first_row_at: int

    def of(self, first: int, last: int, *, ends: int = 0) -> Workload:
        """Return the work of the rows from one to another, and of so many ends besides.

        Each row but the first of a blanket is turned to, and each pass in another colour than the
        one before it changed to, as the estimate counts them. Blankets and extras are those of the
        whole order.
        """
        order = self.quote.order
        places = list(self.rows.places(first, last))
        return Workload(
            stitches=self._stitches(places),
            turns=sum(self._is_turned_to(place) for place in places),
            colour_changes=sum(self._is_changed_to(place) for place in places),
            joins=sum(first <= row <= last for row in self.joined_in),
            ends=ends,
            blankets=order.quantity,
            extras_minutes=sum(extra.minutes for extra in order.extras) * order.quantity,
        )

    def _stitches(self, places: list[PassPlace]) -> dict[YarnAndStitch, int]:
        counts: dict[YarnAndStitch, int] = {}
        for place in places:
            worked = self.rows.passes[place.pass_index]
            yarn = self.quote.order.design.source_of(worked.colour).yarn
            for stitch, count in worked.stitches.items():
                counts[yarn, stitch] = counts.get((yarn, stitch), 0) + count
        return counts

    def _is_turned_to(self, place: PassPlace) -> bool:
        worked = self.rows.passes[place.pass_index]
        return worked.work is Work.ROW and place.pass_index > self.first_row_at

    def _is_changed_to(self, place: PassPlace) -> bool:
        passes, index = self.rows.passes, place.pass_index
        return index > 0 and passes[index].colour != passes[index - 1].colour


def rows_work(quote: Quote) -> RowsWork:
    """Return what there is to do in the rows of a quote."""
    rows = made_rows(quote)
    joins = (strand.ends for strand in quote.estimate.strands if strand.why is Why.RAN_OUT)
    return RowsWork(
        quote=quote,
        rows=rows,
        joined_in=tuple(rows.row_of(PassPlace(p.blanket, p.pass_index)) for p in joins),
        first_row_at=next(
            (index for index, worked in enumerate(rows.passes) if worked.work is Work.ROW), 0
        ),
    )
