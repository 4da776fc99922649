"""Number format codes of a spreadsheet cell, for amounts and numbers.

The codes are those of ECMA-376, part 1, 18.8.31: marks in them are always `.` and `,`, and the
program shows the reader's own.
"""

from __future__ import annotations

import re

from babel.numbers import get_currency_symbol

from quoting.core.ground.currencies import minor_digits
from quoting.wording.locales import currency_pattern, day_pattern, plain_yen
from quoting.wording.speech import Speech

_DIRECTION_MARKS = re.compile("[\u200e\u200f\u061c]")
_DAY_PARTS = re.compile(r"'[^']*'|[dMLy]+|[A-Za-z]+|[^A-Za-z']+")
_NUMBER = re.compile(r"[#,0.]+")


def sheet_money(speech: Speech, currency: str | None = None) -> str:
    """Return the format of money: `"£"#,##0.00`, or `#,##0.00" €"` where the sign comes last."""
    code = currency or speech.currency
    positive = _DIRECTION_MARKS.sub("", currency_pattern(speech.locale).split(";")[0])
    number = _NUMBER.search(positive)
    assert number is not None, "every pattern has a number"  # noqa: S101
    symbol = _DIRECTION_MARKS.sub("", plain_yen(get_currency_symbol(code, locale=speech.locale)))
    before, after = positive[: number.start()], positive[number.end() :]
    sides = [_quoted(side.replace("¤", symbol)) for side in (before, after)]
    return sheet_number(minor_digits(code)).join(sides)


def sheet_number(digits: int) -> str:
    """Return the format of a grouped number with so many decimals."""
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


def _quoted(text: str) -> str:
    return '"' + text.replace('"', "") + '"' if text else ""
