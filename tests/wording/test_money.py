"""Amounts are written as the locale has them, with the decimals of their currency."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest

from quoting.core.ground.currencies import MINOR_DIGITS
from quoting.notation import read_number
from quoting.wording import Speech, sheet_money
from tests.wording.speeches import GB, LOCALES


def test_money_has_the_decimals_of_iso_4217_not_those_of_the_locale_data() -> None:
    """ISO 4217 list one: ISK 0, KWD 3, and RSD 2 where CLDR shows none."""
    assert GB.money(Decimal("1234.5")) == "£1,234.50"
    assert GB.money(Decimal("1234"), "JPY") == "JP¥1,234"
    assert GB.money(Decimal("1.5"), "RSD").endswith("1.50")
    assert GB.money(Decimal("1.5"), "KWD").endswith("1.500")
    assert GB.money(Decimal("15"), "ISK").endswith("15")


@pytest.mark.parametrize("locale", LOCALES)
@pytest.mark.parametrize("currency", ["GBP", "JPY", "KWD", "RSD", "UGX", "IQD", "HUF"])
def test_money_can_be_read_back_to_the_last_digit(locale: str, currency: str) -> None:
    speech = Speech(locale=locale, currency=currency)
    amount = Decimal(1234567).scaleb(-MINOR_DIGITS[currency])
    digits = re.sub(r"\D", "", speech.money(amount))
    assert digits == "1234567"
    assert read_number(speech.bare_money(amount), speech.marks) == amount


def test_a_half_is_rounded_up_and_never_to_even() -> None:
    assert GB.number(Decimal("0.125"), 2) == "0.13"
    assert GB.number(2.5, 0) == "3"
    assert GB.percent(Decimal("0.0025"), 1) == "0.3%"


def test_the_yen_sign_is_the_usual_one_in_every_locale() -> None:
    japan = Speech(locale="ja_JP", currency="JPY")
    assert japan.money(Decimal(1200)) == "¥1,200"
    assert sheet_money(japan) == '"¥"#,##0'


def test_a_rate_finer_than_money_keeps_its_digits() -> None:
    assert GB.rate(Decimal("0.0425")) == "£0.0425"
    assert GB.rate(Decimal("14")) == "£14.00"
    assert GB.rate(Decimal("0.046")) == "£0.046"


def test_a_negative_amount_is_shown_as_one() -> None:
    assert GB.money(Decimal("-12.50")) == "-£12.50"


@pytest.mark.parametrize(
    ("locale", "currency", "code"),
    [
        ("en_GB", "GBP", '"£"#,##0.00'),
        ("de_DE", "EUR", '#,##0.00"\u00a0€"'),
        ("en_GB", "JPY", '"JP¥"#,##0'),
        ("en_GB", "KWD", '"KWD"#,##0.000'),
        (
            "en_IN",
            "INR",
            '[<100000][$-4009]"₹"#,##0.00;'
            r'[<10000000]"₹"##\,##\,##0.00;"₹"##\,##\,##\,##0.00',
        ),
    ],
)
def test_a_cell_of_money_has_the_locales_symbol_and_the_currencys_decimals(
    locale: str, currency: str, code: str
) -> None:
    assert sheet_money(Speech(locale=locale, currency=currency)) == code
