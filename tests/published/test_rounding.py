"""Money: how it rounds, and in how many decimals."""

from __future__ import annotations

from decimal import Decimal

import pytest

from quoting.core.ground.currencies import MINOR_DIGITS, minor_digits
from quoting.core.ground.errors import Refused
from quoting.core.ground.money import (
    exact,
    round_count,
    round_half_up,
    round_hours,
    round_money,
    round_up_to_step,
)


@pytest.mark.parametrize(
    ("amount", "rounded"),
    [
        ("1.004", "1.00"),
        ("1.0049", "1.00"),
        ("1.005", "1.01"),
        ("1.006", "1.01"),
        ("24.784", "24.78"),
        ("24.785", "24.79"),
    ],
)
def test_half_a_penny_rounds_up(amount: str, rounded: str) -> None:
    """HMRC VATREC12030 and Regulation (EC) 1103/97, art. 5: under half down, half and more up.

    24.784 and 24.785 are the examples of the changeover in Slovenia (evro.si).
    """
    assert round_money(Decimal(amount), "EUR") == Decimal(rounded)


def test_a_rebate_rounds_as_a_price_does() -> None:
    """A discount of half a penny is a penny: halves go away from zero, as in spreadsheets."""
    assert round_money(Decimal("-0.005"), "GBP") == Decimal("-0.01")


@pytest.mark.parametrize(
    ("value", "digits", "rounded"),
    [(0.285, 2, "0.29"), (1.005, 2, "1.01"), (2.675, 2, "2.68"), (0.1 + 0.2, 1, "0.3")],
)
def test_a_float_rounds_as_the_number_a_spreadsheet_shows(
    value: float, digits: int, rounded: str
) -> None:
    """Common practice of spreadsheet programs: 15 significant digits, then half up."""
    assert round_half_up(value, digits) == Decimal(rounded)
    assert exact(0.1 + 0.2) == Decimal("0.3")


@pytest.mark.parametrize(
    ("codes", "digits"),
    [
        ("JPY KRW VND CLP XAF XOF XPF PYG UGX RWF ISK", 0),
        ("EUR GBP USD CHF SEK NOK DKK PLN CZK HUF INR CAD AUD NZD", 2),
        ("BHD IQD JOD KWD LYD OMR TND", 3),
    ],
)
def test_currencies_have_their_minor_units(codes: str, digits: int) -> None:
    """ISO 4217, list one (all but JPY, KWD, IQD and EUR from memory)."""
    for currency in codes.split():
        assert minor_digits(currency) == digits
        assert round_money(Decimal("1.23456"), currency) == round(Decimal("1.23456"), digits)


def test_only_listed_currencies_are_known() -> None:
    """ISO 4217: three capital letters; DEM has been out of list one since the euro."""
    assert all(len(code) == 3 and code.isascii() and code.isupper() for code in MINOR_DIGITS)
    for code in ("DEM", "eur", "EURO", ""):
        with pytest.raises(Refused, match="unknown-currency"):
            minor_digits(code)


@pytest.mark.parametrize(
    ("amount", "step", "price"),
    [
        ("12.01", "1", "13"),
        ("12", "1", "12"),
        ("12.0000001", "1", "12"),
        ("12.001", "1", "13"),
        ("0.01", "5", "5"),
        ("17.50", "2.50", "17.50"),
    ],
)
def test_a_price_goes_up_to_the_next_step(amount: str, step: str, price: str) -> None:
    """By definition; a ten-millionth of a step is arithmetic and no reason for a whole one."""
    assert round_up_to_step(Decimal(amount), Decimal(step)) == Decimal(price)


def test_minutes_become_hours_of_two_decimals() -> None:
    """By definition: 0.3 min is 0.005 h, half up 0.01 h."""
    assert round_hours(0.3) == Decimal("0.01")
    assert round_hours(0.29) == 0
    assert round_hours(100) == Decimal("1.67")


def test_counts_round_half_up_too() -> None:
    """By definition; binary halves and the nearest even would give 122 and 2."""
    assert round_count(122.5) == 123
    assert round_count(2.5) == 3
    assert round_count(2.4999) == 2
