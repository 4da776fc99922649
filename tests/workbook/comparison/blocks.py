"""The blocks of the sheet of sizes, by their titles."""

from __future__ import annotations

from openpyxl.workbook import Workbook

SHORT = "In short"
RULES = "What an hour would earn by the trade's rules of thumb"
INPUTS = "What you put in for each size"
HEADING_ROWS = 2


def row_under(book: Workbook, title: str) -> int:
    """Return the first row of figures of a block of the sheet of sizes."""
    rows: list[int] = [cell.row for cell in book["Sizes"]["A"] if cell.value == title]
    assert len(rows) == 1
    return rows[0] + HEADING_ROWS
