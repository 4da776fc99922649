"""The price that breaks even, the one that just pays the hours, and other hours than expected.

Source of the idea: break-even in cost accounting (textbook); the amounts are sums by hand.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from quoting.core.order.order import Terms
from quoting.core.price.least_prices import break_even_price, earned_in, paying_price
from quoting.core.workshop.selling import Delivery, Fee, FeeBase, Target, Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from tests.examples import sample_order, sample_quote, sample_workshop

NOTHING_SENT = Delivery()
FEES = (
    Fee(name="Card payment", rate=0.029, fixed=Decimal("0.30")),
    Fee(name="Market stall", rate=0.065, on=FeeBase.PRICE),
)
SHOPS = {
    "of the scenario": sample_workshop(),
    "tax inside": sample_workshop(tax=Tax(registered=True, rate=0.2), fees=FEES),
    "tax added": sample_workshop(
        tax=Tax(registered=True, rate=0.07, shown=TaxShown.ADDED, on_delivery=False), fees=FEES
    ),
}


def test_without_fees_tax_or_delivery_the_paying_price_is_the_cost() -> None:
    quote = sample_quote(None, sample_workshop(fees=(), delivery=NOTHING_SENT))
    assert paying_price(quote.price) == quote.price.cost
    assert break_even_price(quote.price) == quote.price.cost - quote.price.own_pay


@pytest.mark.parametrize("quantity", [1, 3])
@pytest.mark.parametrize("shop", SHOPS.values(), ids=SHOPS)
def test_at_the_paying_price_the_profit_is_nothing_and_under_it_a_loss(
    shop: Workshop, quantity: int
) -> None:
    price = sample_quote(sample_order(quantity=quantity), shop).price
    least, roundings = paying_price(price), Decimal("0.03") * quantity
    assert -roundings <= price.sold_at(least).profit <= roundings
    assert price.sold_at(least - 1).profit < -Decimal("0.5") * quantity


@pytest.mark.parametrize("shop", SHOPS.values(), ids=SHOPS)
def test_at_break_even_an_hour_earns_nothing(shop: Workshop) -> None:
    price = sample_quote(None, shop).price
    sold = price.sold_at(break_even_price(price))
    assert abs(sold.profit + price.own_pay) <= Decimal("0.05")
    assert price.earned_by(sold) == 0


def test_where_fees_take_all_of_any_price_none_breaks_even() -> None:
    taken = Fee(name="Market stall", rate=1.0, on=FeeBase.PRICE)
    order = sample_order(terms=Terms(target=Target(given=Decimal(200))))
    price = sample_quote(order, sample_workshop(fees=(taken,))).price
    assert break_even_price(price) == paying_price(price) == 0


def test_what_an_hour_earns_falls_with_the_hours_it_takes() -> None:
    """By hand: what is left for pay and overhead, less 1.80 an hour, over so many hours."""
    price = sample_quote().price
    assert earned_in(price.hours, price) == price.earned_per_hour
    left = price.earned_per_hour * price.hours - Decimal("1.80") * price.hours
    twice = earned_in(2 * price.hours, price)
    assert twice == pytest.approx(left / (2 * price.hours), abs=Decimal("0.01"))
    assert earned_in(Decimal(0), price) == 0
