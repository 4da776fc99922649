"""The sizes that the sheets have a row for: those compared, and the order's own."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.comparison import Comparison
from quoting.core.quote import Quote

OWN_SIZE = "the order's own size"


@dataclass(frozen=True, slots=True)
class Sized:
    """One row of the sheets: a size by name, and its quote."""

    name: str
    quote: Quote


@dataclass(frozen=True, slots=True)
class Rows:
    """Every row of the sheets: first the `count` sizes compared, then perhaps the order's own.

    `base` is the row that the rules of thumb carry over; None where each size is its own.
    """

    all: tuple[Sized, ...]
    count: int
    base: int | None

    @property
    def first(self) -> Quote:
        """The quote of the first size, for what all of them share."""
        return self.all[0].quote


def rows_of(comparison: Comparison) -> Rows:
    """Return the rows of a comparison that has at least one size."""
    sizes = tuple(Sized(str(some.size), some.quote) for some in comparison.sizes)
    base = comparison.base
    if base is None:
        return Rows(sizes, len(sizes), None)
    return Rows((*sizes, Sized(OWN_SIZE, base)), len(sizes), len(sizes))
