"""The kinds that are words: texts, names, choices, stitches, days, yes or no."""

from __future__ import annotations

from datetime import date, datetime
from enum import StrEnum
from typing import ClassVar, TypeVar

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.workshop.stitches import (
    Stitch,
    Vocabulary,
    read_stitch,
    stitch_name,
    stitch_names,
)
from quoting.notation.marks import shown
from quoting.schema.kind import Leaf
from quoting.schema.notation import Notation
from quoting.schema.notes import NOT_READ, NotRead
from quoting.schema.spot import Spot, as_written

E = TypeVar("E", bound=StrEnum)

_ANSWERS = {"yes": True, "no": False}


class Text(Leaf[str]):
    """A text without the spaces around it."""

    stand_in = NOT_READ

    def from_file(self, spot: Spot) -> str:
        """Return the text."""
        return spot.value if isinstance(spot.value, str) else spot.wrong(NOT_READ, "text")

    def parse(self, text: str, notation: Notation) -> str:
        """Return the text, its line ends as one character each."""
        del notation
        return text.replace("\r\n", "\n").strip()


class Name(Text):
    """The name of something that stands elsewhere: a yarn, a colour, a currency.

    Whether there is such a thing is the core's to say.
    """

    def parse(self, text: str, notation: Notation) -> str:
        """Return the name as it was chosen."""
        del notation
        return text


class StitchName(Name):
    """A basic stitch, by its name in the file's vocabulary, or the maker's own pattern."""

    def from_file(self, spot: Spot) -> str:
        """Return the canonical name. Errors: `other-vocabulary`."""
        name = super().from_file(spot)
        if isinstance(name, NotRead):
            return name
        return spot.attempt(NOT_READ, lambda: str(read_stitch(name, spot.notation.terms) or name))

    def to_file(self, value: str, notation: Notation) -> str:
        """Return the name in the file's vocabulary."""
        return stitch_name(Stitch(value), notation.terms) if value in set(Stitch) else value

    def from_record(self, spot: Spot) -> str:
        """Return the canonical name, as records keep it."""
        return super().from_file(spot)


class BasicStitch(Leaf[Stitch]):
    """One of the stitches that a row can be worked in."""

    stand_in = Stitch.SC

    def from_file(self, spot: Spot) -> Stitch:
        """Return the stitch. Errors: `not-one-of`, `other-vocabulary`."""
        name = spot.value if isinstance(spot.value, str) else spot.wrong(NOT_READ, "text")
        if isinstance(name, NotRead):
            return self.stand_in
        return spot.attempt(self.stand_in, lambda: _basic_stitch(name, spot.notation.terms))

    def parse(self, text: str, notation: Notation) -> Stitch:
        """Return the stitch of a canonical name. Errors: `not-one-of`."""
        del notation
        return _basic_stitch(text, Vocabulary.US)

    def to_file(self, value: Stitch, notation: Notation) -> str:
        """Return the name in the file's vocabulary."""
        return stitch_name(value, notation.terms)


def _basic_stitch(name: str, terms: Vocabulary) -> Stitch:
    stitch = read_stitch(name, terms)
    if stitch is not None:
        return stitch
    raise refuse("", MistakeCode.NOT_ONE_OF, read=shown(name), known=tuple(stitch_names(terms)))


class PatternName(Text):
    """The name of a stitch pattern, which no vocabulary has for a stitch."""

    def from_file(self, spot: Spot) -> str:
        """Return the name. Errors: `basic-stitch-name`."""
        name = super().from_file(spot)
        return name if isinstance(name, NotRead) else spot.attempt(name, lambda: _own(name))

    def parse(self, text: str, notation: Notation) -> str:
        """Return the name. Errors: `basic-stitch-name`."""
        return _own(super().parse(text, notation))


def _own(name: str) -> str:
    if any(name in stitch_names(vocabulary) for vocabulary in Vocabulary):
        raise refuse("", MistakeCode.BASIC_STITCH_NAME, read=name)
    return name


class Choice(Leaf[E]):
    """One of a closed set of words."""

    def __init__(self, words: type[E]) -> None:
        self.words = words
        self.stand_in = next(iter(words))

    @property
    def known(self) -> tuple[str, ...]:
        """The words there are."""
        return tuple(word.value for word in self.words)

    def from_file(self, spot: Spot) -> E:
        """Return the word. Errors: `not-one-of`."""
        text = spot.value
        if not isinstance(text, str):
            return spot.wrong(self.stand_in, "text")
        return spot.attempt(self.stand_in, lambda: self.parse(text, spot.notation))

    def parse(self, text: str, notation: Notation) -> E:
        """Return the word. Errors: `not-one-of` with the words there are."""
        del notation
        if text in self.known:
            return self.words(text)
        raise refuse("", MistakeCode.NOT_ONE_OF, read=as_written(text), known=self.known)


class Answer(Leaf[bool]):
    """Yes or no, or perhaps not answered at all."""

    stand_in = False

    def from_file(self, spot: Spot) -> bool:
        """Return the truth."""
        return (
            spot.value if isinstance(spot.value, bool) else spot.wrong(self.stand_in, "yes-or-no")
        )

    def parse(self, text: str, notation: Notation) -> bool:
        """Return the truth of `yes` or `no`. Errors: `not-one-of`."""
        del notation
        if text not in _ANSWERS:
            raise refuse("", MistakeCode.NOT_ONE_OF, read=shown(text), known=tuple(_ANSWERS))
        return _ANSWERS[text]

    def show(self, value: bool, notation: Notation) -> str:  # noqa: FBT001 - it is what is shown
        """Return the word."""
        del notation
        return "yes" if value else "no"


class YesNo(Answer):
    """Yes or no. In a form it is a box: whatever is sent for it is yes, and nothing is no."""

    blank: ClassVar[object] = False

    def parse(self, text: str, notation: Notation) -> bool:
        """Return yes."""
        del text, notation
        return True

    def show(self, value: bool, notation: Notation) -> str:  # noqa: FBT001 - it is what is shown
        """Return what a ticked box sends, and nothing for no."""
        del notation
        return "yes" if value else ""


class Day(Leaf[date]):
    """A day, as ISO 8601 has it."""

    mode: ClassVar[str] = "date"
    stand_in = date.min

    def from_file(self, spot: Spot) -> date:
        """Return the day."""
        is_day = isinstance(spot.value, date) and not isinstance(spot.value, datetime)
        return spot.value if is_day else spot.wrong(date.min, "date")  # type: ignore[return-value]

    def parse(self, text: str, notation: Notation) -> date:
        """Return the day. Errors: `wrong-type`."""
        del notation
        try:
            return date.fromisoformat(text.strip())
        except ValueError:
            raise refuse("", MistakeCode.WRONG_TYPE, read=shown(text), wanted="date") from None

    def from_record(self, spot: Spot) -> date:
        """Return the day of a text."""
        return self.from_typed(spot)

    def to_record(self, value: date) -> str:
        """Return the day as text."""
        return value.isoformat()

    def show(self, value: date, notation: Notation) -> str:
        """Return the day as text."""
        del notation
        return value.isoformat()


TEXT = Text()
NAME = Name()
STITCH = StitchName()
BASIC_STITCH = BasicStitch()
PATTERN_NAME = PatternName()
ANSWER = Answer()
YES_NO = YesNo()
DAY = Day()
