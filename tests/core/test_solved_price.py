"""The price that meets a target, solved by hand with the tax inside it."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.price.payments import PaymentTerms
from quoting.core.price.price_equation import equation_of, solve_price
from quoting.core.price.sale import Sale, sell
from quoting.core.workshop.selling import Deposit, Fee, FeeBase, Target, Tax

AT_COST = Target(margin=0.0)


def sale(**changes: Any) -> Sale:
    """Return the sale of what costs 100, and 10 more to send."""
    terms: dict[str, Any] = {
        "cost": Decimal(100),
        "delivery": Decimal(10),
        "tax": Tax(registered=True, rate=0.25),
        "fees": (),
        "payments": 1,
        "currency": "GBP",
    }
    return Sale(**(terms | changes))


@pytest.mark.parametrize(
    ("on", "price"),
    [
        (FeeBase.TOTAL, 100 / 0.7 - 10),  # (P + 10) / 1.25 - 100 = 0.1 (P + 10)
        (FeeBase.PRICE_AND_DELIVERY, 100 / 0.7 - 10),
        (FeeBase.PRICE, (100 - 8) / 0.7),  # (P + 10) / 1.25 - 100 = 0.1 P
    ],
)
def test_a_price_with_the_tax_inside_leaves_the_cost_after_tax_and_fees(
    on: FeeBase, price: float
) -> None:
    fees = (Fee(name="Shop", rate=0.1, on=on),)
    assert float(solve_price(equation_of(sale(fees=fees), AT_COST))) == pytest.approx(price)


def test_delivery_without_tax_brings_in_all_that_it_is_charged_at() -> None:
    """By hand: P / 1.25 + 10 - 100 = 0."""
    untaxed = Tax(registered=True, rate=0.25, on_delivery=False)
    assert float(solve_price(equation_of(sale(tax=untaxed), AT_COST))) == pytest.approx(90 * 1.25)


def test_what_is_left_of_a_price_solved_is_the_profit_that_was_the_target() -> None:
    """By hand: a fifth of the revenue, to the rounding of one tax and one fee."""
    fees, halves = (Fee(name="Shop", rate=0.03, fixed=Decimal("0.2")),), Deposit(share=0.5)
    terms = sale(fees=fees, payments=2, paid=PaymentTerms(deposit=halves))
    sold = sell(terms, solve_price(equation_of(terms, Target(margin=0.2))))
    revenue = sold.total - sold.tax
    assert float(sold.profit) == pytest.approx(0.2 * float(revenue), abs=0.01)


def test_a_price_of_exactly_nothing_is_refused() -> None:
    with pytest.raises(Refused, match=r"price\.margin: price-not-positive"):
        solve_price(equation_of(sale(delivery=Decimal(100), tax=Tax()), AT_COST))


def test_a_target_beyond_reach_is_told_what_is_kept_and_what_fees_take() -> None:
    """By hand: a fifth of the price is tax, half of the rest is the margin, and fees take half."""
    greedy = sale(fees=(Fee(name="Shop", rate=0.5),))
    with pytest.raises(Refused, match="no-price") as refused:
        solve_price(equation_of(greedy, Target(margin=0.5)))
    facts = refused.value.mistakes[0].facts
    assert (facts["kept"], facts["fees"]) == (Decimal("0.4"), Decimal("0.5"))
