"""The head of a sheet: its title, however long, and whether all is well."""

from __future__ import annotations

from textwrap import wrap

from exports.sheets.cells import Look, clean_text, words
from exports.sheets.checks import state_line
from exports.sheets.grid import Grid

TITLE_CHARACTER = 3.0
"""How many digits of the sheet's print a wide letter of a title takes."""


def heading(grid: Grid, title: str) -> int:
    """Write the title and how the checks stand; return the row of the last of these lines."""
    for line in wrap(clean_text(title), int(grid.width / TITLE_CHARACTER)) or [""]:
        grid.line(words(line, Look.TITLE))
    state_line(grid)
    return grid.next_row - 1
