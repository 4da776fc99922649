"""Numbers, shares and money as one workshop's pages and documents show them.

Babel only formats here. Whatever it is given has been rounded half up first, and money has the
decimals of ISO 4217, from which the locale data differ.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from babel import Locale
from babel.numbers import format_currency, format_decimal, format_percent

from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.money import exact, round_half_up
from quoting.notation import Marks
from quoting.wording.locales import (
    currency_format,
    currency_signs,
    locale_of,
    marks_of,
    number_text,
    plain_yen,
)

RATE_DIGITS = 4
"""Decimals of a rate that is finer than money, such as the price of a gram."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """Says numbers in a locale, and money in a currency.

    `currency` is an ISO 4217 code, or empty where none is known yet.
    """

    locale: str
    currency: str = ""

    @property
    def _data(self) -> Locale:
        """The locale's data, looked up once: by its name they are sought at every number."""
        return locale_of(self.locale)

    @property
    def currency_signs(self) -> tuple[str, ...]:
        """How an amount of the workshop's currency may be marked: by a symbol or its code."""
        return currency_signs(self.locale, self.currency)

    @property
    def marks(self) -> Marks:
        """The decimal and grouping marks that numbers are typed and shown with."""
        return marks_of(self.locale)

    def number(self, value: Decimal | float, digits: int | None = None) -> str:
        """Return a number with so many decimals, or with its own."""
        return number_text(self.locale, str(as_decimal(value)), digits)

    def trimmed(self, value: Decimal | float, digits: int) -> str:
        """Return a number with at most so many decimals and no zeros at their end."""
        return self.number(round_half_up(as_decimal(value), digits))

    def ungrouped(self, value: Decimal | float) -> str:
        """Return a number in full with its own decimals and no grouping, to be typed again."""
        return str(
            format_decimal(
                as_decimal(value),
                locale=self._data,
                decimal_quantization=False,
                group_separator=False,
            )
        )

    def percent(self, share: Decimal | float, digits: int = 1) -> str:
        """Return a share as a percentage with at most so many decimals."""
        rounded = round_half_up(as_decimal(share), digits + 2)
        return str(format_percent(rounded, locale=self._data, decimal_quantization=False))

    def money(self, amount: Decimal, currency: str | None = None, digits: int | None = None) -> str:
        """Return an amount with its currency's symbol, in ISO 4217 decimals unless told.

        Where no currency is known, the plain number.
        """
        code = currency or self.currency
        if not code:
            return self.number(amount, digits)
        places = minor_digits(code) if digits is None else digits
        return plain_yen(
            format_currency(
                round_half_up(amount, places),
                code,
                format=currency_format(self.locale, places),
                locale=self._data,
                currency_digits=False,
            )
        )

    def bare_money(self, amount: Decimal, currency: str | None = None) -> str:
        """Return an amount without its symbol, for columns whose heading names the currency."""
        code = currency or self.currency
        return self.number(amount, minor_digits(code) if code else None)

    def rate(self, amount: Decimal, currency: str | None = None, digits: int = RATE_DIGITS) -> str:
        """Return money for one of a thing, which may be finer than the currency's decimals."""
        code = currency or self.currency
        fine = round_half_up(amount, digits).normalize()
        own = max(0, -int(fine.as_tuple().exponent))
        return self.money(fine, code, max(own, minor_digits(code) if code else 0))


def as_decimal(value: Decimal | float) -> Decimal:
    """Return a number as a decimal: its own, or a float's at 15 digits."""
    return value if isinstance(value, Decimal) else exact(value)
