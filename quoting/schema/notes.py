"""The mistakes of one document, without those that only follow from another."""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import replace
from itertools import islice

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import MORE, Fact, Mistake, Tally
from quoting.core.ground.place import Document, Place
from quoting.core.workshop.stitches import Stitch, Vocabulary, stitch_name

MOST_LIKENED = 200
"""Names that a misspelt one is likened to; where there are more, the others are passed over."""

MOST_COMPARED = 80
"""Characters of a name that are held against the names there are."""


class NotRead(str):
    """A stand-in for a text that could not be read, so that reading can go on to the end."""

    __slots__ = ()


NOT_READ: str = NotRead("(not read)")


class Notes:
    """Collects mistakes, one a place, so that all are told together.

    Where something cannot be read, a stand-in takes its place and the place is closed: whatever is
    found wrong there later, or found wrong because of the stand-in, is not the maker's mistake.
    """

    def __init__(self, document: Document, terms: Vocabulary = Vocabulary.US) -> None:
        self.document = document
        self.terms = terms
        self._tally = Tally()
        self._closed: set[Place] = set()
        self._noted: set[Place] = set()

    def close(self, place: Place, code: MistakeCode, **facts: Fact) -> None:
        """Note that what stands at a place cannot be read."""
        self.keep([Mistake(place, code, facts)])
        self._closed.add(replace(place, document=self.document))

    def keep(self, mistakes: Iterable[Mistake], outer: Place | str = "") -> None:
        """Note mistakes that do not follow from others, their places inside `outer`."""
        for mistake in mistakes:
            placed = mistake.under(outer).within(self.document)
            if placed.code == MORE or not self._is_passed_over(placed):
                self._noted.add(placed.place)
                full = self._tally.is_full
                self._tally.add(placed if full else _suggest(placed, self.terms))

    def count(self, more: int) -> None:
        """Count mistakes that are not told one by one."""
        self._tally.counted += more

    def done(self) -> None:
        """Raise one refusal if anything was noted."""
        self._tally.done()

    def _is_passed_over(self, mistake: Mistake) -> bool:
        place = mistake.place
        return (
            place in self._noted
            or self._is_closed(place)
            or self._rests_on_closed(mistake)
            or _follows(mistake)
        )

    def _rests_on_closed(self, mistake: Mistake) -> bool:
        """Return whether a mistake is one only beside a choice that could not be read."""
        choice = mistake.facts.get("choice")
        return isinstance(choice, str) and self._is_closed(mistake.place.outer / choice)

    def _is_closed(self, place: Place) -> bool:
        while place.parts:
            if place in self._closed:
                return True
            place = place.outer
        return place in self._closed


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
    if mistake.code == MistakeCode.UNKNOWN_STITCH:
        names = [stitch_name(Stitch(n), terms) if n in set(Stitch) else n for n in names]
    facts |= {"known": tuple(names), "nearest": nearest(read, names)}
    return Mistake(mistake.place, mistake.code, facts)


def nearest(read: str, known: Iterable[str]) -> str | None:
    """Return the known name most like the one read, or None where none is like it."""
    by_lower = {name.lower(): name for name in islice(known, MOST_LIKENED)}
    close = difflib.get_close_matches(read[:MOST_COMPARED].lower(), by_lower, n=1)
    return by_lower[close[0]] if close else None
