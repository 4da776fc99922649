"""One size sold at some price: tax, total, fees and what is left, as formulas and as figures."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from exports.workbook.cells import rounded, span_of
from exports.workbook.solving import sale_of
from exports.workbook.terms_block import TermRefs
from quoting.core.costing import LineKind
from quoting.core.money import round_money
from quoting.core.offer import deposit_of, payments_for
from quoting.core.quote import Quote
from quoting.core.sale import Sale, fee_lines, sale_tax
from quoting.core.terms import FeeBase


@dataclass(frozen=True, slots=True)
class Sold:
    """All blankets of a quote sold at `each`."""

    quote: Quote
    each: Decimal

    @property
    def sale(self) -> Sale:
        """The terms of the sale, in as many payments as the deposit makes it."""
        return replace(sale_of(self.quote), payments=payments_for(self.deposit, self.total))

    @property
    def price(self) -> Decimal:
        """All blankets, without delivery."""
        return self.each * self.quote.price.quantity

    @property
    def tax(self) -> Decimal:
        """The sales tax."""
        return sale_tax(sale_of(self.quote), self.price)

    @property
    def total(self) -> Decimal:
        """All that the buyer pays."""
        return sale_of(self.quote).total(self.price, self.tax)

    @property
    def deposit(self) -> Decimal:
        """What is paid when the order is agreed."""
        price, pricing = self.quote.price, self.quote.workshop.pricing
        return deposit_of(self.total, price.amount(LineKind.YARN), pricing, price.currency)

    @property
    def fees(self) -> Decimal:
        """What all fees take."""
        lines = fee_lines(self.sale, self.price, self.tax)
        return sum((line.amount for line in lines), Decimal(0))

    @property
    def profit(self) -> Decimal:
        """What is left after every cost."""
        return self.total - self.tax - self.fees - self.quote.price.cost

    @property
    def earned_per_hour(self) -> Decimal:
        """The maker's pay and profit over all hours."""
        price = self.quote.price
        own = self.profit + price.own_pay
        return round_money(own / price.hours, price.currency) if price.hours else Decimal(0)


def fees_of(terms: TermRefs, payments: str, price: str, total: str, digits: int) -> str:
    """Return what all fees take: each rate and each fixed part rounded once, then added."""
    if not terms.fees:
        return "0"
    on = span_of([fee.on for fee in terms.fees])
    rates = span_of([fee.rate for fee in terms.fees])
    fixed = span_of([fee.fixed for fee in terms.fees])
    bases: Mapping[FeeBase, str] = {
        FeeBase.PRICE: price,
        FeeBase.PRICE_AND_DELIVERY: f"({price}+{terms.delivery})",
        FeeBase.TOTAL: total,
    }
    parts = [
        f'({on}="{base.value}")*{rounded(f"{rates}*{amount}", digits)}'
        for base, amount in bases.items()
    ]
    parts.append(rounded(f"{fixed}*{payments}", digits))
    return f"SUMPRODUCT({'+'.join(parts)})"
