"""The kinds that are figures: numbers, counts, shares, money, measures."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import ClassVar

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.notation import (
    FILE_MARKS,
    LENGTH,
    MASS,
    YARN_LENGTH,
    Quantity,
    read_measure,
    read_money,
    read_number,
    write_measure,
    write_number,
)
from quoting.notation.marks import shown
from quoting.schema.kind import Leaf
from quoting.schema.notation import Notation
from quoting.schema.spot import Spot, as_written

PER_CENT = 100

MOST_INTEGER = 10**15
"""Integers under it are exact as floats too."""

MOST_SHORT = len("100.25 cm")
"""Characters of a measure that a person would type."""

_EVERYDAY = {"cm": ("cm", "in"), "m": ("m", "yd"), "g": ("g", "oz")}
"""The units that each kind of measure is usually given in, by the one used inside."""

_SAID_WITH_A_WORD = re.compile(r"\d.*[^\W\d_]\.?\s*$", re.DOTALL)


class Number(Leaf[float]):
    """A number without a unit."""

    mode: ClassVar[str] = "decimal"
    stand_in = 1.0

    def from_file(self, spot: Spot) -> float:
        """Return the number. Errors: `wrong-type`, `not-finite`, `too-many-digits`."""
        value = spot.value
        if not is_number(value):
            return spot.wrong(self.stand_in, "number")
        if isinstance(value, int) and abs(value) >= MOST_INTEGER:
            return spot.close(
                self.stand_in, MistakeCode.TOO_MANY_DIGITS, read=as_written(value), limit=15
            )
        if not _is_finite(value):
            return spot.close(self.stand_in, MistakeCode.NOT_FINITE, read=as_written(value))
        return float(value)  # type: ignore[arg-type]

    def parse(self, text: str, notation: Notation) -> float:
        """Return the number. Errors: as `read_number`."""
        return float(read_number(text, notation.marks))

    def show(self, value: float, notation: Notation) -> str:
        """Return the number with its own decimals, without any if it is whole."""
        return write_number(Decimal(repr(value)).normalize(), notation.marks)


class BareGrams(Number):
    """A number of grams, or of what stands beside it; with a unit of mass any weight is typed."""

    def parse(self, text: str, notation: Notation) -> float:
        """Return the number, of a weight its grams. Errors: as `read_number`, `read_measure`."""
        if not _SAID_WITH_A_WORD.search(text):
            return super().parse(text, notation)
        return read_measure(text, notation.marks, MASS)


class Share(Number):
    """A part of a whole: in files and records a fraction, in forms per cent."""

    def parse(self, text: str, notation: Notation) -> float:
        """Return the share: 15 and 15 % are 0.15. Errors: as `read_number`."""
        return float(read_number(text.strip().removesuffix("%"), notation.marks) / PER_CENT)

    def show(self, value: float, notation: Notation) -> str:
        """Return the share in per cent, without the sign."""
        return write_number((Decimal(repr(value)) * PER_CENT).normalize(), notation.marks)


class Count(Leaf[int]):
    """A whole number."""

    mode: ClassVar[str] = "numeric"
    stand_in = 1

    def from_file(self, spot: Spot) -> int:
        """Return the number. Errors: `wrong-type`, `too-many-digits`."""
        value = spot.value
        if isinstance(value, bool) or not isinstance(value, int):
            return spot.wrong(self.stand_in, "whole-number")
        if abs(value) >= MOST_INTEGER:
            return spot.close(
                self.stand_in, MistakeCode.TOO_MANY_DIGITS, read=as_written(value), limit=15
            )
        return value

    def parse(self, text: str, notation: Notation) -> int:
        """Return the number. Errors: `wrong-type` where it is not whole; as `read_number`."""
        number = read_number(text, notation.marks)
        if number != number.to_integral_value():
            raise refuse("", MistakeCode.WRONG_TYPE, read=shown(text), wanted="whole-number")
        if abs(number) >= MOST_INTEGER:
            raise refuse("", MistakeCode.TOO_MANY_DIGITS, read=shown(text), limit=15)
        return int(number)


class Exact(Leaf[Decimal]):
    """A decimal number that nothing may be lost of: text in files and records."""

    mode: ClassVar[str] = "decimal"
    stand_in = Decimal(1)

    def from_file(self, spot: Spot) -> Decimal:
        """Return the number. Errors: `wrong-type`; as `read_money`."""
        text = spot.value
        if not isinstance(text, str):
            return spot.wrong(self.stand_in, "money-text")
        return spot.attempt(self.stand_in, lambda: read_money(text, FILE_MARKS))

    def parse(self, text: str, notation: Notation) -> Decimal:
        """Return the number. Errors: as `read_money`."""
        return read_money(text, notation.marks, notation.signs)

    def to_file(self, value: Decimal, notation: Notation) -> str:
        """Return the number as text."""
        del notation
        return write_number(value, FILE_MARKS)

    def to_record(self, value: Decimal) -> str:
        """Return the number as text."""
        return write_number(value, FILE_MARKS)

    def show(self, value: Decimal, notation: Notation) -> str:
        """Return the number with its own decimals."""
        return write_number(value, notation.marks)


class Money(Exact):
    """An amount of the workshop's currency."""


class Measure(Leaf[float]):
    """A measure: text with a unit, in the quantity's inside unit."""

    stand_in = 1.0

    def __init__(self, quantity: Quantity) -> None:
        self.quantity = quantity

    def from_file(self, spot: Spot) -> float:
        """Return the measure. Errors: `missing-unit`, `wrong-type`; as `read_measure`."""
        text = spot.value
        if is_number(text):
            read = as_written(text)
            facts = {"read": read, "quoted": f'"{read} {self.quantity.base}"'}
            return spot.close(
                self.stand_in, MistakeCode.MISSING_UNIT, **facts, known=self.quantity.units
            )
        if not isinstance(text, str):
            return spot.wrong(self.stand_in, "measure")
        return spot.attempt(self.stand_in, lambda: read_measure(text, FILE_MARKS, self.quantity))

    def parse(self, text: str, notation: Notation) -> float:
        """Return the measure, in the maker's units where none is typed."""
        unit = notation.unit_of(self.quantity)
        return read_measure(text, notation.marks, self.quantity, unit)

    def to_file(self, value: float, notation: Notation) -> object:
        """Return the measure with the inside unit."""
        del notation
        return write_measure(value, FILE_MARKS, self.quantity)

    def from_record(self, spot: Spot) -> float:
        """Return the number of the inside unit."""
        return NUMBER.from_file(spot)

    def show(self, value: float, notation: Notation) -> str:
        """Return the measure with its unit: the maker's, or another that says it shortly."""
        texts = [
            write_measure(value, notation.marks, self.quantity, unit)
            for unit in (notation.unit_of(self.quantity), *_EVERYDAY[self.quantity.base])
        ]
        return next((text for text in texts if len(text) <= MOST_SHORT), texts[0])


class Amount(Measure):
    """A measure whose key in a file names its unit: a number of it, or a measure in any unit."""

    def from_file(self, spot: Spot) -> float:
        """Return the measure. Errors: as a number's, or a measure's."""
        return NUMBER.from_file(spot) if is_number(spot.value) else super().from_file(spot)

    def to_file(self, value: float, notation: Notation) -> object:
        """Return the number of the unit."""
        del notation
        return value


def is_number(value: object) -> bool:
    """Return whether a file or a record has a number here; yes and no are none."""
    return isinstance(value, int | float | Decimal) and not isinstance(value, bool)


def _is_finite(value: object) -> bool:
    """Return whether a number is small enough to reckon with; its digits are never rounded."""
    if isinstance(value, Decimal):
        return value.is_finite() and value.copy_abs() <= MOST_INTEGER
    return isinstance(value, int | float) and abs(value) <= MOST_INTEGER


NUMBER = Number()
BARE_GRAMS = BareGrams()
SHARE = Share()
COUNT = Count()
EXACT = Exact()
MONEY = Money()
SIDE = Measure(LENGTH)
WEIGHT = Measure(MASS)
GRAMS = Amount(MASS)
METRES = Amount(YARN_LENGTH)
