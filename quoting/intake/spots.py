"""One spot of a file: what stands there, where it is, and the notes of what is wrong."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable
from dataclasses import dataclass, fields, replace
from datetime import date, time
from decimal import Decimal
from itertools import islice
from typing import Any, TypeVar

from quoting.core.errors import MORE, Fact, Mistake, Refused, Tally
from quoting.core.stitches import Stitch, Vocabulary, stitch_name
from quoting.notation.marks import shown

T = TypeVar("T")

EMPTY_KEY = '""'
"""How a file writes a key that is no word at all."""
MOST_LIKENED = 200
"""Names that a misspelt one is likened to; where there are more, the others are passed over."""

SHOWN_INTEGER = 10**40
"""Integers beyond this are not written out: the language itself refuses the longest."""


class NotRead(str):
    """A stand-in for text that could not be read, so that reading can go on to the end."""

    __slots__ = ()


NOT_READ: str = NotRead("(not read)")


class Notes:
    """Every mistake found in a file, without those that only follow from another.

    Where an entry cannot be read, a stand-in takes its place and the place is closed: whatever is
    found wrong there later, or found wrong because of the stand-in, is not the maker's mistake.
    """

    def __init__(self) -> None:
        self._tally = Tally()
        self._closed: set[str] = set()
        self._noted: set[str] = set()

    def close(self, place: str, code: str, **facts: Fact) -> None:
        """Note that an entry cannot be read."""
        self.keep([Mistake(place, code, facts)])
        self._closed.add(place)

    def keep(
        self, mistakes: Iterable[Mistake], prefix: str = "", terms: Vocabulary = Vocabulary.US
    ) -> None:
        """Note mistakes that do not follow from others, one a place; names in those `terms`."""
        for mistake in mistakes:
            found = mistake.under(prefix)
            if found.code == MORE or not self._is_passed_over(found):
                self._noted.add(found.place)
                self._tally.add(found if self._tally.is_full else _suggest(found, terms))

    def count(self, more: int) -> None:
        """Count mistakes that are not told one by one."""
        self._tally.counted += more

    def done(self) -> None:
        """Raise one refusal if anything was noted."""
        self._tally.done()

    def _is_passed_over(self, found: Mistake) -> bool:
        return found.place in self._noted or self._is_closed(found.place) or _follows(found)

    def _is_closed(self, place: str) -> bool:
        if place in self._closed:
            return True
        ends = (at for at, char in enumerate(place) if char == ".")
        return bool(self._closed) and any(place[:end] in self._closed for end in ends)


def _follows(mistake: Mistake) -> bool:
    """Return whether a mistake rests on a stand-in."""
    for fact in mistake.facts.values():
        parts = fact if isinstance(fact, tuple) else (fact,)
        if any(isinstance(part, NotRead) for part in parts):
            return True
    return False


def _suggest(mistake: Mistake, terms: Vocabulary) -> Mistake:
    """Add to a mistake that knows the right names the nearest, and say stitches in `terms`."""
    facts = dict(mistake.facts)
    read, known = facts.get("read"), facts.get("known")
    if not isinstance(read, str) or not isinstance(known, tuple):
        return mistake
    names = [str(name) for name in known]
    if mistake.code == "unknown-stitch":
        names = [stitch_name(Stitch(n), terms) if n in set(Stitch) else n for n in names]
    facts |= {"known": tuple(names), "nearest": nearest(read, names)}
    return Mistake(mistake.place, mistake.code, facts)


def nearest(read: str, known: Iterable[str]) -> str | None:
    """Return the known name most like the one read, or None where none is like it."""
    by_lower = {name.lower(): name for name in islice(known, MOST_LIKENED)}
    close = difflib.get_close_matches(read[:80].lower(), by_lower, n=1)
    return by_lower[close[0]] if close else None


@dataclass(frozen=True, slots=True)
class Spot:
    """A value as the file has it, its place, and the vocabulary of its stitch names."""

    value: object
    place: str
    notes: Notes
    terms: Vocabulary = Vocabulary.US

    def at(self, part: str | int, value: object) -> Spot:
        """Return a spot inside this one: a key of a table, or an item counted from 1."""
        name = as_written(part) or EMPTY_KEY
        place = f"{self.place}.{name}" if self.place else name
        return replace(self, value=value, place=place)

    def close(self, stand_in: T, code: str, **facts: Fact) -> T:
        """Note what is wrong here and return the stand-in to go on with."""
        self.notes.close(self.place, code, **facts)
        return stand_in

    def wrong(self, stand_in: T, wanted: str) -> T:
        """Note that something else is wanted here (`text`, `whole-number`, `table` ...)."""
        return self.close(stand_in, "wrong-type", read=as_written(self.value), wanted=wanted)

    def attempt(self, stand_in: T, reader: Callable[[], T]) -> T:
        """Return what `reader` gives, or note its refusal here and return the stand-in."""
        try:
            return reader()
        except Refused as refused:
            mistake = refused.mistakes[0]
            return self.close(stand_in, mistake.code, **mistake.facts)

    def build(self, kind: type[T], **values: object) -> T:
        """Return a value of that kind; where it is refused, note why and return it unchecked.

        An unchecked value never leaves the reading, which ends in a refusal; it lets what is
        checked across values be checked all the same.
        """
        try:
            return kind(**values)
        except Refused as refused:
            self.notes.keep(refused.mistakes, self.place, self.terms)
            return _unchecked(kind, values)


def _unchecked(kind: type[T], values: dict[str, object]) -> T:
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
    """Return the beginning of a value about as the file has it."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, dict | list):
        return "{…}" if isinstance(value, dict) else "[…]"
    if isinstance(value, int) and abs(value) >= SHOWN_INTEGER:
        return "…"
    if isinstance(value, date | time):
        return value.isoformat()
    return shown(str(value) if isinstance(value, int | Decimal | str) else "")
