"""A kind of key: how its values are read and written, whatever the document.

A kind has no default and knows no key: it is the same wherever it stands.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import ClassVar, Generic, TypeVar

from quoting.schema.notation import Medium, Notation
from quoting.schema.spot import Spot

T = TypeVar("T")


class Kind(ABC, Generic[T]):
    """How one sort of value is read, always to a value, and written, in every notation."""

    blank: ClassVar[object] = None
    """What a field left blank says, where that is a value of this kind."""

    @abstractmethod
    def read(self, spot: Spot) -> T:
        """Return the value at a spot; what is wrong there is noted, and a stand-in returned."""

    @abstractmethod
    def write(self, value: T, notation: Notation) -> object:
        """Return what is read as the value again."""


class Leaf(Kind[T]):
    """A kind whose values are written as one text, number or truth."""

    mode: ClassVar[str] = "text"
    """What a browser is told of the text: `text`, `decimal`, `numeric` or `date`."""

    stand_in: T
    """What is gone on with where the value cannot be read."""

    def read(self, spot: Spot) -> T:
        """Return the value at a spot."""
        match spot.notation.medium:
            case Medium.FILE:
                return self.from_file(spot)
            case Medium.RECORD:
                return self.from_record(spot)
        return self.from_typed(spot)

    def write(self, value: T, notation: Notation) -> object:
        """Return the value as the notation has it."""
        match notation.medium:
            case Medium.FILE:
                return self.to_file(value, notation)
            case Medium.RECORD:
                return self.to_record(value)
        return self.show(value, notation)

    @abstractmethod
    def from_file(self, spot: Spot) -> T:
        """Return the value that a file has."""

    @abstractmethod
    def parse(self, text: str, notation: Notation) -> T:
        """Return the value of a typed text that is not blank. Errors: one refusal, no place."""

    def to_file(self, value: T, notation: Notation) -> object:
        """Return the value as a file has it."""
        del notation
        return value

    def from_record(self, spot: Spot) -> T:
        """Return the value that a record has."""
        return self.from_file(spot)

    def to_record(self, value: T) -> object:
        """Return the value as JSON holds it, without loss."""
        return value

    def from_typed(self, spot: Spot) -> T:
        """Return the value that was typed."""
        text = spot.value
        if not isinstance(text, str):
            return spot.wrong(self.stand_in, "text")
        return spot.attempt(self.stand_in, lambda: self.parse(text, spot.notation))

    def show(self, value: T, notation: Notation) -> str:
        """Return the text that is read as the value when it is typed."""
        del notation
        return str(value)
