"""A shape: one description of a value's keys, for files, forms and records alike.

Each key is named once: the field that holds it, its name in documents, its kind, its label.
"""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Iterator
from dataclasses import MISSING, dataclass, fields, replace
from typing import Any, Generic, TypeVar

from quoting.schema.kind import Kind
from quoting.schema.notation import Medium, Notation
from quoting.schema.spot import Spot, default_of
from quoting.schema.table import Table

V = TypeVar("V")
T = TypeVar("T")


def _anywhere(table: Table) -> bool:
    del table
    return True


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """One key of a value.

    `field` holds it in the value, `name` is its name in documents, `table` the table it stands in
    where that is not the value's own. `usual` is shown blank in a form. Left out, it takes the
    value of the field that `else_as` names, where the table is one that `else_where` says yes to,
    or its default; in a form it takes `blank`, where that is given, and may not be left blank at
    all where it is `asked`.
    """

    field: str
    name: str
    kind: Kind[Any]
    label: str = ""
    table: str = ""
    usual: object = None
    else_as: str = ""
    else_where: Callable[[Table], bool] = _anywhere
    blank: object = None
    asked: bool = False

    @property
    def said_blank(self) -> object:
        """What a form says by leaving it blank, where that is something."""
        return self.kind.blank if self.blank is None else self.blank


class Fields(Generic[V]):
    """Makes the keys of one value, each from the field it reads, so that types are checked."""

    def __init__(self, value: type[V], table: str = "") -> None:
        self._value = value
        self._table = table

    def __call__(
        self,
        of: Callable[[V], T | None],
        kind: Kind[T],
        label: str = "",
        *,
        name: str = "",
        usual: T | None = None,
        else_as: Callable[[V], T] | None = None,
        else_where: Callable[[Table], bool] = _anywhere,
        blank: T | None = None,
        asked: bool = False,
    ) -> Key:
        """Return the key of the field that `of` reads; its name, unless another is given."""
        field = _field_read(of)
        return Key(
            field=field,
            name=name or field,
            kind=kind,
            label=label,
            table=self._table,
            usual=usual,
            else_as=_field_read(else_as) if else_as else "",
            else_where=else_where,
            blank=blank,
            asked=asked,
        )

    def inline(self, of: Callable[[V], T | None], kind: Inlined[T]) -> Key:
        """Return the key of a value whose own keys stand among this one's."""
        return Key(field=_field_read(of), name="", kind=kind, table=self._table)


class _FieldName:
    """Stands in for a value, to tell which field of it is read."""

    def __getattr__(self, name: str) -> str:
        return name


def _field_read(of: Callable[[Any], Any]) -> str:
    return str(of(_FieldName()))


class Inlined(Kind[V]):
    """A kind whose keys can stand among those of the value that holds it."""

    @abstractmethod
    def all_keys(self) -> Iterator[Key]:
        """Yield every key that stands in documents, those of inlined values among them."""

    @abstractmethod
    def read_from(self, table: Table) -> V:
        """Return the value whose keys stand in a table, perhaps among others."""

    @abstractmethod
    def write(self, value: V, notation: Notation) -> dict[str, object]:
        """Return the keys of a value."""


class Shape(Inlined[V]):
    """The keys of one value, in the order that documents list them."""

    def __init__(self, value: type[V], *keys: Key) -> None:
        self.value = value
        self.keys = keys
        described: Any = value
        self._items = {item.name: item for item in fields(described)}

    def all_keys(self) -> Iterator[Key]:
        """Yield every key that stands in documents, those of inlined values among them."""
        for key in self.keys:
            if key.name:
                yield key
            else:
                inner = self._inlined(key).all_keys()
                yield from (replace(each, table=key.table) for each in inner)

    def read(self, spot: Spot, **given: object) -> V:
        """Return the value of a table; errors are noted, keys that nobody asked for too.

        `given` are fields that come from elsewhere: what is wrong with them is wrong of the table,
        but in a form, which has a field for each.
        """
        table = Table(spot)
        value = self.read_from(table, **given)
        table.done()
        return value

    def read_from(self, table: Table, **given: object) -> V:
        """Return the value whose keys stand in a table, perhaps among others."""
        tables = {"": table}
        values = dict(given)
        for key in self.keys:
            if key.table not in tables:
                tables[key.table] = table.table(key.table)
            self._read_key(key, tables[key.table], values)
        for name, inner in tables.items():
            if name:
                inner.done()
        return table.spot.build(self.value, values, given=() if table.is_typed else given)

    def _read_key(self, key: Key, table: Table, values: dict[str, object]) -> None:
        if not key.name:
            self._read_inlined(key, table, values)
        elif table.has(key.name) and (self._is_required(key) or not table.is_blank(key.name)):
            values[key.field] = table.take(key.name, key.kind)
        elif key.else_as and key.else_where(table):
            values[key.field] = values[key.else_as]
        elif table.is_typed and key.said_blank is not None:
            values[key.field] = key.said_blank
        elif self._is_required(key) or (table.is_typed and key.asked):
            values[key.field] = table.take(key.name, key.kind)

    def _read_inlined(self, key: Key, table: Table, values: dict[str, object]) -> None:
        """Read a value among others; one that may be left out is there if any key of it is."""
        inner = self._inlined(key)
        there = self._is_required(key) or [
            each.name for each in inner.all_keys() if table.has(each.name)
        ]
        if there:
            values[key.field] = inner.read_from(table)

    def _is_required(self, key: Key) -> bool:
        item = self._items[key.field]
        return item.default is MISSING and item.default_factory is MISSING

    def write(self, value: V, notation: Notation) -> dict[str, object]:
        """Return the table of a value; what has its default is left out of a file."""
        tables: dict[str, dict[str, object]] = {"": {}}
        for key in self.keys:
            given = getattr(value, key.field)
            if given is None or (notation.medium is Medium.FILE and self._is_default(key, given)):
                continue
            place = tables.setdefault(key.table, {})
            if not key.name:
                place |= self._inlined(key).write(given, notation)
            elif notation.medium is not Medium.TYPED or given != key.usual:
                place[key.name] = key.kind.write(given, notation)
        own = tables.pop("")
        return {name: inner for name, inner in tables.items() if inner} | own

    def _inlined(self, key: Key) -> Inlined[Any]:
        assert isinstance(key.kind, Inlined), "a kind with keys is inlined"  # noqa: S101
        return key.kind

    def _is_default(self, key: Key, given: object) -> bool:
        return not self._is_required(key) and given == default_of(self._items[key.field])
