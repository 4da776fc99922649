"""The equation that a price solves to meet a margin or a markup.

With revenue R = P/g + D/h and fees aP + bD + F, profit R − C − fees equals m·R or k·C, which is
linear in P: no step of it has to be guessed and tried.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.money import exact
from quoting.core.price.sale import Sale
from quoting.core.workshop.selling import Target, TaxShown


@dataclass(frozen=True, slots=True, kw_only=True)
class Factors:
    """What the terms of a sale come to, for any price P.

    `price_fees`, `delivery_fees` and `fixed_fees` are a, b and F, the last of all payments. A
    price or delivery with its tax inside is net when it is divided by `price_divisor` g or
    `delivery_divisor` h; one that tax is added to is gross when it is multiplied by
    `price_multiplier` v or `delivery_multiplier` w.
    """

    price_fees: Decimal
    delivery_fees: Decimal
    fixed_fees: Decimal
    price_divisor: Decimal
    delivery_divisor: Decimal
    price_multiplier: Decimal
    delivery_multiplier: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Equation:
    """A sale, what its price is to bring in, and the factors that it is solved with."""

    sale: Sale
    target: Target
    factors: Factors

    @property
    def kept(self) -> Decimal:
        """The share of the net revenue that costs and fees may take: 1 − m."""
        return 1 - exact(self.target.margin or 0.0)

    @property
    def cover(self) -> Decimal:
        """The costs to cover, with the markup on them: (1 + k)·C."""
        return (1 + exact(self.target.markup or 0.0)) * self.sale.cost

    @property
    def left(self) -> Decimal:
        """What each unit of the price leaves for costs: (1 − m)/g − a."""
        return self.kept / self.factors.price_divisor - self.factors.price_fees


def equation_of(sale: Sale, target: Target) -> Equation:
    """Return the equation of a sale's price."""
    return Equation(sale=sale, target=target, factors=factors_of(sale))


def factors_of(sale: Sale) -> Factors:
    """Return what the terms of a sale come to."""
    one, added = Decimal(1), sale.tax.shown is TaxShown.ADDED
    taxed, delivery_taxed = 1 + sale.tax_rate, 1 + sale.delivery_tax_rate
    v, w = (taxed, delivery_taxed) if added else (one, one)
    g, h = (one, one) if added else (taxed, delivery_taxed)
    rates = [(exact(fee.rate), fee.on) for fee in sale.fees]
    on_price = sum((rate * base.of_price for rate, base in rates), Decimal(0))
    on_delivery = sum((rate * base.of_delivery for rate, base in rates), Decimal(0))
    on_added_tax = sum((rate * base.of_added_tax for rate, base in rates), Decimal(0))
    return Factors(
        price_fees=on_price + on_added_tax * (v - 1),
        delivery_fees=on_delivery + on_added_tax * (w - 1),
        fixed_fees=sale.payments * sale.fixed_fees,
        price_divisor=g,
        delivery_divisor=h,
        price_multiplier=v,
        delivery_multiplier=w,
    )


def solve_price(equation: Equation) -> Decimal:
    """Return the unrounded price that meets a margin or a markup.

    Errors: `no-price` and `price-not-positive`, at the target's place.
    """
    factors, kept, left = equation.factors, equation.kept, equation.left
    place, delivery = equation.target.place, equation.sale.delivery
    if left <= 0:
        raise refuse(
            place, MistakeCode.NO_PRICE, kept=kept / factors.price_divisor, fees=factors.price_fees
        )
    fees = factors.fixed_fees + factors.delivery_fees * delivery
    price = (equation.cover + fees - kept * delivery / factors.delivery_divisor) / left
    if price <= 0:
        raise refuse(place, MistakeCode.PRICE_NOT_POSITIVE, price=price)
    return price
