"""What a cell says: a figure, a text, or a formula together with the figure it comes to."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum
from itertools import groupby

from exports.sheets.rules import Rule

Value = Decimal | float | int | str

DAY_NOUGHT = date(1899, 12, 30)
"""The day before the first, as spreadsheets count days (ECMA-376, part 1, 18.17.4.1)."""


@dataclass(frozen=True, slots=True)
class Formula:
    """An expression in the notation of ECMA-376 without its `=`, and the value it comes to.

    Only addresses, numbers and texts of our own are in it, never a text from an order.
    """

    expression: str
    value: Value


class Look(StrEnum):
    """What kind of cell it is; each has its own look, and none by colour alone."""

    PLAIN = "Worked out"
    INPUT = "Yours to change"
    WRITTEN = "Yours to change, in words"
    INPUT_KEY = "Key of inputs"
    COUNTED = "Counted"
    QUOTED = "As quoted"
    COUNTED_KEY = "Key of counts"
    TOTAL = "Sum"
    FOOT = "Sum label"
    STRONG = "Key figure"
    LABEL = "Label"
    ASIDE = "Label beside a figure"
    HEADING = "Column heading"
    ASIDE_HEADING = "Heading beside figures"
    FIGURE_HEADING = "Figures heading"
    BLOCK = "Block heading"
    TITLE = "Sheet title"
    NOTE = "Note"
    PROSE = "Prose"
    STATE = "How it stands"
    FLAG = "To look at"


OWN = frozenset({Look.HEADING, Look.ASIDE_HEADING, Look.FIGURE_HEADING, Look.BLOCK})
"""Looks of texts that are the program's own, with no word of an order or a workshop in them."""


@dataclass(frozen=True, slots=True)
class Cell:
    """The content of one cell, its look, its number format, and what may be typed into it."""

    content: Value | Formula
    look: Look = Look.LABEL
    shape: str = "General"
    rule: Rule | None = None


@dataclass(frozen=True, slots=True)
class Ref:
    """The address of a cell that was written, and its value.

    As text it is fixed: a line that is copied goes on reading what it read. Cells of its own line
    are told by `beside` and move with it.
    """

    sheet: str
    column: str
    row: int
    value: Value

    def __str__(self) -> str:
        return f"{self.sheet}!${self.column}${self.row}"


@dataclass(frozen=True, slots=True)
class Span:
    """Cells under one another, from what stands over the first line to what closes the last.

    So it grows with every line that is put between them.
    """

    sheet: str
    column: str
    first: int
    last: int

    def __str__(self) -> str:
        return f"{self.sheet}!${self.column}${self.first}:${self.column}${self.last}"


def words(text: str, look: Look = Look.LABEL) -> Cell:
    """Return a cell of text, whatever the text begins with."""
    return Cell(text, look)


def yours(value: Value, shape: str = "General", rule: Rule | None = None) -> Cell:
    """Return an input: a figure or a word that the maker may change, and what it takes."""
    return Cell(value, Look.INPUT, shape, rule)


def written(text: str, rule: Rule) -> Cell:
    """Return an input that holds words of the maker's own."""
    return Cell(text, Look.WRITTEN, rule=rule)


def quoted(value: Value, shape: str = "General") -> Cell:
    """Return a figure as it was quoted, which stays beside the one that follows."""
    return Cell(value, Look.QUOTED, shape)


def dated(day: date, shape: str) -> Cell:
    """Return a day as one that formulas can reckon with, and that stays."""
    return Cell((day - DAY_NOUGHT).days, Look.QUOTED, shape)


def counted(value: Value, shape: str = "General") -> Cell:
    """Return a figure that the program counted and that no formula can follow."""
    return Cell(value, Look.COUNTED, shape)


def reckoned(expression: str, value: Value, shape: str = "General") -> Cell:
    """Return a live formula."""
    return Cell(Formula(expression, value), Look.PLAIN, shape)


def summed(expression: str, value: Value, shape: str = "General") -> Cell:
    """Return a live formula that closes a block."""
    return Cell(Formula(expression, value), Look.TOTAL, shape)


def strong(expression: str, value: Value, shape: str = "General") -> Cell:
    """Return a live formula of a figure that is looked for first."""
    return Cell(Formula(expression, value), Look.STRONG, shape)


def heads(*texts: str, figures_from: int = 1) -> list[Cell]:
    """Return column headings; those of figures, from the given one on, stand to the right."""
    return [
        Cell(text, Look.FIGURE_HEADING if place >= figures_from else Look.HEADING)
        for place, text in enumerate(texts)
    ]


def rounded(expression: str, digits: int) -> str:
    """Return an expression rounded half up, as `round_half_up` does."""
    return f"ROUND({expression},{digits})"


def span_of(refs: Sequence[Ref]) -> str:
    """Return addresses as an argument list; cells under one another as a range."""
    runs = [list(run) for _, run in groupby(enumerate(refs), key=lambda at: at[1].row - at[0])]
    return ",".join(
        str(run[0][1]) if len(run) == 1 else f"{run[0][1]}:${run[-1][1].column}${run[-1][1].row}"
        for run in runs
    )


def total_of(refs: Sequence[Ref]) -> str:
    """Return the sum of cells of one column; nothing, where there are none."""
    return f"SUM({span_of(refs)})" if refs else "0"


def beside(letter: str, row: int) -> str:
    """Return a cell of the line in which the formula itself stands, and moves with it."""
    return f"{letter}{row}"


def total_where(amounts: Span, *pairs: tuple[Span, str]) -> str:
    """Return the sum of the amounts in lines whose words are all the given ones, to the letter.

    Texts of an order are compared, never searched for: `*` and `>` in them mean nothing.
    """
    return f"SUMPRODUCT({_told(pairs)},{amounts})" if pairs else f"SUM({amounts})"


def count_where(*pairs: tuple[Span, str]) -> str:
    """Return how many lines have all the given words, to the letter."""
    return f"SUMPRODUCT({_told(pairs)})"


def _told(pairs: Iterable[tuple[Span, str]]) -> str:
    return ",".join(f"--EXACT({words},{word})" for words, word in pairs)


_CONTROLS = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff\ud800-\udfff]")


def clean_text(text: str) -> str:
    """Return a text without the characters that XML 1.0 does not allow."""
    if text.isprintable():
        return text
    return _CONTROLS.sub("", text).replace("\r\n", "\n").replace("\r", "\n")
