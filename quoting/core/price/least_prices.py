"""The prices under which a sale stops paying, and what other hours than expected would earn."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.money import round_money, round_up_to_step
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price import Price
from quoting.core.price.price_equation import Equation
from quoting.core.workshop.selling import Target

NO_PROFIT = Target(markup=0.0)


def break_even_price(price: Price) -> Decimal:
    """Return the price of one that pays for all but the maker's own hours; as `price_covering`."""
    return price_covering(price.cost - price.own_pay, price)


def paying_price(price: Price) -> Decimal:
    """Return the price of one that pays her hours too, and no profit; as `price_covering`."""
    return price_covering(price.cost, price)


def price_covering(cost: Decimal, price: Price) -> Decimal:
    """Return the price of one blanket that covers a cost, fees and tax, up to the minor unit.

    The delivery and the payments are those of the sale; nothing, where fees and tax take all of
    any price, or the delivery pays for all. Source: break-even is where what is sold brings in
    what it costs (cost accounting, textbook).
    """
    equation = equation_covering(cost, price)
    if equation.left <= 0:
        return Decimal(0)
    factors, delivery = equation.factors, equation.sale.delivery
    fees = factors.fixed_fees + factors.delivery_fees * delivery
    needed = max(Decimal(0), cost + fees - delivery / factors.delivery_divisor)
    each = needed / equation.left / price.quantity
    return round_up_to_step(each, Decimal(1).scaleb(-minor_digits(price.currency)))


def equation_covering(cost: Decimal, price: Price) -> Equation:
    """Return the equation of the sale's price, were it to bring in a cost and no profit."""
    sale = replace(price.sale, cost=cost)
    return Equation(sale=sale, target=NO_PROFIT, factors=price.equation.factors)


def earned_in(hours: Decimal, price: Price) -> Decimal:
    """Return what an hour earns at this price if they turn out so many; nothing without any.

    The overhead falls on every hour, and what is left pays for all of them.
    """
    if not hours:
        return Decimal(0)
    overhead = price.amount(LineKind.OVERHEAD)
    rates = (line.rate for line in price.lines if line.kind is LineKind.OVERHEAD)
    spent = round_money(hours * next(rates, Decimal(0)), price.currency)
    return round_money((price.profit + price.own_pay + overhead - spent) / hours, price.currency)
