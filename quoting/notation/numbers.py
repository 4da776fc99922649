"""A number as people type it: grouped or not, with a fraction or not, in any digits."""

from __future__ import annotations

import re
from collections.abc import Sequence
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.notation.marks import (
    ARABIC_DECIMAL,
    ARABIC_GROUPING,
    EITHER_WAY,
    Marks,
    plain_text,
    shown,
)

MOST_DIGITS = 20
"""More than any measurement has, and few enough for exact sums of money."""

_NOT_FINITE = re.compile(r"[+-]?\s*(inf|infinity|nan|∞)", re.IGNORECASE)
_FRACTION = re.compile(r"(?:(?P<whole>.*\d)[ -] *)?(?P<over>\d+) */ *(?P<under>\d+)")
_ONE_MARK = re.compile(rf"(?P<before>\d+)[.,{ARABIC_DECIMAL}{ARABIC_GROUPING}](?P<after>\d+)")
_UNDER_ONE = re.compile(rf"0[.,{ARABIC_DECIMAL}](?P<after>\d+)")
"""No group of digits begins with a nought, so whatever follows this one is a decimal mark."""

_WESTERN_GROUPS = r"[1-9]\d{0,2}(?:G\d{3})+"
_INDIAN_GROUPS = r"[1-9]\d?(?:G\d{2})+G\d{3}"


def read_number(text: str, marks: Marks) -> Decimal:
    """Return the number that a text says, exactly (a fraction to 28 digits).

    Errors: `not-a-number`, `not-finite`, `too-many-digits`, `too-long`, and `doubtful-number`
    where the one mark in it may be meant otherwise, with both readings.
    """
    typed = plain_text(text)
    if _NOT_FINITE.fullmatch(typed):
        raise refuse("", MistakeCode.NOT_FINITE, read=shown(text))
    unsigned = typed[1:].lstrip() if typed.startswith(("-", "+")) else typed
    size = _size(unsigned, marks)
    if size is None:
        raise _not_read(text, unsigned)
    return -size if typed.startswith("-") else size


def read_money(text: str, marks: Marks, signs: Sequence[str] = ()) -> Decimal:
    """Return an amount of money; its currency is known from elsewhere. No fractions.

    It may bear one of `signs` of that currency, before or after it. Errors: as `read_number`.
    """
    bare = plain_text(text)
    if "/" in bare:
        raise refuse("", MistakeCode.NOT_A_NUMBER, read=shown(text))
    return read_number(without_sign(bare, signs), marks)


def without_sign(text: str, signs: Sequence[str]) -> str:
    """Return a text without the first of some signs that it begins or ends with."""
    for sign in signs:
        for bare in (text.removeprefix(sign), text.removesuffix(sign)):
            if bare != text:
                return bare.strip()
    return text


def _size(typed: str, marks: Marks) -> Decimal | None:
    fraction = _FRACTION.fullmatch(typed)
    if fraction is None:
        return _decimal(typed, marks)
    over, under = _number_of(fraction["over"]), _number_of(fraction["under"])
    if not under:
        return None
    if fraction["whole"] is None:
        return over / under
    whole = _decimal(fraction["whole"], marks)
    proper = whole is not None and whole == whole.to_integral_value() and over < under
    return whole + over / under if whole is not None and proper else None


def _decimal(typed: str, marks: Marks) -> Decimal | None:
    """Return the number of unsigned plain text, or None when it is none."""
    if under_one := _UNDER_ONE.fullmatch(typed):
        return _number_of(f"0.{under_one['after']}")
    decimals = re.escape(marks.decimals)
    found = re.fullmatch(rf"(?P<whole>\d(?:.*?\d)??)?(?:[{decimals}](?P<rest>\d+))?", typed)
    if found is None or not typed:
        return None
    whole = _ungrouped(found["whole"] or "0", marks)
    if whole is None:
        return None if marks.grouping else _grouped_either_way(typed)
    return _number_of(f"{whole}.{found['rest']}" if found["rest"] else whole)


def _grouped_either_way(typed: str) -> Decimal | None:
    """Return a number with several marks, which can be meant in one way at most."""
    readings = (_decimal(typed, marks) for marks in EITHER_WAY)
    return next((number for number in readings if number is not None), None)


def _ungrouped(whole: str, marks: Marks) -> str | None:
    """Return the digits of a whole number, or None when they are grouped as nobody does."""
    if re.fullmatch(r"\d+", whole):
        return whole
    for mark in marks.groupings:
        groups = rf"{_WESTERN_GROUPS}|{_INDIAN_GROUPS}".replace("G", re.escape(mark))
        if re.fullmatch(groups, whole):
            return whole.replace(mark, "")
    return None


def _number_of(digits: str) -> Decimal:
    if len(digits.replace(".", "").lstrip("0")) > MOST_DIGITS:
        raise refuse("", MistakeCode.TOO_MANY_DIGITS, read=shown(digits), limit=MOST_DIGITS)
    return Decimal(digits)


def _not_read(text: str, unsigned: str) -> Refused:
    doubt = _ONE_MARK.fullmatch(unsigned)
    if doubt is None:
        return refuse("", MistakeCode.NOT_A_NUMBER, read=shown(text))
    readings = {
        "as_decimal": Decimal(f"{doubt['before']}.{doubt['after']}"),
        "as_grouping": Decimal(doubt["before"] + doubt["after"]),
    }
    return refuse("", MistakeCode.DOUBTFUL_NUMBER, read=shown(text), **readings)
