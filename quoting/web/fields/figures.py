"""The fields that are figures: numbers, money, per cent, counts, measures."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from quoting.core.errors import refuse
from quoting.notation import (
    LENGTH,
    Quantity,
    read_measure,
    read_money,
    read_number,
    without_sign,
    write_measure,
    write_number,
)
from quoting.notation.marks import shown
from quoting.web.fields.words import Typed

PER_CENT = 100
PER_CENT_DIGITS = 6
MOST_SHORT = len("100.25 cm")
"""Characters of a measure that a person would type."""

_EVERYDAY = {"cm": ("cm", "in"), "m": ("m", "yd"), "g": ("g", "oz")}
"""The units that each kind of measure is usually given in, by the one used inside."""

MOST_INTEGER = 10**15
"""Integers under it are exact as floats too."""


class Number(Typed):
    """A number in the workshop's notation."""

    mode = "decimal"

    def read(self, text: str) -> Any:
        """Return the number as a float."""
        return float(read_number(text, self.marks))

    def write(self, value: Any) -> str:
        """Return the number with its own decimals, without any if it is whole."""
        number = value if isinstance(value, Decimal) else Decimal(repr(value))
        return write_number(number.normalize(), self.marks)

    @property
    def understood(self) -> str | None:
        """The value in plain notation, where it was typed otherwise."""
        if self.data is None or self.mistake is not None:
            return None
        return None if self.is_plain() else self.shown_plainly()

    def shown_plainly(self) -> str:
        """Return the value as it is echoed."""
        return self.write(self.data)

    def bare(self) -> str:
        """Return the figure that was typed, without anything round it."""
        return self.typed.strip()

    def is_plain(self) -> bool:
        """Return whether the text says its value plainly enough not to be echoed."""
        typed = self.bare()
        mark = self.marks.decimal[0]
        short = typed.rstrip("0").rstrip(mark) if mark in typed else typed
        return self.shown_plainly() in (typed, short)


class Money(Number):
    """An amount of the workshop's currency."""

    def read(self, text: str) -> Decimal:
        """Return the amount, exactly."""
        return read_money(text, self.marks, self.meta.shop.speech.currency_signs)

    def bare(self) -> str:
        """Return the amount that was typed, without its currency."""
        return without_sign(super().bare(), self.meta.shop.speech.currency_signs)

    def write(self, value: Any) -> str:
        """Return the amount with its own decimals."""
        return write_number(value, self.marks)


class PerCent(Number):
    """A share, typed in per cent."""

    def read(self, text: str) -> float:
        """Return the share: 15 and 15 % are 0.15."""
        number = read_number(text.strip().removesuffix("%"), self.marks)
        return float(number / PER_CENT)

    def write(self, value: Any) -> str:
        """Return the share in per cent, without the sign."""
        return super().write(Decimal(repr(value)) * PER_CENT)

    def shown_plainly(self) -> str:
        """Return the share in per cent with its sign, as the locale has it."""
        return str(self.meta.shop.speech.percent(self.data, PER_CENT_DIGITS))

    def is_plain(self) -> bool:
        """Return whether it says its value plainly; under one per cent may be meant as a share."""
        typed = self.typed.strip().removesuffix("%").strip()
        return typed == self.write(self.data) and not 0 < abs(self.data) < 1 / PER_CENT


class Count(Number):
    """A whole number."""

    mode = "numeric"

    def read(self, text: str) -> int:
        """Return the number. Errors: `wrong-type` where it is not whole."""
        number = read_number(text, self.marks)
        if number != number.to_integral_value():
            raise refuse("", "wrong-type", read=shown(text), wanted="whole-number")
        if abs(number) >= MOST_INTEGER:
            raise refuse("", "too-many-digits", read=shown(text), limit=15)
        return int(number)


class Measure(Number):
    """A length, in the workshop's units where none is typed."""

    mode = "text"

    def __init__(self, label: str, quantity: Quantity = LENGTH, **kwargs: Any) -> None:
        super().__init__(label, **kwargs)
        self.quantity = quantity

    @property
    def unit(self) -> str:
        """The unit taken where none is typed."""
        return self.meta.shop.unit_of(self.quantity)  # type: ignore[no-any-return]

    def read(self, text: str) -> float:
        """Return the measure in the quantity's inside unit."""
        return read_measure(text, self.marks, self.quantity, self.unit)

    def write(self, value: Any) -> str:
        """Return the measure with its unit: the maker's, or another that says it shortly."""
        texts = [
            write_measure(value, self.marks, self.quantity, unit)
            for unit in (self.unit, *_EVERYDAY[self.quantity.base])
        ]
        return next((text for text in texts if len(text) <= MOST_SHORT), texts[0])

    def shown_plainly(self) -> str:
        """Return the measure to two decimals."""
        size = Decimal(repr(self.data)) / self.quantity.factor(self.unit)
        return f"{super().write(round(size, 2))} {self.unit}"

    def is_plain(self) -> bool:
        """Return whether it is in the maker's own unit."""
        typed, plain = self.typed.strip(), self.shown_plainly()
        spaced = typed.replace(self.unit, f" {self.unit}")
        return plain in (typed, f"{typed} {self.unit}", spaced) or typed == self.write(self.data)
