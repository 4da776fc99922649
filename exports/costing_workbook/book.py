"""The whole workbook: its sheets in order, filled, set up for print, and saved."""

from __future__ import annotations

from datetime import datetime

from openpyxl import Workbook

from exports.costing_workbook.costing_sheet import WIDTHS as COSTING_WIDTHS
from exports.costing_workbook.costing_sheet import write_costing
from exports.costing_workbook.hours_sheet import WIDTHS as HOURS_WIDTHS
from exports.costing_workbook.hours_sheet import write_hours
from exports.costing_workbook.notes_sheet import WIDTHS as NOTES_WIDTHS
from exports.costing_workbook.notes_sheet import write_notes
from exports.costing_workbook.rows_sheet import WIDTHS as ROWS_WIDTHS
from exports.costing_workbook.rows_sheet import write_rows
from exports.costing_workbook.yarn_sheet import write_yarn, yarn_grid
from exports.sheets.checks import TITLE as CHECKS
from exports.sheets.checks import WIDTHS as CHECKS_WIDTHS
from exports.sheets.checks import write_checks
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from exports.sheets.paper import set_up
from exports.sheets.saving import saved_bytes
from quoting.core.quote.quote import Quote
from quoting.wording import speech_of

TITLE_ROW = 1


def write_book(quote: Quote) -> bytes:
    """Return the workbook of a quote. Errors: as `speech_of`."""
    speech = speech_of(quote.workshop)
    shapes = Shapes(speech)
    book = Workbook()
    book.remove(book.worksheets[0])
    costing = Grid(book, "Costing", COSTING_WIDTHS)
    yarn = yarn_grid(book)
    hours = Grid(book, "Hours", HOURS_WIDTHS)
    rows = Grid(book, "Rows", ROWS_WIDTHS)
    notes = Grid(book, "Notes", NOTES_WIDTHS)
    checks = Grid(book, CHECKS, CHECKS_WIDTHS)
    yarn_refs = write_yarn(yarn, quote, shapes)
    write_costing(costing, quote, yarn_refs, write_hours(hours, quote, speech), shapes)
    write_checks(checks, [yarn], yarn_refs.checks)
    heads_row = write_rows(rows, quote, shapes)
    write_notes(notes, quote, speech)
    for grid in (costing, yarn, hours, rows, notes, checks):
        set_up(
            grid.sheet,
            quote.workshop.locale,
            heads_row=heads_row if grid is rows else TITLE_ROW,
            wide=grid in (yarn, hours, rows),
        )
    _describe(book, quote)
    cached = {grid.title: grid.cached for grid in (costing, yarn, hours, rows, notes, checks)}
    return saved_bytes(book, cached, quote.day)


def _describe(book: Workbook, quote: Quote) -> None:
    """Say whose workbook it is, and have it reckoned anew wherever it is opened."""
    properties = book.properties
    properties.creator = quote.workshop.name
    properties.title = f"Costing of quote {quote.number}"
    properties.created = datetime(quote.day.year, quote.day.month, quote.day.day)  # noqa: DTZ001
    book.calculation.fullCalcOnLoad = True
