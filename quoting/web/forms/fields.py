"""A field of a form: what was typed, how it was read, and what is said of it.

`typed` is what stands in the field, whatever becomes of it; `data` its value, None where it is
blank or cannot be read; `mistake` why it cannot.
"""

from __future__ import annotations

from decimal import Decimal
from functools import cached_property
from typing import Any

from wtforms import Field

from quoting.core.ground.errors import Mistake, Refused
from quoting.notation import without_sign, write_number
from quoting.schema.figures import PER_CENT
from quoting.schema.kind import Leaf
from quoting.schema.notation import Notation

PER_CENT_DIGITS = 6
LENGTH_DIGITS = 2


class Typed(Field):
    """A field of one kind."""

    typed: str = ""
    says: tuple[str, ...] = ()

    def __init__(self, label: str, kind: Leaf[Any], **kwargs: Any) -> None:
        super().__init__(label, **kwargs)
        self.kind = kind

    @property
    def mode(self) -> str:
        """What a browser is told of the text."""
        return self.kind.mode

    @property
    def notation(self) -> Notation:
        """How the workshop's maker types."""
        return self.meta.shop.notation  # type: ignore[no-any-return]

    def process(self, formdata: Any, data: Any = None, extra_filters: Any = None) -> None:
        """Take what was sent."""
        del data, extra_filters
        self.typed = formdata.get(self.name, "") if formdata is not None else ""

    @cached_property
    def _read(self) -> tuple[Any, tuple[Mistake, ...]]:
        if not self.typed.strip():
            return None, ()
        try:
            return self.kind.parse(self.typed, self.notation), ()
        except Refused as refused:
            return None, refused.mistakes

    @property
    def data(self) -> Any:
        """The value of what was typed; None where it is blank or cannot be read."""
        return self._read[0]

    @data.setter
    def data(self, value: Any) -> None:
        """Take none: a field has what was typed in it."""

    @property
    def mistakes(self) -> tuple[Mistake, ...]:
        """Why it cannot be read."""
        return self._read[1]

    @property
    def mistake(self) -> Mistake | None:
        """The first reason why it cannot be read."""
        return next(iter(self.mistakes), None)

    def write(self, value: Any) -> str:
        """Return the text that is read as `value`."""
        return self.kind.show(value, self.notation)

    @property
    def understood(self) -> str | None:
        """How the text was read, where that is not plain from the text itself."""
        return None


class Tick(Typed):
    """A box to tick."""

    @property
    def data(self) -> bool:
        """Whether it is ticked."""
        return bool(self.typed)

    @data.setter
    def data(self, value: Any) -> None:
        """Take none."""


class Figure(Typed):
    """A field of a figure, which is echoed where it was not typed plainly."""

    @property
    def understood(self) -> str | None:
        """The value in plain notation, where it was typed otherwise."""
        if self.data is None:
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
        mark = self.notation.marks.decimal[0]
        short = typed.rstrip("0").rstrip(mark) if mark in typed else typed
        return self.shown_plainly() in (typed, short)


class Amount(Figure):
    """A field of money."""

    def bare(self) -> str:
        """Return the amount that was typed, without its currency."""
        return without_sign(super().bare(), self.notation.signs)


class PerCent(Figure):
    """A field of a share."""

    def shown_plainly(self) -> str:
        """Return the share in per cent with its sign, as the locale has it."""
        return str(self.meta.shop.speech.percent(self.data, PER_CENT_DIGITS))

    def is_plain(self) -> bool:
        """Return whether it says its value plainly; under one per cent may be meant as a share."""
        typed = self.typed.strip().removesuffix("%").strip()
        return typed == self.write(self.data) and not 0 < abs(self.data) < 1 / PER_CENT


class Length(Figure):
    """A field of a measure, in the workshop's units where none is typed."""

    def shown_plainly(self) -> str:
        """Return the measure to two decimals."""
        unit, quantity = self._unit, self.kind.quantity  # type: ignore[attr-defined]
        size = round(Decimal(repr(self.data)) / quantity.factor(unit), LENGTH_DIGITS)
        return f"{write_number(size.normalize(), self.notation.marks)} {unit}"

    def is_plain(self) -> bool:
        """Return whether it is in the maker's own unit."""
        typed, plain = self.typed.strip(), self.shown_plainly()
        spaced = typed.replace(self._unit, f" {self._unit}")
        return plain in (typed, f"{typed} {self._unit}", spaced) or typed == self.write(self.data)

    @property
    def _unit(self) -> str:
        return self.notation.unit_of(self.kind.quantity)  # type: ignore[attr-defined]
