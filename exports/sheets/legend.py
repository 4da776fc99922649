"""The key to how cells look, at the head of each sheet that calculates."""

from __future__ import annotations

from exports.sheets.cells import Cell, Look
from exports.sheets.grid import Grid

_SAMPLES = (
    Cell("yours to change", Look.INPUT_KEY),
    Cell("counted, it stays", Look.COUNTED_KEY),
    Cell("a formula, it follows", Look.NOTE),
)


def legend(grid: Grid, indent: int = 0) -> None:
    """Write what the looks of cells mean, in these looks, so many columns in."""
    for sample in _SAMPLES:
        grid.line(*[None] * indent, sample)
