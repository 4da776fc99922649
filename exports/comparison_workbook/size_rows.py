"""The sizes that the sheets have a row for: those compared, and the order's own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from exports.told_apart import told_apart
from quoting.core.price.sale import Sold
from quoting.core.quote.quote import Quote
from quoting.core.weighing.comparison import Comparison, Rule, RuleOfThumb
from quoting.core.workshop.selling import Target

OWN_SIZE = "the order's own size"


@dataclass(frozen=True, slots=True)
class Sized:
    """One row of the sheets: a size by a name of its own, its quote, its rules of thumb."""

    name: str
    quote: Quote
    rules: tuple[RuleOfThumb, ...] = ()

    def price_by(self, rule: Rule) -> Decimal:
        """Return the price by a rule; nothing, where the rule asks for none."""
        return next((each.price for each in self.rules if each.rule is rule), Decimal(0))

    def sold_by(self, rule: Rule) -> Sold:
        """Return the sale at the price by a rule."""
        sold = (each.sold for each in self.rules if each.rule is rule)
        return next(sold, None) or self.quote.price.sold_at(Decimal(0))


@dataclass(frozen=True, slots=True)
class Rows:
    """Every row of the sheets: first the `count` sizes compared, then perhaps the order's own.

    `base` is the row that the rules of thumb carry over; None where each size is its own.
    `priced` says that the sizes compared have given prices; at a target only the order's own has.
    """

    all: tuple[Sized, ...]
    count: int
    base: int | None
    priced: bool

    @property
    def first(self) -> Quote:
        """The quote of the first size, for what all of them share."""
        return self.all[0].quote

    def is_own(self, sized: Sized) -> bool:
        """Return whether it is the last row, the order's own size beside those compared."""
        return self.base is not None and sized is self.all[self.base]

    def keeps_its_price(self, sized: Sized) -> bool:
        """Return whether a price was given for it by the order, and not for the comparison."""
        is_given = sized.quote.price.target.given is not None
        return is_given and (self.is_own(sized) or not self.priced)

    @property
    def targets(self) -> tuple[Target, ...]:
        """What prices follow, first what those compared do, and last what the workshop says."""
        followed = (row for row in self.all if not self.keeps_its_price(row))
        targets = (row.quote.price.target for row in followed)
        return (*targets, self.first.workshop.pricing.target)


def rows_of(comparison: Comparison) -> Rows:
    """Return the rows of a comparison that has at least one size."""
    sizes = [Sized(str(some.size), some.quote, some.rules) for some in comparison.sizes]
    base, priced, count = comparison.base, comparison.best is not None, len(sizes)
    if base is None:
        return Rows(_told_apart(sizes), count, None, priced)
    return Rows(_told_apart([*sizes, Sized(OWN_SIZE, base)]), count, count, priced)


def _told_apart(rows: Sequence[Sized]) -> tuple[Sized, ...]:
    """Return the rows, their names changed where two are alike: lines are added up by them."""
    names = told_apart(row.name for row in rows)
    return tuple(replace(row, name=name) for row, name in zip(rows, names, strict=True))
