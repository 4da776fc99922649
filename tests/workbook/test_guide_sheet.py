"""The sheet of the working guide has the words of its paper, and the yarns' colours beside them."""

from __future__ import annotations

from io import BytesIO

import pytest
from openpyxl import load_workbook

from exports.costing_workbook.guide_sheet import TITLE
from exports.sheets.cells import Look
from quoting.core.quote.quote import Quote
from quoting.wording.guide import guide_paper
from quoting.wording.paper import Listing, Words
from tests.workbook.orders import quotes


@pytest.mark.parametrize("name", ["plain", "inches", "mixed, used"])
def test_every_word_of_the_guide_is_on_its_sheet_in_order(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    assert name in quotes()
    sheet = load_workbook(BytesIO(written[name]))[TITLE]
    there = iter([str(cell) for row in sheet.iter_rows(values_only=True) for cell in row if cell])
    for block in guide_paper(all_quotes[name]).blocks:
        texts: list[str] = []
        if isinstance(block, Words):
            texts = list(block.texts)
        elif isinstance(block, Listing):
            texts = [text for row in block.rows for text in row if text]
        for text in texts:
            assert text in there, text


def test_a_step_in_one_colour_is_filled_with_it(
    all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    sheet = load_workbook(BytesIO(written["plain"]))[TITLE]
    steps = next(b for b in guide_paper(all_quotes["plain"]).blocks if getattr(b, "ticks", False))
    assert isinstance(steps, Listing)
    filled = {
        row[1].value: row[0].fill.fgColor.rgb for row in sheet.iter_rows(max_col=2) if row[1].value
    }
    for (text, _), code in zip(steps.rows, steps.codes, strict=True):
        assert filled[text].endswith(code.removeprefix("#").upper() if code else "000000")


@pytest.mark.parametrize("name", ["plain", "squares as you go", "from the centre"])
def test_a_heading_stands_over_what_it_heads(name: str, written: dict[str, bytes]) -> None:
    sheet = load_workbook(BytesIO(written[name]))[TITLE]
    headed = [
        (cell.alignment.horizontal, sheet.cell(cell.row + 1, cell.column).alignment.horizontal)
        for row in sheet.iter_rows()
        for cell in row
        if cell.style in (Look.HEADING, Look.FIGURE_HEADING) and cell.value
    ]
    assert headed
    assert all(above == below or {above, below} == {None, "left"} for above, below in headed)


def test_a_long_step_has_a_line_tall_enough(written: dict[str, bytes]) -> None:
    """A line that is left at one line's height is cut off where it wraps."""
    tall = 0
    for name in written:
        sheet = load_workbook(BytesIO(written[name]))[TITLE]
        for row in sheet.iter_rows():
            for cell in row:
                wide = sheet.column_dimensions[cell.column_letter].width
                if cell.alignment.wrap_text and len(str(cell.value or "")) > wide:
                    tall += 1
                    assert (sheet.row_dimensions[cell.row].height or 0) >= 30, cell.value
    assert tall
