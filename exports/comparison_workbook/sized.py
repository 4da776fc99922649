"""The sizes that the sheets have a row for: those compared, and the order's own."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from quoting.core.comparison import Comparison, Rule, RuleOfThumb
from quoting.core.quote import Quote

OWN_SIZE = "the order's own size"


@dataclass(frozen=True, slots=True)
class Sized:
    """One row of the sheets: a size by name, its quote, and its prices by rules of thumb."""

    name: str
    quote: Quote
    rules: tuple[RuleOfThumb, ...] = ()

    def price_by(self, rule: Rule) -> Decimal:
        """Return the price by a rule; nothing, where the rule asks for none."""
        return next((each.price for each in self.rules if each.rule is rule), Decimal(0))


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
    sizes = tuple(Sized(str(some.size), some.quote, some.rules) for some in comparison.sizes)
    base = comparison.base
    if base is None:
        return Rows(sizes, len(sizes), None)
    return Rows((*sizes, Sized(OWN_SIZE, base)), len(sizes), len(sizes))
