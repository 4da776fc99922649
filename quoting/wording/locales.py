"""What a locale is, and its own patterns of numbers and money."""

from __future__ import annotations

import re
from decimal import Decimal
from functools import lru_cache

from babel import Locale
from babel.core import UnknownLocaleError
from babel.numbers import (
    NumberPattern,
    format_decimal,
    get_currency_symbol,
    get_decimal_symbol,
    get_group_symbol,
    parse_pattern,
)

from quoting.core.ground.money import round_half_up
from quoting.notation import Marks
from quoting.wording.paper import Sheet

LETTER_COUNTRIES = frozenset(
    ["BZ", "CA", "CL", "CO", "CR", "GT", "MX", "NI", "PA", "PH", "PR", "SV", "US", "VE"]
)
"""Source: Unicode TR 35, part 6, measurement data: paper size US-Letter."""


def is_locale(text: str) -> bool:
    """Return whether a text names a locale there is data for: `en_GB`, `de-CH`."""
    try:
        locale_of(text)
    except (UnknownLocaleError, ValueError, TypeError):
        return False
    return True


def known_locale(text: str) -> str:
    """Return a locale that there is data for: itself, or its language alone (`de` for `de_FR`)."""
    return text if is_locale(text) else re.split("[-_]", text)[0]


@lru_cache(maxsize=64)
def locale_of(text: str) -> Locale:
    """Return the locale that a text names. Errors: as Babel's own, three kinds of them."""
    return Locale.parse(text.replace("-", "_"))


def country_of(locale: str) -> str:
    """Return the country of a locale such as `en_GB` or `zh-Hant-TW`; empty, if it names none."""
    parts = locale.replace("-", "_").split("_")[1:]
    return next((part for part in parts if len(part) == 2 and part.isupper()), "")


def sheet_of(locale: str) -> Sheet:
    """Return what papers are printed on where a locale is spoken."""
    return Sheet.LETTER if country_of(locale) in LETTER_COUNTRIES else Sheet.A4


def direction_of(language: str) -> str:
    """Return which way a language is written, as HTML says it: `ltr` or `rtl`."""
    return str(locale_of(language).text_direction)


def number_pattern(locale: str) -> str:
    """Return the locale's pattern of a number, in the notation of Unicode TR 35."""
    return str(locale_of(locale).decimal_formats[None].pattern)


def currency_pattern(locale: str) -> str:
    """Return the locale's pattern of an amount of money, in the notation of Unicode TR 35."""
    return str(locale_of(locale).currency_formats["standard"].pattern)


def day_pattern(locale: str) -> str:
    """Return the locale's pattern of a day written out, in the notation of Unicode TR 35."""
    return str(locale_of(locale).date_formats["long"].pattern)


def with_digits(pattern: str, digits: int) -> str:
    """Return a number pattern with exactly so many decimals."""
    return re.sub(r"0(\.[0#]+)?(?![0#,])", "0." + "0" * digits if digits else "0", pattern)


@lru_cache(maxsize=256)
def number_format(locale: str, digits: int) -> NumberPattern:
    """Return the locale's pattern of a number with so many decimals, ready to be applied."""
    return parse_pattern(with_digits(number_pattern(locale), digits))


@lru_cache(maxsize=256)
def currency_format(locale: str, digits: int) -> NumberPattern:
    """Return the locale's pattern of an amount with so many decimals, ready to be applied."""
    return parse_pattern(with_digits(currency_pattern(locale), digits))


@lru_cache(maxsize=64)
def marks_of(locale: str) -> Marks:
    """Return the decimal and grouping marks that numbers are typed and shown with."""
    return Marks(get_decimal_symbol(locale), get_group_symbol(locale))


@lru_cache(maxsize=4096)
def number_text(locale: str, plain: str, digits: int | None) -> str:
    """Return a number, told as plain text, with so many decimals or with its own.

    A page that follows as one types says nearly all of its numbers again each time.
    """
    number, data = Decimal(plain), locale_of(locale)
    if digits is None:
        return str(format_decimal(number, locale=data, decimal_quantization=False))
    pattern = number_format(locale, digits)
    return str(format_decimal(round_half_up(number, digits), format=pattern, locale=data))


@lru_cache(maxsize=64)
def currency_signs(locale: str, currency: str) -> tuple[str, ...]:
    """Return how an amount of a currency may be marked: by its symbols, or by its code."""
    return *(get_currency_symbol(currency, name) for name in (locale, "en")), currency


def plain_yen(text: str) -> str:
    """Return a text with the full-width yen sign made the usual one, which fonts have."""
    return text.replace("\uffe5", "¥")
