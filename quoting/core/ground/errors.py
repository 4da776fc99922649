"""What is wrong with a value, said as a place, a code and facts; never as a sentence."""

from __future__ import annotations

import math
from collections.abc import Callable, Hashable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from datetime import date
from decimal import Decimal
from types import MappingProxyType
from typing import cast

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.place import NOWHERE, Document, Place, placed

Fact = str | int | float | Decimal | date | tuple[str, ...] | tuple[int, ...] | None
Facts = Mapping[str, Fact]

MOST_TOLD = 200
"""Mistakes of one value, file or form that are told; of more, only how many there are."""

MORE = MistakeCode.MORE_MISTAKES
"""The code of what stands for the mistakes that are only counted."""

JOINERS = "\u200c\u200d"
"""Marks inside words of several scripts, and inside emoji, that show nothing themselves."""


SPACES_OF_PRINT = "\u00a0\u202f"
"""Spaces at which no line breaks: French has one before a colon, and so has what is pasted."""


@dataclass(frozen=True, slots=True)
class Mistake:
    """One thing wrong at one place (`blanket.sections.2.stripes.1.rows`, counted from 1)."""

    place: Place
    code: MistakeCode
    facts: Facts = field(default_factory=lambda: MappingProxyType({}))

    @property
    def identity(self) -> Hashable:
        """What tells it from every other mistake."""
        return self.place, self.code, *self.facts.items()

    @property
    def path(self) -> str:
        """The place as messages name it."""
        return str(self.place)

    def within(self, document: Document) -> Mistake:
        """Return the same mistake as one of that document."""
        return Mistake(replace(self.place, document=document), self.code, self.facts)

    def under(self, outer: Place | str) -> Mistake:
        """Return the same mistake, its place seen from further out.

        What only counts mistakes has no place.
        """
        if self.code == MORE:
            return self
        return Mistake(placed(outer) / self.place, self.code, self.facts)


class Refused(Exception):  # noqa: N818 - it is the answer, not an accident
    """A value that cannot be taken, with the mistakes found in it."""

    def __init__(self, *mistakes: Mistake) -> None:
        super().__init__("; ".join(f"{m.place}: {m.code}" for m in mistakes))
        self.mistakes = mistakes


def refuse(place: Place | str, code: MistakeCode, **facts: Fact) -> Refused:
    """Return a refusal of one mistake, to be raised by the caller."""
    return Refused(Mistake(placed(place), code, facts))


class Tally:
    """Mistakes in the order they were found: the first of them are kept, any more counted."""

    def __init__(self) -> None:
        self.kept: list[Mistake] = []
        self.counted = 0

    @property
    def is_full(self) -> bool:
        """Whether no more mistakes are kept."""
        return len(self.kept) >= MOST_TOLD

    @property
    def mistakes(self) -> tuple[Mistake, ...]:
        """What is told: the mistakes kept, and how many more there are."""
        more = (
            (Mistake(NOWHERE, MistakeCode.MORE_MISTAKES, {"read": self.counted}),)
            if self.counted
            else ()
        )
        return (*self.kept, *more)

    def add(self, mistake: Mistake) -> None:
        """Keep a mistake, or count it; one that stands for more is counted as so many."""
        if mistake.code == MORE:
            self.counted += cast("int", mistake.facts["read"])
        elif self.is_full:
            self.counted += 1
        else:
            self.kept.append(mistake)

    def done(self) -> None:
        """Raise one refusal if anything was found."""
        if self.kept:
            raise Refused(*self.mistakes)


class Checks:
    """Collects the mistakes of one value, each once, so that all are told together."""

    def __init__(self) -> None:
        self._tally = Tally()
        self._seen: set[Hashable] = set()

    @property
    def mistakes(self) -> tuple[Mistake, ...]:
        """What was found so far."""
        return self._tally.mistakes

    def add(self, place: Place | str, code: MistakeCode, **facts: Fact) -> None:
        """Note one mistake."""
        self._note(Mistake(placed(place), code, facts))

    def _note(self, mistake: Mistake) -> None:
        full = self._tally.is_full
        identity = (mistake.place, mistake.code) if full else mistake.identity
        if mistake.code == MORE or identity not in self._seen:
            self._seen.add(identity)
            self._tally.add(mistake)

    @contextmanager
    def under(self, outer: Place | str) -> Iterator[None]:
        """Catch a refusal raised inside and keep its mistakes, placed under `outer`."""
        try:
            yield
        except Refused as refused:
            for mistake in refused.mistakes:
                self._note(mistake.under(outer))

    def number(
        self,
        place: Place | str,
        value: float | Decimal | None,
        *,
        above: float | None = None,
        least: float | Decimal | None = None,
        most: float | Decimal | None = None,
    ) -> None:
        """Check that a number is finite and within its limits; None is taken as not given."""
        if value is None:
            return
        if not _is_finite(value):
            self.add(place, MistakeCode.NOT_FINITE)
        elif above is not None and value <= above:
            self.add(place, MistakeCode.NOT_ABOVE, read=value, limit=above)
        elif least is not None and value < least:
            self.add(place, MistakeCode.TOO_SMALL, read=value, limit=least)
        elif most is not None and value > most:
            self.add(place, MistakeCode.TOO_LARGE, read=value, limit=most)

    def text(self, place: Place | str, value: str, *, most: int, lines: bool = False) -> None:
        """Check that a text is short enough and that all of it shows, or joins what does."""
        self._text(place, value, most, SPACES_OF_PRINT + ("\n\t" if lines else ""))

    def name(self, place: Place | str, value: str) -> None:
        """Check a name that other places refer to: there, short and printable."""
        if not value.strip():
            self.add(place, MistakeCode.MISSING)
        self._text(place, value, 80, "")

    def _text(self, place: Place | str, value: str, most: int, allowed: str) -> None:
        if len(value) > most:
            self.add(place, MistakeCode.TOO_LONG, read=len(value), limit=most)
            return
        for position, char in enumerate(value, 1):
            if not (char.isprintable() or char in allowed or _joins(value, position - 1)):
                self.add(
                    place,
                    MistakeCode.CONTROL_CHARACTER,
                    read=f"U+{ord(char):04X}",
                    position=position,
                )
                return

    def unique(self, place: Callable[[int], Place], names: list[str]) -> None:
        """Check that no name is given twice; `place` makes the place of the n-th, from 1."""
        seen: set[str] = set()
        for number, name in enumerate(names, 1):
            if name in seen:
                self.add(place(number), MistakeCode.GIVEN_TWICE, read=name)
            seen.add(name)

    def done(self) -> None:
        """Raise one refusal if anything was found."""
        self._tally.done()


def _joins(text: str, index: int) -> bool:
    """Return whether a joiner stands there, between two characters that show."""
    beside = text[index - 1 : index], text[index + 1 : index + 2]
    return text[index] in JOINERS and all(side.strip() and side.isprintable() for side in beside)


def _is_finite(value: float | Decimal) -> bool:
    """Return whether a number can be reckoned with: no NaN, and not too long for a float."""
    try:
        return math.isfinite(value)
    except (OverflowError, ValueError):
        return False
