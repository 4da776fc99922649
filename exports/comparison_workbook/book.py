"""The whole workbook of a comparison: its sheets in order, filled, set up for print, and saved."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime

from openpyxl import Workbook

from exports.comparison_workbook.costs_table import TITLE as WORKING
from exports.comparison_workbook.notes import write_comparison_notes
from exports.comparison_workbook.sized import rows_of
from exports.comparison_workbook.sizes_sheet import TITLE, write_answers, write_lower
from exports.comparison_workbook.sizes_sheet import WIDTHS as SIZES_WIDTHS
from exports.comparison_workbook.terms_sheet import TITLE as TERMS
from exports.comparison_workbook.terms_sheet import write_terms
from exports.comparison_workbook.working_sheet import WIDTHS as WORKING_WIDTHS
from exports.comparison_workbook.working_sheet import write_working
from exports.costing_workbook.costing.costing_sheet import WIDTHS as TERMS_WIDTHS
from exports.costing_workbook.notes_sheet import WIDTHS as NOTES_WIDTHS
from exports.sheets.cells import Look, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from exports.sheets.paper import set_up
from exports.sheets.saving import saved_bytes
from quoting.core.quote.quote import Quote
from quoting.core.weighing.comparison import Comparison
from quoting.wording import FILE_SPEECH, speech_of, verdict

TITLE_ROW = 1
NO_DAY = date(1980, 1, 1)
"""The stamp of a workbook of no quote: the earliest that its container can hold."""


def write_comparison(comparison: Comparison) -> bytes:
    """Return the workbook of a comparison. Errors: as `speech_of`."""
    quote = comparison.sizes[0].quote if comparison.sizes else comparison.base
    speech = FILE_SPEECH if quote is None else speech_of(quote.workshop)
    book = Workbook()
    book.properties.language = speech.locale.replace("_", "-")
    book.remove(book.worksheets[0])
    grids = (
        _sheets(book, comparison, Shapes(speech))
        if comparison.sizes
        else [_empty_sheet(book, verdict(comparison, speech))]
    )
    notes = Grid(book, "Notes", NOTES_WIDTHS)
    write_comparison_notes(notes, comparison, speech)
    return _finished(book, [*grids, notes], quote)


def _sheets(book: Workbook, comparison: Comparison, shapes: Shapes) -> list[Grid]:
    """Write the sheets of the sizes, their terms and the working."""
    rows = rows_of(comparison)
    sizes = Grid(book, TITLE, SIZES_WIDTHS)
    terms = Grid(book, TERMS, TERMS_WIDTHS)
    working = Grid(book, WORKING, WORKING_WIDTHS)
    counts, inputs = write_lower(sizes, rows, shapes)
    shared = write_terms(terms, rows.first, rows.targets, inputs[0], shapes)
    found = write_working(working, rows, inputs, counts, shared, shapes)
    write_answers(sizes, rows, inputs, found, shared, shapes)
    return [sizes, terms, working]


def _empty_sheet(book: Workbook, said: str) -> Grid:
    grid = Grid(book, TITLE, NOTES_WIDTHS)
    grid.line(words("Sizes", Look.TITLE))
    grid.line(words(said, Look.PROSE))
    return grid


def _finished(book: Workbook, grids: Sequence[Grid], quote: Quote | None) -> bytes:
    """Set every sheet up for print, say whose the workbook is, and save it."""
    day = NO_DAY if quote is None else quote.day
    locale = FILE_SPEECH.locale if quote is None else quote.workshop.locale
    title = "" if quote is None else quote.order.title
    for grid in grids:
        wide = grid.title in (TITLE, WORKING)
        set_up(grid, locale, title, heads_row=TITLE_ROW, wide=wide)
    properties = book.properties
    properties.creator = "" if quote is None else quote.workshop.name
    properties.title = "Comparison of sizes"
    properties.created = datetime(day.year, day.month, day.day)  # noqa: DTZ001
    book.calculation.fullCalcOnLoad = True
    return saved_bytes(book, {grid.title: grid.cached for grid in grids}, day)
