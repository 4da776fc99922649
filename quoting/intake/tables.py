"""Tables of a file: keys asked for by kind, and those that nobody asked for reported."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, dataclass, fields, replace
from typing import Any, TypeVar

from quoting.core.errors import MOST_TOLD
from quoting.core.stitches import Vocabulary
from quoting.intake.entries import Entry, choice
from quoting.intake.spots import Notes, Spot, as_written, default_of

T = TypeVar("T")

Entries = Mapping[str, "Entry[Any] | Named"]


@dataclass(frozen=True, slots=True)
class Named:
    """An entry whose key in the file is not the field's name (`width` for `width_cm`)."""

    key: str
    entry: Entry[Any]


class Table:
    """Hands out the keys of one table and notes its mistakes."""

    def __init__(self, spot: Spot) -> None:
        self.spot = spot
        content = spot.value if isinstance(spot.value, dict) else spot.wrong({}, "table")
        self._content: dict[str, object] = content
        self._asked: list[str] = []

    def take(self, key: str, entry: Entry[T]) -> T:
        """Return the value of a key that must be there."""
        self._asked.append(key)
        spot = self.spot.at(key, self._content.get(key))
        if key not in self._content:
            spot.close(None, "missing")
        return entry.read(spot)

    def may(self, key: str, entry: Entry[T], default: T) -> T:
        """Return the value of a key that may be left out."""
        if key in self._content:
            return self.take(key, entry)
        self._asked.append(key)
        return default

    def table(self, key: str) -> Table:
        """Return a table that must be there."""
        return self.take(key, Entry(Table))

    def values(self, kind: type[Any], entries: Entries) -> dict[str, object]:
        """Return the fields of a dataclass by the entries that give them.

        A field that has a default may be left out, and then takes it.
        """
        items = {item.name: item for item in fields(kind)}
        values = {}
        for name, entry in entries.items():
            key, reader = _key_and_entry(name, entry)
            if key in self._content or _is_required(items[name]):
                values[name] = self.take(key, reader)
            else:
                self._asked.append(key)
        return values

    def build(self, kind: type[T], **values: object) -> T:
        """Return a value of that kind, noting at this table what its constructor refuses."""
        return self.spot.build(kind, **values)

    def done(self) -> None:
        """Note every key that nobody asked for, with the nearest that somebody did."""
        known = tuple(self._asked)
        unknown = [key for key in self._content if key not in known]
        for key in unknown[:MOST_TOLD]:
            spot = self.spot.at(key, None)
            spot.close(None, "unknown-key", read=as_written(key), known=known)
        self.spot.notes.count(len(unknown[MOST_TOLD:]))


def shape(kind: type[T], **entries: Entry[Any] | Named) -> Entry[T]:
    """Return the entry of a table that gives a dataclass, field by field, both ways."""

    def read(spot: Spot) -> T:
        table = Table(spot)
        values = table.values(kind, entries)
        table.done()
        return table.build(kind, **values)

    return Entry(read, lambda value, terms: written(value, entries, terms))


def written(value: Any, entries: Entries, terms: Vocabulary) -> dict[str, object]:
    """Return the table of a dataclass, without the fields that have their default."""
    table = {}
    for item in fields(value):
        given = getattr(value, item.name)
        is_default = not _is_required(item) and given == default_of(item)
        if item.name in entries and not is_default:
            key, entry = _key_and_entry(item.name, entries[item.name])
            table[key] = entry.write(given, terms)
    return table


def open_file(content: dict[str, object]) -> Table:
    """Return a whole file as a table, its vocabulary read from `terms`."""
    table = Table(Spot(content, "", Notes()))
    terms = table.may("terms", choice(Vocabulary), Vocabulary.US)
    table.spot = replace(table.spot, terms=terms)
    return table


def _key_and_entry(name: str, entry: Entry[Any] | Named) -> tuple[str, Entry[Any]]:
    return (entry.key, entry.entry) if isinstance(entry, Named) else (name, entry)


def _is_required(item: Any) -> bool:
    return item.default is MISSING and item.default_factory is MISSING
