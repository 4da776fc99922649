"""Margin and markup."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from quoting.core.price.price_equation import equation_of, solve_price
from quoting.core.price.sale import Sale
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Delivery, Pricing, Target, Tax
from tests.examples import sample_order, sample_quote, sample_workshop


@pytest.mark.parametrize(
    ("markup", "margin"),
    [(0.20, Fraction(1, 6)), (0.25, Fraction(1, 5)), (0.50, Fraction(1, 3)), (1.0, Fraction(1, 2))],
)
def test_a_markup_is_this_margin(markup: float, margin: Fraction) -> None:
    """Textbook: m = k / (1 + k)."""
    sale = Sale(
        cost=Decimal(1200),
        delivery=Decimal(0),
        tax=Tax(),
        fees=(),
        payments=1,
        currency="GBP",
    )
    price = solve_price(equation_of(sale, Target(markup=markup)))
    assert Fraction(price - 1200) / Fraction(price) == margin
    by_margin = solve_price(equation_of(sale, Target(margin=float(margin))))
    assert float(by_margin) == pytest.approx(float(price))


@pytest.mark.parametrize(
    ("markup", "margin"), [(0.20, "0.1667"), (0.25, "0.2000"), (0.50, "0.3333"), (1.0, "0.5000")]
)
def test_a_whole_quote_at_a_markup_shows_this_margin(markup: float, margin: str) -> None:
    """Textbook, the same; with nothing but the blanket to sell, and to the price's own cent."""
    pricing = Pricing(target=Target(markup=markup))
    workshop = sample_workshop(pricing=pricing, fees=(), delivery=Delivery())
    quote: Quote = sample_quote(sample_order(), workshop)
    assert abs(quote.price.margin - Decimal(margin)) <= Decimal("0.0001")
