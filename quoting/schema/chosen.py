"""The kind that is one of several shapes, chosen by a word: a closed union."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, TypeVar

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.schema.kind import Leaf
from quoting.schema.notation import Medium, Notation
from quoting.schema.notes import NOT_READ, NotRead
from quoting.schema.shape import Inlined, Key, Shape
from quoting.schema.spot import Spot, as_written
from quoting.schema.table import Table
from quoting.schema.words import NAME

V = TypeVar("V")


class Word(Leaf[str]):
    """One of the words that shapes are chosen by."""

    stand_in = NOT_READ

    def __init__(self, shapes: Mapping[str, Shape[Any]]) -> None:
        self.shapes = shapes

    @property
    def known(self) -> tuple[str, ...]:
        """The words there are."""
        return tuple(self.shapes)

    def from_file(self, spot: Spot) -> str:
        """Return the word; one that is none is not read. Errors: `not-one-of`."""
        word = NAME.from_file(spot)
        if isinstance(word, NotRead):
            return word
        return spot.attempt(NOT_READ, lambda: self.parse(word, spot.notation))

    def parse(self, text: str, notation: Notation) -> str:
        """Return the word. Errors: `not-one-of` with the words there are."""
        del notation
        if text in self.shapes:
            return text
        raise refuse("", MistakeCode.NOT_ONE_OF, read=as_written(text), known=self.known)


class Chosen(Inlined[V]):
    """A value of one of several shapes; a key bears the word that chooses.

    The keys of the first, which is meant where no word is given, stand among those of the value
    that holds it; each other has a table named by its word. A key of a shape that was not chosen
    is one that nobody asked for. `shapes` are by their words.
    """

    def __init__(self, key: str, label: str, shapes: Mapping[str, Shape[Any]]) -> None:
        self.key = key
        self.label = label
        self.shapes = shapes
        self.word = Word(shapes)

    @property
    def first(self) -> str:
        """The word that is meant where none is given."""
        return next(iter(self.shapes))

    def word_of(self, value: V) -> str:
        """Return the word of a value's shape."""
        return next(word for word, shape in self.shapes.items() if type(value) is shape.value)

    def not_of(self, word: str) -> frozenset[str]:
        """Return the keys of all shapes that a word does not choose, where they are not its own."""
        keys = {key for other in self.shapes for key in self.keys_of(other)}
        return frozenset(keys.difference(self.keys_of(word)))

    def all_keys(self) -> Iterator[Key]:
        """Yield the key of the word, the keys of the first shape, and the tables of the others."""
        yield Key(field="", name=self.key, kind=self.word, label=self.label)
        first, *others = self.shapes.items()
        yield from first[1].all_keys()
        for word, shape in others:
            yield Key(field="", name=word, kind=shape)

    def read(self, spot: Spot) -> V:
        """Return the value of a table."""
        table = Table(spot)
        value = self.read_from(table)
        table.done()
        return value

    def read_from(self, table: Table) -> V:
        """Return the value of the shape that the table chooses.

        Where no word is given, or none that there is, the table that is there tells what is meant.
        """
        said = table.take(self.key, self.word) if table.has(self.key) else None
        if isinstance(said, NotRead):
            for key in self.all_keys():
                table.has(key.name)
            return self._read_as(self._meant(table), table)
        word = said or self._meant(table)
        if said is None and word != self.first:
            spot = table.spot.at(self.key, None)
            spot.close(None, MistakeCode.CHOICE_NOT_SAID, choice=self.key, word=word)
        value = self._read_as(word, table)
        self._refuse_others(table, word)
        return value

    def _read_as(self, word: str, table: Table) -> V:
        if word == self.first:
            value: V = self.shapes[word].read_from(table)
            return value
        inner = table.table(word)
        value = self.shapes[word].read_from(inner)
        inner.done()
        return value

    def _meant(self, table: Table) -> str:
        """Return the word whose table a file has; the first, if it has its keys or no table."""
        if not any(table.holds(name) for name in self.keys_of(self.first)):
            for word in self.shapes:
                if word != self.first and table.holds(word):
                    return word
        return self.first

    def _refuse_others(self, table: Table, chosen: str) -> None:
        """Note the keys of shapes that were not chosen, with the word that they go with."""
        facts = {"choice": self.key, "chosen": chosen}
        for word in self.shapes:
            for name in self.keys_of(word) if word != chosen else ():
                table.refuse(name, MistakeCode.KEY_NOT_CHOSEN, read=name, word=word, **facts)

    def keys_of(self, word: str) -> tuple[str, ...]:
        """Return the keys that stand beside that of the word with a shape: its own, or a table."""
        if word != self.first:
            return (word,)
        return tuple(key.name for key in self.shapes[word].all_keys())

    def write(self, value: V, notation: Notation) -> dict[str, object]:
        """Return the keys of a value, those of the first shape bare; a file leaves its word out."""
        word = self.word_of(value)
        written = self.shapes[word].write(value, notation)
        chosen: dict[str, object] = {self.key: word}
        if word != self.first:
            return chosen | {word: written}
        return written if notation.medium is Medium.FILE else chosen | written
