"""A list of lines that may be added to: a copied line counts, and a deleted one leaves no hole."""

from __future__ import annotations

from collections.abc import Sequence

from exports.sheets.cells import Cell, Look, Span, words
from exports.sheets.grid import Grid

FURTHER = "copy a line to add one, above this line"


class Lines:
    """The lines between headings and the line that closes them. `count` is how many there are.

    Sums over a `column` of it read the headings and the closing line too, which hold no figure.
    """

    def __init__(self, grid: Grid, count: int, headings: Sequence[Cell | None]) -> None:
        self.grid = grid
        self.heads_row = grid.next_row
        self.closing_row = self.heads_row + count + 1
        grid.line(*headings)

    def column(self, letter: str) -> Span:
        """Return all cells of a column of the list."""
        return Span(self.grid.title, letter, self.heads_row, self.closing_row)

    def figures(self, letter: str) -> Span:
        """Return the cells of a column without its heading, for products that take no text."""
        return Span(self.grid.title, letter, self.heads_row + 1, self.closing_row)

    def close(self, indent: int = 0) -> None:
        """Write the line that closes the list, so many columns in."""
        assert self.grid.next_row == self.closing_row, "it has as many lines as was said"  # noqa: S101
        self.grid.line(*[None] * indent, words(FURTHER, Look.NOTE))
