"""The sheet of yarn: the balls and their prices once, and what each size takes of them."""

from __future__ import annotations

from exports.comparison_workbook.ball_prices import ball_prices
from exports.comparison_workbook.size_rows import Rows
from exports.comparison_workbook.yarn_lines import AmountSpans, yarn_lines
from exports.sheets.cells import Span
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from exports.sheets.legend import legend
from exports.sheets.number_formats import Shapes

TITLE = "Yarn"
WIDTHS = (24, 18, 24, 26, 12, 11, 13, 13)
FLAGS = "J"


def write_yarn(grid: Grid, rows: Rows, names: Span, shapes: Shapes) -> AmountSpans:
    """Write the sheet; return what the yarn of each size is summed from.

    `names` are the cells that say which sizes there are.
    """
    heading(grid, "The yarn of every size")
    legend(grid)
    return yarn_lines(grid, rows, names, ball_prices(grid, rows, shapes), shapes)
