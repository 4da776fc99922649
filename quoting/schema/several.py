"""The kinds that are several of another kind: lists, tables by the maker's own names."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType
from typing import TypeVar

from quoting.core.ground.codes import MistakeCode
from quoting.schema.kind import Kind, Leaf
from quoting.schema.notation import RECORD, Medium, Notation
from quoting.schema.notes import NOT_READ
from quoting.schema.shape import Shape
from quoting.schema.spot import Spot
from quoting.schema.words import TEXT

T = TypeVar("T")

NAME_FIELD, VALUE_FIELD = "name", "value"
"""The fields of a form's line that has one text, perhaps under a name."""

BETWEEN = ";"

MOST_NUMBER_LENGTH = 6
MOST_ITEMS = 1_000
"""A longer list, or table of names, is not looked into."""


class Several(Kind[tuple[T, ...]]):
    """A list, its lines counted from 1."""

    def __init__(self, each: Kind[T]) -> None:
        self.each = each

    def read(self, spot: Spot) -> tuple[T, ...]:
        """Return the values of the list. Errors: `wrong-type`, `too-many`."""
        return tuple(_read_line(self.each, line) for line in lines_of(spot))

    def write(self, value: Iterable[T], notation: Notation) -> list[object]:
        """Return the list."""
        written = [self.each.write(item, notation) for item in value]
        if notation.medium is Medium.TYPED:
            return [_line(item) for item in written]
        return written


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
        items = spot.close([], MistakeCode.TOO_MANY, read=len(items), limit=MOST_ITEMS)
    return (spot.at(number, item) for number, item in enumerate(items, 1))


class OneOrMore(Leaf[tuple[T, ...]]):
    """One figure that was set, or several that were measured.

    In files and records one is bare and several are a list; a form has them in one text, with
    semicolons between, which no number has in it.
    """

    def __init__(self, each: Leaf[T]) -> None:
        self.each = each
        self.stand_in = (each.stand_in,)
        self._list = Several(each)

    def from_file(self, spot: Spot) -> tuple[T, ...]:
        """Return the figures. Errors: as a list's, or one figure's."""
        return self._list.read(spot) if isinstance(spot.value, list) else (self.each.read(spot),)

    def parse(self, text: str, notation: Notation) -> tuple[T, ...]:
        """Return the figures. Errors: as one figure's."""
        return tuple(self.each.parse(part, notation) for part in text.split(BETWEEN))

    def to_file(self, value: tuple[T, ...], notation: Notation) -> object:
        """Return one figure bare, several as a list."""
        written = self._list.write(value, notation)
        return written[0] if len(value) == 1 else written

    def to_record(self, value: tuple[T, ...]) -> object:
        """Return one figure bare, several as a list."""
        return self.to_file(value, RECORD)

    def show(self, value: tuple[T, ...], notation: Notation) -> str:
        """Return the figures in one text."""
        return f"{BETWEEN} ".join(self.each.show(item, notation) for item in value)


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
            each = self.each
            lines = named_lines(spot, NAME_FIELD)
            return MappingProxyType({name: _read_line(each, line) for name, line in lines})
        return MappingProxyType({name: self.each.read(at) for name, at in named_spots(spot)})

    def write(self, value: Mapping[str, T], notation: Notation) -> object:
        """Return the table, or the lines of a form."""
        written = {name: self.each.write(item, notation) for name, item in value.items()}
        if notation.medium is Medium.TYPED:
            return [{NAME_FIELD: name} | _line(item) for name, item in written.items()]
        return written


def named_spots(spot: Spot) -> Iterator[tuple[str, Spot]]:
    """Yield the spots of a table by the maker's own names.

    Errors: `wrong-type`, `too-many`, and `empty-key` of a name that is none, which is left out.
    """
    items = spot.value if isinstance(spot.value, dict) else spot.wrong({}, "table")
    if len(items) > MOST_ITEMS:
        items = spot.close({}, MistakeCode.TOO_MANY, read=len(items), limit=MOST_ITEMS)
    for name, item in items.items():
        inner = spot.at(name, item)
        if name.strip():
            yield name, inner
        else:
            inner.close(None, MistakeCode.EMPTY_KEY)


def named_lines(spot: Spot, field: str) -> Iterator[tuple[str, Spot]]:
    """Yield the lines of a form's list by the names that stand in a field of theirs.

    Errors: `wrong-type`, `too-many`; of a name `missing`, `given-twice`.
    """
    names: set[str] = set()
    for line in lines_of(spot):
        named = line.at(field, _fields(line).get(field))
        if named.value is None:
            named.close(None, MistakeCode.MISSING)
        name = NOT_READ if named.value is None else TEXT.read(named)
        if name in names:
            named.close(None, MistakeCode.GIVEN_TWICE, read=name)
        names.add(name)
        yield name, line


class NamedBy(Kind[Mapping[str, T]]):
    """Values under names that they bear themselves, in a field of theirs.

    In files and records a table of them; in a form a list of lines, each with that field.
    """

    def __init__(self, shape: Shape[T], field: str, label: str) -> None:
        self.shape = shape
        self.field = field
        self.label = label

    def read(self, spot: Spot) -> Mapping[str, T]:
        """Return the values by name. Errors: `wrong-type`; of a form `missing`, `given-twice`."""
        typed = spot.notation.medium is Medium.TYPED
        places = named_lines(spot, self.field) if typed else named_spots(spot)
        return MappingProxyType(
            {name: self.shape.read(at, **{self.field: name}) for name, at in places}
        )

    def write(self, value: Mapping[str, T], notation: Notation) -> object:
        """Return the table, or the lines of a form."""
        written = {name: self.shape.write(item, notation) for name, item in value.items()}
        if notation.medium is Medium.TYPED:
            return [{self.field: name} | item for name, item in written.items()]
        return written


def _fields(line: Spot) -> Mapping[str, object]:
    return line.value if isinstance(line.value, dict) else {}


def _read_line(each: Kind[T], line: Spot) -> T:
    """Return the value of a line; where it is one text, a form has it in the field `value`."""
    if line.notation.medium is not Medium.TYPED or isinstance(each, Shape):
        return each.read(line)
    value = line.at(VALUE_FIELD, _fields(line).get(VALUE_FIELD))
    if value.value is None:
        value.close(None, MistakeCode.MISSING)
    return each.read(value)


def _line(written: object) -> dict[str, object]:
    return written if isinstance(written, dict) else {VALUE_FIELD: written}
