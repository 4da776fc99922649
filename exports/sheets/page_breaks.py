"""Where pages of print end: before a block that they would cut, not within its first lines.

A table and the chart that stands in it then stay on one page, and no headings are left without
their lines.
"""

from __future__ import annotations

import math
from itertools import pairwise

from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.worksheet import Worksheet

from exports.sheets.grid import LETTERS, Grid
from exports.sheets.line_heights import LINE_POINTS
from quoting.wording.paper import Sheet

KEPT_ROWS = 12
"""So many rows of a block are not parted: the whole of a short one, the beginning of a long one."""

PAGE_INCHES = {Sheet.A4: (210 / 25.4, 297 / 25.4), Sheet.LETTER: (8.5, 11.0)}
"""Width and height of a page that stands upright. Source: ISO 216; ANSI/ASME Y14.1, size A."""

POINTS = 72
DIGIT_POINTS, PADDING_POINTS = 7 * 0.75, 5 * 0.75
"""Of a column's width in digits, Calibri 11 (ECMA-376, part 1, 18.3.1.13)."""

USUAL_DIGITS = 8.43
"""The width of a column that was given none (ECMA-376, part 1, 18.3.1.81)."""

SURE = 0.98
"""What of a page is relied on: programs round the heights of rows to what they can show."""


def keep_blocks(grid: Grid, paper: Sheet, heads_row: int) -> None:
    """Break the pages of a sheet that is printed one page wide; its margins are set by then.

    `heads_row` is repeated on top of every page.
    """
    sheet = grid.sheet
    breaks = {each.id for each in sheet.row_breaks.brk}
    page = _page_points(grid, paper)
    repeated = _points(sheet, heads_row, heads_row)
    first, used = 1, 0.0
    begins = sorted({1, *grid.begins, *(row + 1 for row in breaks), sheet.max_row + 1})
    for row, following in pairwise(begins):
        kept = _points(sheet, row, min(following, row + KEPT_ROWS) - 1)
        if row - 1 in breaks:
            first, used = row, repeated
        elif used + kept > page and row > first:
            breaks.add(row - 1)
            first, used = row, repeated
        used += _points(sheet, row, following - 1)
        while used > page:
            used -= page - repeated
    sheet.row_breaks.brk = [Break(id=row) for row in sorted(breaks)]


def _page_points(grid: Grid, paper: Sheet) -> float:
    """Return how much of a sheet's height is on a page, made smaller to be as wide as it."""
    sheet, (wide, high) = grid.sheet, PAGE_INCHES[paper]
    if sheet.page_setup.orientation == "landscape":
        wide, high = high, wide
    margins = sheet.page_margins
    free_points = (wide - margins.left - margins.right) * POINTS
    percent = min(100, math.floor(100 * free_points / _printed_points(grid)))
    return SURE * (high - margins.top - margins.bottom) * POINTS * 100 / percent


def _printed_points(grid: Grid) -> float:
    """Return how wide the columns are that are printed."""
    sheet = grid.sheet
    last = LETTERS.index(grid.flags) if grid.flags else sheet.max_column
    given = sheet.column_dimensions
    digits = [given[at].width if at in given else USUAL_DIGITS for at in LETTERS[:last]]
    return sum(digits) * DIGIT_POINTS + len(digits) * PADDING_POINTS


def _points(sheet: Worksheet, first: int, last: int) -> float:
    rows = range(first, last + 1)
    return sum(sheet.row_dimensions[row].height or LINE_POINTS for row in rows)
