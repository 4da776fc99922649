"""What a cell says: a figure, a text, or a formula together with the figure it comes to."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from itertools import groupby

Value = Decimal | float | int | str


@dataclass(frozen=True, slots=True)
class Formula:
    """An expression in the notation of ECMA-376 without its `=`, and the value it comes to.

    Only addresses, numbers and texts of our own are in it, never a text from an order.
    """

    expression: str
    value: Value


class Look(StrEnum):
    """What kind of cell it is; each has its own look, and none by colour alone."""

    PLAIN = "Reckoned"
    INPUT = "Yours to change"
    INPUT_KEY = "Key of inputs"
    COUNTED = "Counted"
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


@dataclass(frozen=True, slots=True)
class Cell:
    """The content of one cell, its look and its number format."""

    content: Value | Formula
    look: Look = Look.LABEL
    shape: str = "General"


@dataclass(frozen=True, slots=True)
class Ref:
    """The address of a cell that was written, and its value."""

    sheet: str
    column: str
    row: int
    value: Value

    def __str__(self) -> str:
        return f"{self.sheet}!{self.column}{self.row}"


def words(text: str, look: Look = Look.LABEL) -> Cell:
    """Return a cell of text, whatever the text begins with."""
    return Cell(text, look)


def yours(value: Value, shape: str = "General") -> Cell:
    """Return an input: a figure that the maker may change."""
    return Cell(value, Look.INPUT, shape)


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
        str(run[0][1]) if len(run) == 1 else f"{run[0][1]}:{run[-1][1].column}{run[-1][1].row}"
        for run in runs
    )


def total_of(refs: Sequence[Ref]) -> str:
    """Return the sum of cells of one column; nothing, where there are none."""
    return f"SUM({span_of(refs)})" if refs else "0"


_CONTROLS = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff\ud800-\udfff]")


def clean_text(text: str) -> str:
    """Return a text without the characters that XML 1.0 does not allow."""
    if text.isprintable():
        return text
    return _CONTROLS.sub("", text).replace("\r\n", "\n").replace("\r", "\n")
