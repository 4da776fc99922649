"""What there is to do in some rows of an order: stitches, turns, changes of colour, joins."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from quoting.core.estimate.chores import Workload
from quoting.core.estimate.strands import Why
from quoting.core.estimate.work_counted import count_work, is_changed_to, is_timed_whole
from quoting.core.estimate.workload import BEGIN_ROUND, TURN
from quoting.core.ground.money import round_count
from quoting.core.making.chores_by_pass import BY_ORDER, chores_by_pass
from quoting.core.making.made_rows import MadeRows, PassPlace, made_rows
from quoting.core.plan.passes import Work
from quoting.core.quote.fate_of_ends import woven_besides
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsWork:
    """The rows of a quote, and in which of them a ball is joined, one row for each join.

    `first_row_at` is the index of the pass before which no row was worked. `chores_in` has what is
    laid out and joined with each pass.
    """

    quote: Quote
    rows: MadeRows
    joined_in: tuple[int, ...]
    first_row_at: int
    chores_in: Sequence[Mapping[str, float]]

    def of(self, first: int, last: int, *, ends: int = 0) -> Workload:
        """Return the work of the rows from one to another, and of so many ends besides.

        Each row but the first of a blanket is turned to, and each pass in another colour than the
        one before it changed to, as the estimate counts them. Blankets, extras and what is blocked
        are those of the whole order.
        """
        order, workshop, plan = self.quote.order, self.quote.workshop, self.quote.plan
        places = list(self.rows.places(first, last))
        times = Counter(place.pass_index for place in places)
        passes = ((self.rows.passes[index], count) for index, count in times.items())
        counted = count_work(passes, plan, order, workshop)
        chores = {name: n * order.quantity for name, n in plan.chores.items() if name in BY_ORDER}
        for index, many in times.items():
            for name, count in self.chores_in[index].items():
                chores[name] = chores.get(name, 0.0) + count * many
        return Workload(
            stitches=counted.stitches,
            motifs=counted.motifs,
            turns=sum(self._is_turned_to(place) for place in places),
            colour_changes=sum(self._is_changed_to(place) for place in places),
            joins=sum(first <= row <= last for row in self.joined_in),
            ends=ends,
            blankets=order.quantity,
            extras_minutes=sum(extra.minutes for extra in order.extras) * order.quantity,
            chores={BEGIN_ROUND: counted.rounds} | chores,
            ends_become=order.design.ends,
            ends_within=self._within_of(ends),
        )

    def _within_of(self, ends: int) -> int:
        """Return how many of so many ends lie within, as many as there are of all of them."""
        within = woven_besides(self.quote)
        return round_count(ends * within / self.quote.estimate.ends) if within else 0

    def _is_turned_to(self, place: PassPlace) -> bool:
        worked = self.rows.passes[place.pass_index]
        if worked.grows:
            return TURN in self.quote.plan.chores and worked.number > 1
        return worked.work is Work.ROW and place.pass_index > self.first_row_at

    def _is_changed_to(self, place: PassPlace) -> bool:
        passes, index = self.rows.passes, place.pass_index
        if not index or is_timed_whole(passes[index], self.quote.workshop):
            return False
        return is_changed_to(passes[index - 1], passes[index])


def rows_work(quote: Quote) -> RowsWork:
    """Return what there is to do in the rows of a quote."""
    rows = made_rows(quote)
    joins = (strand.ends for strand in quote.estimate.strands if strand.why is Why.RAN_OUT)
    return RowsWork(
        quote=quote,
        rows=rows,
        joined_in=tuple(rows.row_of(PassPlace(p.blanket, p.pass_index, p.copy)) for p in joins),
        first_row_at=next(
            (index for index, worked in enumerate(rows.passes) if worked.work is Work.ROW), 0
        ),
        chores_in=chores_by_pass(quote.plan),
    )
