"""Where the pages of a costing end: not within a table that has a chart beside it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from openpyxl.utils import range_boundaries
from openpyxl.worksheet.worksheet import Worksheet

from exports.costing_workbook import workbook_bytes
from exports.sheets.cells import Look
from quoting.core.quote.quote import Quote
from tests.workbook.orders import quotes
from tests.workbook.recalculation import opened

CM_PER_POINT, ROW_POINTS, CM_PER_INCH = 2.54 / 72, 15.0, 2.54
EMU_PER_CM = 360_000
"""An English Metric Unit is a 360,000th of a centimetre (ECMA-376, part 1, 20.1.2.1)."""

CM_PER_PIXEL, DIGIT_PIXELS, PADDING_PIXELS = 2.54 / 96, 7, 5
"""Of a column's width in digits, Calibri 11 (ECMA-376, part 1, 18.3.1.13)."""

PAPER_CM = {"9": (21.0, 29.7), "1": (21.59, 27.94)}
"""By the numbers of ECMA-376, part 1, 18.3.1.63: ISO 216 A4, and letter, upright."""


def height_cm(sheet: Worksheet, first: int, last: int) -> float:
    """Return the height of rows, both with them."""
    rows = (sheet.row_dimensions[row].height or ROW_POINTS for row in range(first, last + 1))
    return sum(rows) * CM_PER_POINT


def page_cm(sheet: Worksheet) -> float:
    """Return how much of a sheet's height is on a page that is as wide as its table."""
    wide_cm, high_cm = PAPER_CM[str(sheet.page_setup.paperSize)]
    if sheet.page_setup.orientation == "landscape":
        wide_cm, high_cm = high_cm, wide_cm
    margins = sheet.page_margins
    _, _, last, _ = range_boundaries(sheet.print_area.split("!")[-1])
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"[: int(last or 0)]
    digits = [sheet.column_dimensions[letter].width for letter in letters]
    table_cm = sum(each * DIGIT_PIXELS + PADDING_PIXELS for each in digits) * CM_PER_PIXEL
    scale = min(1.0, (wide_cm - (margins.left + margins.right) * CM_PER_INCH) / table_cm)
    return (high_cm - (margins.top + margins.bottom) * CM_PER_INCH) / scale


def pages(sheet: Worksheet) -> Iterator[tuple[int, int]]:
    """Yield the first and the last row of every page, which ends where it must, or is full."""
    ends = {each.id for each in sheet.row_breaks.brk}
    first, used, full = 1, 0.0, page_cm(sheet)
    for row in range(1, sheet.max_row + 1):
        high = height_cm(sheet, row, row)
        if row - 1 in ends or used + high > full:
            yield first, row - 1
            first, used = row, height_cm(sheet, 1, 1)
        used += high
    yield first, sheet.max_row


@pytest.mark.parametrize("name", list(quotes()))
def test_where_the_price_goes_is_told_on_one_page_with_its_chart(
    name: str, written: dict[str, bytes]
) -> None:
    sheet = opened(written[name])["Costing"]
    (chart,) = sheet._charts
    top = chart.anchor._from.row + 1
    chart_cm, bottom = chart.anchor.ext.height / EMU_PER_CM, top
    while height_cm(sheet, top, bottom) < chart_cm:
        bottom += 1
    assert any(first < top and bottom <= last for first, last in pages(sheet))


def test_no_block_leaves_its_headings_behind_on_a_page(all_quotes: dict[str, Quote]) -> None:
    book = opened(workbook_bytes(all_quotes["squares, sewn in two yarns"]))
    for name in ("Costing", "Yarn", "Hours", "Actuals"):
        sheet = book[name]
        titles = [cell.row for row in sheet.iter_rows() for cell in row if cell.style == Look.BLOCK]
        ends = [last for _, last in pages(sheet)][:-1]
        assert not [(name, row) for row in titles for last in ends if row <= last < row + 3]


def test_a_page_is_not_ended_before_its_first_block(all_quotes: dict[str, Quote]) -> None:
    sheet = opened(workbook_bytes(all_quotes["plain"]))["Summary"]
    assert not sheet.row_breaks.brk
