"""One spot of a document: what stands there, where it is, and the notes of what is wrong."""

from __future__ import annotations

from collections.abc import Callable, Container, Mapping
from dataclasses import dataclass, fields, replace
from datetime import date, time
from decimal import Decimal
from typing import Any, TypeVar

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Fact, Refused
from quoting.core.ground.place import NOWHERE, Part, Place
from quoting.notation.marks import shown
from quoting.schema.notation import Notation
from quoting.schema.notes import Notes

T = TypeVar("T")

EMPTY_KEY = '""'
"""How a file writes a key that is no word at all."""

SHOWN_INTEGER = 10**40
"""Integers beyond this are not written out: the language itself refuses the longest."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A value as the document has it, its place, and how the document is written."""

    value: object
    place: Place
    notes: Notes
    notation: Notation

    def at(self, part: Part, value: object) -> Spot:
        """Return a spot inside this one: a key of a table, or a line counted from 1."""
        inner = (as_written(part) or EMPTY_KEY) if isinstance(part, str) else part
        return replace(self, value=value, place=self.place / inner)

    def close(self, stand_in: T, code: MistakeCode, **facts: Fact) -> T:
        """Note what is wrong here and return the stand-in to go on with."""
        self.notes.close(self.place, code, **facts)
        return stand_in

    def wrong(self, stand_in: T, wanted: str) -> T:
        """Note that something else is wanted here (`text`, `whole-number`, `table` ...)."""
        return self.close(
            stand_in, MistakeCode.WRONG_TYPE, read=as_written(self.value), wanted=wanted
        )

    def attempt(self, stand_in: T, reader: Callable[[], T]) -> T:
        """Return what `reader` gives, or note its refusal here and return the stand-in."""
        try:
            return reader()
        except Refused as refused:
            mistake = refused.mistakes[0]
            return self.close(stand_in, mistake.code, **mistake.facts)

    def build(self, kind: type[T], values: Mapping[str, object], given: Container[str] = ()) -> T:
        """Return a value of that kind; where it is refused, note why and return it unchecked.

        What is wrong with a field that was `given` from elsewhere is noted here. An unchecked
        value never leaves the reading, which ends in a refusal; it lets what is checked across
        values be checked all the same.
        """
        try:
            return kind(**values)
        except Refused as refused:
            here = (replace(m, place=NOWHERE) if m.path in given else m for m in refused.mistakes)
            self.notes.keep(here, self.place)
            return _unchecked(kind, values)


def _unchecked(kind: type[T], values: Mapping[str, object]) -> T:
    value = object.__new__(kind)
    described: Any = kind
    for item in fields(described):
        given = values[item.name] if item.name in values else default_of(item)
        object.__setattr__(value, item.name, given)
    return value


def default_of(item: Any) -> object:
    """Return a dataclass field's default."""
    return item.default_factory() if callable(item.default_factory) else item.default


def as_written(value: object) -> str:
    """Return the beginning of a value about as the document has it."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, dict | list):
        return "{…}" if isinstance(value, dict) else "[…]"
    if isinstance(value, int) and abs(value) >= SHOWN_INTEGER:
        return "…"
    if isinstance(value, date | time):
        return value.isoformat()
    return shown(str(value) if isinstance(value, int | float | Decimal | str) else "")
