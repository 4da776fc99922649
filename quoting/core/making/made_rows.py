"""What is ticked off of all blankets of an order, numbered on as a maker works them.

A row or round is one, and so is a motif or a seam that is told at once.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby

from quoting.core.plan.passes import Pass, Plan, Work
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True)
class PassPlace:
    """A pass of one of the blankets, both counted from 0, in one of the copies of its part."""

    blanket: int
    pass_index: int
    copy: int = 0


@dataclass(frozen=True, slots=True)
class MadeRow:
    """The passes that are worked with one row, from the first on: a chain before it, its own.

    Of a motif they are all its rounds; `copy` says which of those alike it is.
    """

    first: int
    last: int
    copy: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeRows:
    """The rows of so many `blankets` alike: they count from 1, and on from one to the next.

    `of_blanket` are those of one blanket, and `numbers` says with which, from 0, a pass in a copy
    is worked.
    """

    quote: Quote
    of_blanket: tuple[MadeRow, ...]
    numbers: Mapping[tuple[int, int], int]
    blankets: int

    @property
    def plan(self) -> Plan:
        """What one blanket is planned as."""
        return self.quote.plan

    @property
    def passes(self) -> tuple[Pass, ...]:
        """The passes of one blanket."""
        return self.plan.passes

    @property
    def of_one(self) -> int:
        """The rows and rounds of one blanket."""
        return len(self.of_blanket)

    @property
    def all(self) -> int:
        """The rows and rounds of all blankets."""
        return self.of_one * self.blankets

    def is_row(self, index: int) -> bool:
        """Return whether a pass is a row or round of its own."""
        return self.passes[index].work is not Work.CHAIN

    def place_of(self, row: int) -> PassPlace:
        """Return where a row is, from 1 to all of them: its last pass."""
        blanket, number = divmod(row - 1, self.of_one)
        made = self.of_blanket[number]
        return PassPlace(blanket, made.last, made.copy)

    def row_of(self, place: PassPlace) -> int:
        """Return the row with which a pass is worked: its own, or of a chain the next."""
        return place.blanket * self.of_one + self.numbers[place.pass_index, place.copy] + 1

    def worked_with(self, row: int) -> range:
        """Return the indexes of the passes of a row: a chain before it, and its own."""
        made = self.of_blanket[(row - 1) % self.of_one]
        return range(made.first, made.last + 1)

    def places(self, first: int, last: int) -> Iterator[PassPlace]:
        """Yield the passes that are worked from one row to another, chains too."""
        for row in range(first, last + 1):
            blanket, number = divmod(row - 1, self.of_one)
            for index in self.worked_with(row):
                yield PassPlace(blanket, index, self.of_blanket[number].copy)


def made_rows(quote: Quote) -> MadeRows:
    """Return the rows of all the blankets of a quote."""
    plan = quote.plan
    of_blanket = tuple(_rows_of(plan))
    numbers = {
        (index, made.copy): number
        for number, made in enumerate(of_blanket)
        for index in range(made.first, made.last + 1)
    }
    return MadeRows(
        quote=quote,
        of_blanket=of_blanket,
        numbers=numbers,
        blankets=quote.order.quantity,
    )


def _rows_of(plan: Plan) -> Iterator[MadeRow]:
    for number, own in groupby(range(len(plan.passes)), key=lambda at: plan.passes[at].part):
        part, indexes = plan.parts[number], list(own)
        for copy in range(part.count):
            if part.at_once:
                yield MadeRow(indexes[0], indexes[-1], copy)
            else:
                yield from _one_by_one(plan.passes, indexes, copy)


def _one_by_one(passes: tuple[Pass, ...], indexes: list[int], copy: int) -> Iterator[MadeRow]:
    first = indexes[0]
    for index in indexes:
        if passes[index].work is not Work.CHAIN:
            yield MadeRow(first, index, copy)
            first = index + 1
