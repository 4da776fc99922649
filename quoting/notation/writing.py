"""Numbers and measures written so that reading them gives the same again."""

from __future__ import annotations

from decimal import Decimal

from quoting.notation.marks import Marks
from quoting.notation.measures import LENGTH, Quantity

FLOAT_DIGITS = 17
"""Significant digits that always tell one float from the next (IEEE 754 binary64)."""


def write_number(value: Decimal | float, marks: Marks) -> str:
    """Return a finite number in full, ungrouped, with its own decimals."""
    number = value if isinstance(value, Decimal) else Decimal(repr(value))
    return format(number, "f").replace(".", marks.decimal[0])


def write_measure(
    value: float, marks: Marks, quantity: Quantity = LENGTH, unit: str | None = None
) -> str:
    """Return a measure, given in the quantity's inside unit, as a number and a unit.

    The number is the shortest that is read as exactly `value` again.
    """
    unit = unit or quantity.base
    factor = quantity.factor(unit)
    size = Decimal(value) / factor
    for digits in range(1, FLOAT_DIGITS + 2):
        short = Decimal(format(size, f".{digits}g"))
        if float(short * factor) == value:
            break
    return f"{write_number(_whole_plainly(short), marks)} {unit}"


def _whole_plainly(number: Decimal) -> Decimal:
    """Return the number without a whole number's trailing decimals: 80, not 80.0."""
    whole = number.to_integral_value()
    return whole if whole == number else number
