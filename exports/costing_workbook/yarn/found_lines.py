"""Lines of a list that are found by their words, wherever they stand: copied, moved or added."""

from __future__ import annotations

from dataclasses import dataclass

from exports.sheets.cells import Span, Value, count_where, total_where
from exports.sheets.grid import Fault
from exports.sheets.lines import Lines
from exports.sheets.sheet_rows import number_text

SAME_DIGITS = 9
"""Decimals to which a figure is the one that was quoted."""


@dataclass(frozen=True, slots=True)
class FoundLines:
    """The lines of a list, told apart by the words in the columns `keys`.

    Every method takes the addresses of the words that are looked for, as many as there are keys
    or, of lines that are added up, as there are in `keys` from the left.
    """

    lines: Lines
    keys: str

    def total(self, letter: str, *words: str) -> str:
        """Return the sum of a column over the lines of these words."""
        return total_where(self.lines.column(letter), *self._pairs(words))

    def count(self, *words: str) -> str:
        """Return how many lines have these words."""
        return count_where(*self._pairs(words))

    def one(self, letter: str, *words: str) -> str:
        """Return the figure of the line of these words; 0 where there is none.

        Of several that say the same it is their mean, so that a line that is copied does no harm.
        """
        count = self.count(*words)
        return f"IF({count}=0,0,{self.total(letter, *words)}/{count})"

    def where(self, letter: str, column: str, words: str, value: int) -> str:
        """Return the figure of such a line that has a number in another column."""
        chosen = f"{','.join(self._told((words,)))},--({self.lines.column(column)}={value})"
        count = f"SUMPRODUCT({chosen})"
        return f"IF({count}=0,0,SUMPRODUCT({chosen},{self.lines.column(letter)})/{count})"

    def less(self, *conditions: str, word: str) -> str:
        """Return how many lines of a word fulfil all conditions on their columns."""
        return f"SUMPRODUCT({','.join([*self._told((word,)), *(f'--({c})' for c in conditions)])})"

    def text(self, letter: str, *words: str) -> str:
        """Return the text of the line of these words; nothing where there is no such line."""
        column = self.lines.column(letter)
        head = f"ROW({column.sheet}!${letter}${self.lines.heads_row})"
        place = f"SUMPRODUCT({','.join(self._told(words))},ROW({column}))-{head}+1"
        return f'IF({self.count(*words)}=1,INDEX({column},{place}),"")'

    def twice(self, *words: str) -> Fault:
        """Return the fault of a line that says the same as another, where each is read alone."""
        return Fault(f"{self.count(*words)}>1", '"it stands here twice"')

    def unknown(self, where: str, *words: str) -> Fault:
        """Return the fault of a line elsewhere whose words no line of this list has."""
        return Fault(f"{self.count(*words)}=0", f'"not found under {where}"')

    def _pairs(self, words: tuple[str, ...]) -> list[tuple[Span, str]]:
        return [(self.lines.column(key), word) for key, word in zip(self.keys, words, strict=False)]

    def _told(self, words: tuple[str, ...]) -> list[str]:
        return [f"--EXACT({column},{word})" for column, word in self._pairs(words)]


def counted_for(at: str, value: Value, what: str, shown: str) -> Fault:
    """Return the fault of a changed input that something was counted for.

    `shown` is the figure as it was, as an expression.
    """
    changed = f"ROUND(N({at})-{number_text(value)},{SAME_DIGITS})<>0"
    return Fault(changed, f'"{what} counted for "&{shown}&": the program counts anew"')


def as_share(value: float) -> str:
    """Return a share in per cent, as an expression for a text."""
    return f'ROUND({100 * value!r},1)&"%"'


def as_length(value: float, unit: str) -> str:
    """Return a length as an expression for a text."""
    return f'ROUND({value!r},2)&" {unit}"'
