"""What a buyer or a maker writes stays text in every cell, and the file stays whole."""

from __future__ import annotations

from dataclasses import replace

import pytest
from openpyxl import Workbook

from exports.costing_workbook import workbook_bytes
from exports.sheets.cells import clean_text, words
from exports.sheets.grid import Grid
from quoting.core.order.order import Extra
from tests.examples import sample_order, sample_quote
from tests.workbook.recalculation import opened

# Source of the first characters: OWASP, CSV injection.
TRAPS = ["=1+1", "+1", "-1", "@x", "\tx", "\nx", "#N/A", '=HYPERLINK("x")', "TRUE", "1e5"]


@pytest.mark.parametrize("trap", TRAPS)
def test_text_that_looks_like_a_formula_stays_text(trap: str) -> None:
    order = replace(sample_order(), notes=trap, extras=(Extra(what=trap.strip()),))
    book = opened(workbook_bytes(sample_quote(order)))
    wanted = clean_text(trap)
    cells = [
        cell
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.value in (wanted, wanted.strip())
    ]
    assert len(cells) == 2, "the note and the extra"
    assert {cell.data_type for cell in cells} <= {"s", "inlineStr"}


@pytest.mark.parametrize("trap", ["=1+1", "+1", "-1", "@x", "#N/A"])
def test_such_text_stays_text_also_when_somebody_edits_its_cell(trap: str) -> None:
    book = opened(workbook_bytes(sample_quote(replace(sample_order(), notes=trap))))
    cell = next(cell for cell in book["Notes"]["A"] if cell.value == trap)
    assert cell.quotePrefix


def test_a_line_break_of_an_old_kind_is_a_plain_one_and_text() -> None:
    book = Workbook()
    Grid(book, "Page", (20,)).line(words("\r=1+1"))
    cell = book["Page"]["A1"]
    assert (cell.value, cell.data_type, cell.quotePrefix) == ("\n=1+1", "s", True)


def test_no_formula_holds_a_word_of_the_order() -> None:
    order = replace(sample_order(), title="=Title()", buyer="=Buyer()", notes="=Notes()")
    book = opened(workbook_bytes(sample_quote(order)))
    formulas = [
        cell.value
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    ]
    assert formulas
    assert not [f for f in formulas if any(word in f for word in ("Title(", "Buyer(", "Notes("))]


def test_characters_that_no_file_can_hold_are_left_out() -> None:
    assert clean_text("a\x00b\x0bc\ud800d\ufffe") == "abcd"
    assert clean_text("one\r\ntwo\rthree") == "one\ntwo\nthree"


def test_angle_brackets_and_ampersands_come_back_as_they_were() -> None:
    text = "5 < 6 & \"7\" > '8' </f>"
    book = opened(workbook_bytes(sample_quote(replace(sample_order(), notes=text))))
    assert text in [cell.value for cell in book["Notes"]["A"]]
