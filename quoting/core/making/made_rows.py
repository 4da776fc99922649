"""The rows and rounds of all blankets of an order, numbered on as a maker works them."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass

from quoting.core.plan.passes import Pass, Work
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True)
class PassPlace:
    """A pass of one of the blankets, both counted from 0."""

    blanket: int
    pass_index: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeRows:
    """The rows of so many `blankets` alike: they count from 1, and on from one to the next.

    A row or round is a pass that is no foundation chain; the chain is worked with the row after
    it. `at` holds the index of the pass of each row of one blanket.
    """

    passes: tuple[Pass, ...]
    at: tuple[int, ...]
    blankets: int

    @property
    def of_one(self) -> int:
        """The rows and rounds of one blanket."""
        return len(self.at)

    @property
    def all(self) -> int:
        """The rows and rounds of all blankets."""
        return self.of_one * self.blankets

    def is_row(self, index: int) -> bool:
        """Return whether a pass is a row or round of its own."""
        return self.passes[index].work is not Work.CHAIN

    def place_of(self, row: int) -> PassPlace:
        """Return where a row is, from 1 to all of them."""
        blanket, number = divmod(row - 1, self.of_one)
        return PassPlace(blanket, self.at[number])

    def row_of(self, place: PassPlace) -> int:
        """Return the row with which a pass is worked: its own, or of a chain the next."""
        return place.blanket * self.of_one + bisect_left(self.at, place.pass_index) + 1

    def worked_with(self, row: int) -> range:
        """Return the indexes of the passes of a row: a chain before it, and its own."""
        number = (row - 1) % self.of_one
        return range(self.at[number - 1] + 1 if number else 0, self.at[number] + 1)

    def places(self, first: int, last: int) -> Iterator[PassPlace]:
        """Yield the passes that are worked from one row to another, chains too."""
        for row in range(first, last + 1):
            for index in self.worked_with(row):
                yield PassPlace((row - 1) // self.of_one, index)


def made_rows(quote: Quote) -> MadeRows:
    """Return the rows of all the blankets of a quote."""
    passes = quote.plan.passes
    at = (index for index, worked in enumerate(passes) if worked.work is not Work.CHAIN)
    return MadeRows(passes=passes, at=tuple(at), blankets=quote.order.quantity)
