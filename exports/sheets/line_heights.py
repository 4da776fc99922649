"""How tall a line must be for its title, its headings and its words, which wrap in their cells."""

from __future__ import annotations

from collections.abc import Sequence

from exports.sheets.cells import Cell, Formula, Look
from exports.sheets.styles import HEADINGS, WRAPPED

_WRAPPING = HEADINGS | WRAPPED
LINE_POINTS, TITLE_POINTS = 15.0, 26.0

WIDE = 1.4
"""How much wider than a digit a character of a bold heading may be, its margins with it."""

NARROW, BROAD = 1.0, 1.9
"""How much wider a letter of plain words may be, and one of the broad ones."""

BROAD_LETTERS = frozenset("mwMW@%&")
FIRST_IDEOGRAPH = "\u1100"


def line_height(cells: Sequence[Cell | None], widths: Sequence[float]) -> float:
    """Return the height of a line in points, of columns so many digits wide."""
    if any(cell is not None and cell.look is Look.TITLE for cell in cells):
        return TITLE_POINTS
    lines = [
        -(-_digits(cell) // width)
        for width, cell in zip(widths, cells, strict=False)
        if cell is not None and cell.look in _WRAPPING and not _is_short(cell, width)
    ]
    return max(lines, default=1) * LINE_POINTS


def _is_short(cell: Cell, width: float) -> bool:
    """Return whether a text is so short that it fits whatever its letters are."""
    content = cell.content
    return isinstance(content, str) and len(content) * BROAD <= width


def _digits(cell: Cell) -> float:
    """Return about how many digits of the column's width a text takes."""
    content = cell.content
    text = str(content.value if isinstance(content, Formula) else content)
    if cell.look in HEADINGS:
        return len(text) * WIDE
    broad = sum(letter in BROAD_LETTERS or letter >= FIRST_IDEOGRAPH for letter in text)
    return broad * BROAD + (len(text) - broad) * NARROW
