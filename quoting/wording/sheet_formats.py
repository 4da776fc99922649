"""Number format codes of a spreadsheet cell, for amounts and numbers.

The codes are those of ECMA-376, part 1, 18.8.31: marks in them are always `.` and `,`, and the
program shows the reader's own.
"""

from __future__ import annotations

import re
from functools import lru_cache

from babel.numbers import get_currency_symbol

from quoting.core.ground.currencies import minor_digits
from quoting.wording.locales import currency_pattern, day_pattern, number_pattern, plain_yen
from quoting.wording.speech import Speech

_DIRECTION_MARKS = re.compile("[\u200e\u200f\u061c]")
_DAY_PARTS = re.compile(r"'[^']*'|[dMLy]+|[A-Za-z]+|[^A-Za-z']+")
_NUMBER = re.compile(r"[#,0.]+")
_PLAIN = re.compile(r"#,##0(\.[0#]+)?")
_BY_TWOS, _LAKHS, _CRORES = "#,##,##0", r"##\,##\,##0", r"##\,##\,##\,##0"


@lru_cache(maxsize=256)
def sheet_money(speech: Speech, currency: str | None = None, digits: int | None = None) -> str:
    """Return the format of money: `"£"#,##0.00`, or `#,##0.00" €"` where the sign comes last.

    It has the currency's own decimals, unless told how many.
    """
    code = currency or speech.currency
    places = minor_digits(code) if digits is None else digits
    positive = _DIRECTION_MARKS.sub("", currency_pattern(speech.locale).split(";")[0])
    number = _NUMBER.search(positive)
    assert number is not None, "every pattern has a number"  # noqa: S101
    symbol = _DIRECTION_MARKS.sub("", plain_yen(get_currency_symbol(code, locale=speech.locale)))
    before, after = positive[: number.start()], positive[number.end() :]
    sides = [_quoted(side.replace("¤", symbol)) for side in (before, after)]
    return _grouped(sheet_number(places).join(sides), number.group())


def sheet_number(digits: int) -> str:
    """Return the format of a number with so many decimals, grouped by threes."""
    return "#,##0." + "0" * digits if digits else "#,##0"


def sheet_day(speech: Speech) -> str:
    """Return the format of a day as the locale writes it out: `d mmmm yyyy`."""
    return "".join(map(_day_code, _DAY_PARTS.findall(day_pattern(speech.locale)))).strip()


def _day_code(part: str) -> str:
    """Return a part of a CLDR pattern (Unicode TR 35, part 4) in the letters of a cell's format."""
    match part[0]:
        case "d":
            return part
        case "M" | "L":
            return "m" * min(len(part), 4)
        case "y":
            return "yyyy"
        case "'":
            return _quoted(part.strip("'"))
    if part.isascii():
        return "" if part.isalpha() else part
    return _quoted(part)


def grouped_as(code: str, locale: str | None) -> str:
    """Return the format of a plain number grouped as the locale groups; any other as it is."""
    if not locale or not _PLAIN.fullmatch(code):
        return code
    return _grouped(code, number_pattern(locale))


def _grouped(code: str, pattern: str) -> str:
    """Return a format grouped as a locale's pattern groups: by threes, or from a lakh on by twos.

    A code groups by threes only, so groups of two are written out, in two sections for what has
    two or three marks. A code has room for two conditions. The first section takes all that is
    negative, for in the last one programs leave the sign out; there a program that knows the
    grouping of English as in India (MS-LCID 0x4009) uses it, another one groups by threes.
    """
    if _BY_TWOS not in pattern:
        return code
    lakhs, crores = (code.replace("#,##0", marks) for marks in (_LAKHS, _CRORES))
    return f"[<100000][$-4009]{code};[<10000000]{lakhs};{crores}"


def _quoted(text: str) -> str:
    return '"' + text.replace('"', "") + '"' if text else ""
