"""Tax inside a price, added to it, and on delivery."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from quoting.core.price.sale import Sale, sale_tax
from quoting.core.workshop.selling import Tax, TaxShown


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


@pytest.mark.parametrize(
    ("price", "rate", "inside"),
    [("1725.00", 0.15, "225.00"), ("115", 0.15, "15.00"), ("100", 0.15, "13.04")],
)
def test_fifteen_per_cent_inside_a_price_is_three_twenty_thirds(
    price: str, rate: float, inside: str
) -> None:
    """Inland Revenue (New Zealand), calculating GST (2010): 1,725.00 at 3/23 holds 225.00.

    115 and 100 are by the same fraction, by hand.
    """
    assert tax_on(price, rate) == Decimal(inside)


def test_the_same_tax_added_makes_the_same_price() -> None:
    """Inland Revenue (New Zealand), the same page: 1,500.00 and 225.00 are 1,725.00."""
    assert tax_on("1500.00", 0.15, shown=TaxShown.ADDED) == Decimal("225.00")


@pytest.mark.parametrize(("price", "inside"), [("110", "10.00"), ("77", "7.00"), ("1100", "100")])
def test_ten_per_cent_inside_a_price_is_an_eleventh(price: str, inside: str) -> None:
    """Australian Taxation Office: the tax in a price is the price divided by 11 (from memory)."""
    assert tax_on(price, 0.10) == Decimal(inside)


@pytest.mark.parametrize(("rate", "per_cent"), [(0.19, "15.97"), (0.07, "6.54")])
def test_the_shares_that_german_practice_takes_out_of_a_price(rate: float, per_cent: str) -> None:
    """Umsatzsteuer-Anwendungserlass, 15.4: 15.97 % at 19 % and 6.54 % at 7 % (from memory)."""
    assert tax_on("100", rate) == Decimal(per_cent)


def test_delivery_is_part_of_what_is_taxed() -> None:
    """New York TB-ST-838: 3,500 and 250 of delivery are taxed as 3,750; other states differ.

    At a rate of 100 % the tax is the base itself.
    """
    shown = TaxShown.ADDED
    assert tax_on("3500", 1.0, delivery="250", shown=shown) == 3750
    assert tax_on("3500", 1.0, delivery="250", shown=shown, on_delivery=False) == 3500
