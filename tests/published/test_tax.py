"""Tax inside a price, added to it, and on delivery."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from quoting.core.sale import Sale, sale_tax
from quoting.core.terms import Tax, TaxShown


def tax_on(price: str, rate: float, *, delivery: str = "0", **terms: object) -> Decimal:
    tax = Tax(registered=True, rate=rate, **terms)  # type: ignore[arg-type]
    sale = Sale(
        cost=Decimal(0),
        delivery=Decimal(delivery),
        tax=tax,
        fees=(),
        payments=1,
        currency="GBP",
    )
    return sale_tax(sale, Decimal(price))


def test_twenty_per_cent_inside_a_price_is_a_sixth() -> None:
    """HMRC, VAT guide (Notice 700): 120 at 20 % holds 20; the fraction is 1/6."""
    assert tax_on("120", 0.20) == 20
    assert tax_on("600", 0.20) / 600 == pytest.approx(Decimal(1) / 6)


@pytest.mark.parametrize("price", ["21", "80", "1234.56"])
def test_five_per_cent_inside_a_price_is_a_twenty_first(price: str) -> None:
    """HMRC, VAT guide (Notice 700): the fraction is 1/21; 80 holds 3.81."""
    exact = Fraction(price) / 21
    assert abs(Fraction(tax_on(price, 0.05)) - exact) <= Fraction(1, 200)
    assert tax_on("80", 0.05) == Decimal("3.81")


def test_delivery_is_part_of_what_is_taxed() -> None:
    """New York TB-ST-838: 3,500 and 250 of delivery are taxed as 3,750; other states differ.

    At a rate of 100 % the tax is the base itself.
    """
    shown = TaxShown.ADDED
    assert tax_on("3500", 1.0, delivery="250", shown=shown) == 3750
    assert tax_on("3500", 1.0, delivery="250", shown=shown, on_delivery=False) == 3500
