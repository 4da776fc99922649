"""One table of a document: its keys handed out, and those that nobody asked for reported."""

from __future__ import annotations

from typing import Any

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import MOST_TOLD, Fact
from quoting.schema.kind import Kind
from quoting.schema.notation import Medium
from quoting.schema.spot import Spot, as_written


class Table:
    """Hands out the keys of one table and notes its mistakes."""

    def __init__(self, spot: Spot) -> None:
        self.spot = spot
        content = spot.value if isinstance(spot.value, dict) else spot.wrong({}, "table")
        self._content: dict[str, object] = content
        self._asked: dict[str, None] = {}
        self._refused: set[str] = set()

    @property
    def is_typed(self) -> bool:
        """Whether it is a form's."""
        return self.spot.notation.medium is Medium.TYPED

    def has(self, key: str) -> bool:
        """Return whether the table has the key; a field left blank is none."""
        self._asked[key] = None
        return key in self._content

    def holds(self, key: str) -> bool:
        """Return whether a file has the key there, without asking for it."""
        return key in self._content and not self.is_typed

    def glimpse(self, *keys: str) -> object:
        """Return what stands at a key, of tables inside one another, without asking for it."""
        found: object = self._content
        for key in keys:
            found = found.get(key) if isinstance(found, dict) else None
        return found

    def is_blank(self, key: str) -> bool:
        """Return whether a form has a table there in which no field is filled in."""
        return self.is_typed and self._content.get(key) == {}

    def take(self, key: str, kind: Kind[Any]) -> Any:
        """Return the value of a key that must be there."""
        there = self.has(key)
        spot = self.spot.at(key, self._content.get(key))
        if not there:
            spot.close(None, MistakeCode.MISSING)
        return kind.read(spot)

    def table(self, key: str) -> Table:
        """Return a table inside, which must be there; a form has it anyway."""
        there = self.has(key)
        content = self._content.get(key)
        if not there:
            content = {}
        spot = self.spot.at(key, content)
        if not there and not self.is_typed:
            spot.close(None, MistakeCode.MISSING)
        return Table(spot)

    def refuse(self, key: str, code: MistakeCode, **facts: Fact) -> None:
        """Note a key, if it is there, as one that has no place here for a reason of its own."""
        if key in self._content and not self.is_typed:
            self._refused.add(key)
            self.spot.at(key, None).close(None, code, **facts)

    def done(self) -> None:
        """Note every key that nobody asked for, with the nearest that somebody did.

        A form is sent with more than its fields, and its page knows no others.
        """
        if self.is_typed:
            return
        known = tuple(self._asked)
        unknown = [key for key in self._content if key not in {*self._asked, *self._refused}]
        for key in unknown[:MOST_TOLD]:
            spot = self.spot.at(key, None)
            spot.close(None, MistakeCode.UNKNOWN_KEY, read=as_written(key), known=known)
        self.spot.notes.count(len(unknown[MOST_TOLD:]))
