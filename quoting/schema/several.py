"""The kinds that are several of another kind: lists, tables by the maker's own names."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType
from typing import TypeVar

from quoting.schema.kind import Kind
from quoting.schema.notation import Medium, Notation
from quoting.schema.notes import NOT_READ
from quoting.schema.shape import Shape
from quoting.schema.spot import Spot
from quoting.schema.words import TEXT

T = TypeVar("T")

MOST_NUMBER_LENGTH = 6
MOST_ITEMS = 1_000
"""A longer list, or table of names, is not looked into."""


class Several(Kind[tuple[T, ...]]):
    """A list, its lines counted from 1."""

    def __init__(self, each: Kind[T]) -> None:
        self.each = each

    def read(self, spot: Spot) -> tuple[T, ...]:
        """Return the values of the list. Errors: `wrong-type`, `too-many`."""
        return tuple(self.each.read(line) for line in lines_of(spot))

    def write(self, value: Iterable[T], notation: Notation) -> list[object]:
        """Return the list."""
        return [self.each.write(item, notation) for item in value]


def is_number(part: str) -> bool:
    """Return whether a part of a field's name is the number of a line."""
    return part.isascii() and part.isdigit() and len(part) <= MOST_NUMBER_LENGTH


def lines_of(spot: Spot) -> Iterator[Spot]:
    """Yield the spots of a list's lines; a form has them in a table by their numbers.

    Errors: `wrong-type`, `too-many`.
    """
    items = spot.value
    if spot.notation.medium is Medium.TYPED and isinstance(items, dict):
        items = [items[number] for number in sorted(filter(is_number, items), key=int)]
    if not isinstance(items, list):
        items = spot.wrong([], "list")
    if len(items) > MOST_ITEMS:
        items = spot.close([], "too-many", read=len(items), limit=MOST_ITEMS)
    return (spot.at(number, item) for number, item in enumerate(items, 1))


class OneOrMore(Kind[tuple[T, ...]]):
    """One figure that was set, or a list of several that were measured."""

    def __init__(self, each: Kind[T]) -> None:
        self.each = each
        self._list = Several(each)

    def read(self, spot: Spot) -> tuple[T, ...]:
        """Return the figures."""
        if isinstance(spot.value, list):
            return self._list.read(spot)
        return (self.each.read(spot),)

    def write(self, value: tuple[T, ...], notation: Notation) -> object:
        """Return one figure bare, several as a list."""
        if len(value) == 1:
            return self.each.write(value[0], notation)
        return self._list.write(value, notation)


class Named(Kind[Mapping[str, T]]):
    """Values under names of the maker's own.

    In files and records a table of them; in a form a list of lines, each with its `name`.
    """

    def __init__(self, each: Kind[T], label: str = "Name") -> None:
        self.each = each
        self.label = label

    def read(self, spot: Spot) -> Mapping[str, T]:
        """Return the values by name. Errors: `wrong-type`; of a form `missing`, `given-twice`."""
        if spot.notation.medium is Medium.TYPED:
            return MappingProxyType(self._lines(spot))
        return MappingProxyType({name: self.each.read(at) for name, at in named_spots(spot)})

    def _lines(self, spot: Spot) -> dict[str, T]:
        values: dict[str, T] = {}
        for line in lines_of(spot):
            fields = line.value if isinstance(line.value, dict) else {}
            named = line.at("name", fields.get("name"))
            if named.value is None:
                named.close(None, "missing")
            name = NOT_READ if named.value is None else TEXT.read(named)
            if name in values:
                named.close(None, "given-twice", read=name)
            values[name] = self._read_line(line, fields)
        return values

    def _read_line(self, line: Spot, fields: Mapping[str, object]) -> T:
        """Return the value of a form's line: its own fields, or the one called `value`."""
        if isinstance(self.each, Shape):
            read: T = self.each.read(line)
            return read
        value = line.at("value", fields.get("value"))
        if value.value is None:
            value.close(None, "missing")
        return self.each.read(value)

    def write(self, value: Mapping[str, T], notation: Notation) -> object:
        """Return the table, or the lines of a form."""
        written = {name: self.each.write(item, notation) for name, item in value.items()}
        if notation.medium is Medium.TYPED:
            return [{"name": name} | _table(item) for name, item in written.items()]
        return written


def named_spots(spot: Spot) -> Iterator[tuple[str, Spot]]:
    """Yield the spots of a table by the maker's own names.

    Errors: `wrong-type`, `too-many`, and `empty-key` of a name that is none, which is left out.
    """
    items = spot.value if isinstance(spot.value, dict) else spot.wrong({}, "table")
    if len(items) > MOST_ITEMS:
        items = spot.close({}, "too-many", read=len(items), limit=MOST_ITEMS)
    for name, item in items.items():
        inner = spot.at(name, item)
        if name.strip():
            yield name, inner
        else:
            inner.close(None, "empty-key")


class NamedBy(Kind[Mapping[str, T]]):
    """Values under names that they bear themselves, in a field of theirs."""

    def __init__(self, shape: Shape[T], field: str) -> None:
        self.shape = shape
        self.field = field

    def read(self, spot: Spot) -> Mapping[str, T]:
        """Return the values by name. Errors: `wrong-type`."""
        read = self.shape.read
        return MappingProxyType(
            {name: read(at, **{self.field: name}) for name, at in named_spots(spot)}
        )

    def write(self, value: Mapping[str, T], notation: Notation) -> object:
        """Return the table."""
        return {name: self.shape.write(item, notation) for name, item in value.items()}


def _table(written: object) -> dict[str, object]:
    return written if isinstance(written, dict) else {"value": written}
