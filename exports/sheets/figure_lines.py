"""A line of one figure: its label, what is said of it, the figure, and what it was as quoted."""

from __future__ import annotations

from collections.abc import Sequence

from exports.sheets.cells import Cell, Formula, Ref, quoted, words
from exports.sheets.grid import Fault, Grid


def figure(
    grid: Grid,
    label: str,
    cell: Cell,
    note: str = "",
    *,
    name: str = "",
    faults: Sequence[Fault] = (),
) -> Ref:
    """Write one figure and return its cell, which may have a name."""
    value = cell.content.value if isinstance(cell.content, Formula) else cell.content
    was = quoted(value, cell.shape)
    ref = grid.line(words(label), words(note), None, None, None, cell, was, faults=faults)[-2]
    return grid.name(name, ref) if name else ref
