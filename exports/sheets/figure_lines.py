"""A line of one figure: its label, what is said of it, and the figure at the right."""

from __future__ import annotations

from exports.sheets.cells import Cell, Ref, words
from exports.sheets.grid import Grid


def figure(grid: Grid, label: str, cell: Cell, note: str = "", *, name: str = "") -> Ref:
    """Write one figure and return its cell, which may have a name."""
    ref = grid.line(words(label), words(note), None, None, None, cell)[-1]
    return grid.name(name, ref) if name else ref
