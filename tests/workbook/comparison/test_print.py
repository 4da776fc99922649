"""How the workbook of a comparison prints: what is on a page, and what is not."""

from __future__ import annotations

from typing import Any

import pytest
from openpyxl.utils import range_boundaries
from openpyxl.worksheet.worksheet import Worksheet

from exports.comparison_workbook import comparison_bytes
from exports.sheets.cells import Look
from quoting.core.order.resizing import Size
from quoting.core.weighing.comparison import Comparison
from tests.workbook.comparisons import HAND, compared
from tests.workbook.constructions import WEIGHED, construction_quotes
from tests.workbook.inputs import is_input
from tests.workbook.recalculation import opened

CM_PER_POINT, ROW_POINTS = 2.54 / 72, 15.0
EMU_PER_CM = 360_000
"""An English Metric Unit is a 360,000th of a centimetre (ECMA-376, part 1, 20.1.2.1)."""

A4_CM = (29.7, 21.0)
"""ISO 216, on its side."""

CM_PER_PIXEL, DIGIT_PIXELS, PADDING_PIXELS = 2.54 / 96, 7, 5
"""Of a column's width in digits, Calibri 11 (ECMA-376, part 1, 18.3.1.13)."""


def sized(count: int) -> Comparison:
    return compared(*(Size(width_cm=40 + 3 * at, height_cm=60 + 3 * at) for at in range(count)))


def height_cm(sheet: Worksheet, first: int, last: int) -> float:
    rows = (sheet.row_dimensions[row].height or ROW_POINTS for row in range(first, last + 1))
    return sum(rows) * CM_PER_POINT


def page_cm(sheet: Worksheet) -> float:
    """Return how much of a sheet's height is on a page that is as wide as its table."""
    margins = sheet.page_margins
    _, _, last, _ = range_boundaries(sheet.print_area.split("!")[-1])
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"[: int(last or 0)]
    digits = [sheet.column_dimensions[letter].width for letter in letters]
    wide_cm = sum(each * DIGIT_PIXELS + PADDING_PIXELS for each in digits) * CM_PER_PIXEL
    scale = min(1.0, (A4_CM[0] - (margins.left + margins.right) * 2.54) / wide_cm)
    return (A4_CM[1] - (margins.top + margins.bottom) * 2.54) / scale


@pytest.mark.parametrize("count", [1, 2, 8, 9, 10, 11])
def test_each_chart_stands_whole_on_a_page(count: int) -> None:
    sheet = opened(comparison_bytes(sized(count)))["Sizes"]
    breaks = [0, *(each.id for each in sheet.row_breaks.brk)]
    for chart in sheet._charts:
        top = chart.anchor._from.row
        ends_cm = height_cm(sheet, 1, top) + chart.anchor.ext.height / EMU_PER_CM
        begins = max(each for each in breaks if each <= top)
        before_cm = height_cm(sheet, 1, begins)
        following = [each for each in breaks if each > begins]
        title_cm = height_cm(sheet, 1, 1) if begins else 0
        assert ends_cm - before_cm + title_cm < page_cm(sheet)
        assert all(ends_cm <= height_cm(sheet, 1, each) for each in following)


def test_what_is_wrong_with_a_line_is_not_printed(written: dict[str, bytes]) -> None:
    book = opened(written["plain"])
    for sheet in book:
        flags = {
            cell.column for row in sheet.iter_rows() for cell in row if cell.style == Look.FLAG
        }
        if flags:
            _, _, last, bottom = range_boundaries(sheet.print_area.split("!")[-1])
            assert min(flags) > int(last or 0)
            assert bottom == sheet.max_row


def test_how_many_blankets_are_compared_is_told_and_not_boxed(written: dict[str, bytes]) -> None:
    sheet = opened(written["three of each, tax added"])["Terms"]
    said: list[Any] = [
        cell for row in sheet.iter_rows() for cell in row if "3 blankets" in str(cell.value)
    ]
    assert [cell.value for cell in said] == ["3 blankets of each size"]
    assert not is_input(said[0])


def test_both_charts_have_titles(written: dict[str, bytes]) -> None:
    charts = opened(written["plain"])["Sizes"]._charts
    titles = ["".join(run.t for run in chart.title.tx.rich.p[0].r) for chart in charts]
    assert titles == ["What each price pays for", "What an hour earns"]


def test_the_work_on_the_ends_is_called_by_what_becomes_of_them() -> None:
    quote = construction_quotes()[WEIGHED]
    book = opened(comparison_bytes(compared(HAND, order=quote.order, workshop=quote.workshop)))
    said = [cell.value for row in book["Hours"].iter_rows() for cell in row]
    assert "Working over ends" in said
    assert "Weaving in ends" not in said
