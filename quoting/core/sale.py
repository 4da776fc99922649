"""One sale's arithmetic: the price that meets a target, its tax, and what fees take of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from quoting.core.costing import Line, LineKind, Unit
from quoting.core.errors import refuse
from quoting.core.money import exact, round_money
from quoting.core.terms import Fee, FeeBase, Target, Tax, TaxShown


@dataclass(frozen=True, slots=True, kw_only=True)
class Sale:
    """The terms that one sale is reckoned on. Fixed fees fall on each of its `payments`."""

    cost: Decimal
    delivery: Decimal
    tax: Tax
    fees: tuple[Fee, ...]
    payments: int
    currency: str

    def fee_rate(self, base: FeeBase) -> Decimal:
        """Return the summed rates of the fees on one base."""
        return sum((exact(fee.rate) for fee in self.fees if fee.on is base), Decimal(0))

    @property
    def tax_rate(self) -> Decimal:
        """The rate of tax charged."""
        return exact(self.tax.charged_rate)

    @property
    def delivery_tax_rate(self) -> Decimal:
        """The rate of tax on delivery."""
        return self.tax_rate if self.tax.on_delivery else Decimal(0)

    def total(self, price: Decimal, tax: Decimal) -> Decimal:
        """Return all that the buyer pays."""
        return price + self.delivery + (tax if self.tax.shown is TaxShown.ADDED else 0)


def solve_price(sale: Sale, target: Target) -> Decimal:
    """Return the unrounded price that meets a margin or a markup.

    With revenue R = P/g + D/h and fees aP + bD + F, profit R − C − fees equals m·R or k·C, which
    is linear in P. Errors: `no-price` and `price-not-positive`, at the target's place.
    """
    added = sale.tax.shown is TaxShown.ADDED
    tax, delivery_tax = 1 + sale.tax_rate, 1 + sale.delivery_tax_rate
    g, h = (Decimal(1), Decimal(1)) if added else (tax, delivery_tax)
    v, w = (tax, delivery_tax) if added else (Decimal(1), Decimal(1))
    on_both, on_total = sale.fee_rate(FeeBase.PRICE_AND_DELIVERY), sale.fee_rate(FeeBase.TOTAL)
    a = sale.fee_rate(FeeBase.PRICE) + on_both + on_total * v
    b = on_both + on_total * w
    fixed = sale.payments * sum((fee.fixed for fee in sale.fees), Decimal(0))
    kept = 1 - exact(target.margin or 0.0)
    costs = (1 + exact(target.markup or 0.0)) * sale.cost
    denominator = kept / g - a
    if denominator <= 0:
        raise refuse(target.place, "no-price", kept=kept / g, fees=a)
    price = (costs + fixed + b * sale.delivery - kept * sale.delivery / h) / denominator
    if price <= 0:
        raise refuse(target.place, "price-not-positive", price=price)
    return price


def sale_tax(sale: Sale, price: Decimal) -> Decimal:
    """Return the tax of a sale, rounded once."""
    taxed = price + (sale.delivery if sale.tax.on_delivery else 0)
    rate = sale.tax_rate
    inside = sale.tax.shown is TaxShown.INCLUDED
    return round_money(taxed * rate / (1 + rate) if inside else taxed * rate, sale.currency)


def fee_lines(sale: Sale, price: Decimal, tax: Decimal) -> Iterator[Line]:
    """Yield what each fee takes: its rate of its base once, its fixed part for each payment."""
    bases = {
        FeeBase.PRICE: price,
        FeeBase.PRICE_AND_DELIVERY: price + sale.delivery,
        FeeBase.TOTAL: sale.total(price, tax),
    }
    for fee in sale.fees:
        for quantity, unit, rate in (
            (bases[fee.on], Unit.MONEY, exact(fee.rate)),
            (Decimal(sale.payments), Unit.PAYMENT, fee.fixed),
        ):
            if rate:
                yield Line(
                    kind=LineKind.FEE,
                    subject=fee.name,
                    quantity=quantity,
                    unit=unit,
                    rate=rate,
                    amount=round_money(quantity * rate, sale.currency),
                )
