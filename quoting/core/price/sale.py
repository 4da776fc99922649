"""One sale at a price: its tax, what fees take of it, how it is paid, and what is left."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from decimal import Decimal

from quoting.core.ground.money import exact, round_money
from quoting.core.price.cost_lines import Line, LineKind, Unit
from quoting.core.price.payments import Payments, PaymentTerms
from quoting.core.workshop.selling import Fee, FeeBase, Tax, TaxShown


@dataclass(frozen=True, slots=True, kw_only=True)
class Sale:
    """The terms that one sale is reckoned on. Fixed fees fall on each payment.

    `payments` is how many its price is solved for; how many there are, its total says.
    """

    cost: Decimal
    delivery: Decimal
    tax: Tax
    fees: tuple[Fee, ...]
    payments: int
    currency: str
    paid: PaymentTerms = field(default_factory=PaymentTerms)

    @property
    def tax_rate(self) -> Decimal:
        """The rate of tax charged."""
        return exact(self.tax.charged_rate)

    @property
    def delivery_tax_rate(self) -> Decimal:
        """The rate of tax on delivery."""
        return self.tax_rate if self.tax.on_delivery else Decimal(0)

    @property
    def fixed_fees(self) -> Decimal:
        """The fixed parts of all fees, of one payment."""
        return sum((fee.fixed for fee in self.fees), Decimal(0))

    def added(self, tax: Decimal) -> Decimal:
        """Return how much of the tax is added to price and delivery: all of it, or none."""
        return tax if self.tax.shown is TaxShown.ADDED else Decimal(0)

    def total(self, price: Decimal, tax: Decimal) -> Decimal:
        """Return all that the buyer pays."""
        return price + self.delivery + self.added(tax)

    def fee_base(self, base: FeeBase, price: Decimal, tax: Decimal) -> Decimal:
        """Return the amount that a fee on a base takes its rate of."""
        shown = base.of_price * price + base.of_delivery * self.delivery
        return shown + base.of_added_tax * self.added(tax)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sold:
    """A sale at the price of all blankets, without delivery, each amount in whole minor units.

    `fee_parts` are two for each fee, in order: what its rate takes, and its fixed part; also those
    that are nothing. total = cost + fees + tax + profit, by construction.
    """

    sale: Sale
    price: Decimal
    tax: Decimal
    payments: Payments
    fee_parts: tuple[Line, ...]

    @property
    def total(self) -> Decimal:
        """All that the buyer pays."""
        return self.sale.total(self.price, self.tax)

    @property
    def fees(self) -> Decimal:
        """What all fees take."""
        return sum((part.amount for part in self.fee_parts), Decimal(0))

    @property
    def profit(self) -> Decimal:
        """What is left after every cost."""
        return self.total - self.tax - self.fees - self.sale.cost

    def share(self, amount: Decimal) -> Decimal:
        """Return what part of all that the buyer pays an amount is; nothing where she pays none."""
        return amount / self.total if self.total else Decimal(0)


def sell(sale: Sale, price: Decimal) -> Sold:
    """Return a sale at a price of all blankets, in as many payments as its total makes."""
    tax = sale_tax(sale, price)
    payments = sale.paid.split(sale.total(price, tax), sale.currency)
    return Sold(
        sale=sale,
        price=price,
        tax=tax,
        payments=payments,
        fee_parts=tuple(fee_parts(sale, price, tax, payments.count)),
    )


def sale_tax(sale: Sale, price: Decimal) -> Decimal:
    """Return the tax of a sale, rounded once."""
    taxed = price + (sale.delivery if sale.tax.on_delivery else 0)
    rate = sale.tax_rate
    inside = sale.tax.shown is TaxShown.INCLUDED
    return round_money(taxed * rate / (1 + rate) if inside else taxed * rate, sale.currency)


def fee_parts(sale: Sale, price: Decimal, tax: Decimal, payments: int) -> Iterator[Line]:
    """Yield what each fee takes: its rate of its base once, its fixed part for each payment."""
    for fee in sale.fees:
        for quantity, unit, rate in (
            (sale.fee_base(fee.on, price, tax), Unit.MONEY, exact(fee.rate)),
            (Decimal(payments), Unit.PAYMENT, fee.fixed),
        ):
            yield Line(
                kind=LineKind.FEE,
                subject=fee.name,
                quantity=quantity,
                unit=unit,
                rate=rate,
                amount=round_money(quantity * rate, sale.currency),
            )
