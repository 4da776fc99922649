"""The whole workbook of a comparison: its sheets in order, filled, set up for print, and saved."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime
from functools import partial

from openpyxl import Workbook

from exports.comparison_workbook.comparison_checks import comparison_checks
from exports.comparison_workbook.costs_table import TITLE as WORKING
from exports.comparison_workbook.hours_sheet import FLAGS as HOURS_FLAGS
from exports.comparison_workbook.hours_sheet import TITLE as HOURS
from exports.comparison_workbook.hours_sheet import WIDTHS as HOURS_WIDTHS
from exports.comparison_workbook.hours_sheet import write_hours
from exports.comparison_workbook.inputs_table import inputs_table
from exports.comparison_workbook.notes import write_comparison_notes
from exports.comparison_workbook.size_rows import rows_of
from exports.comparison_workbook.sizes_sheet import FLAGS as SIZES_FLAGS
from exports.comparison_workbook.sizes_sheet import TITLE, write_answers, write_counts
from exports.comparison_workbook.sizes_sheet import WIDTHS as SIZES_WIDTHS
from exports.comparison_workbook.terms_sheet import FLAGS as TERMS_FLAGS
from exports.comparison_workbook.terms_sheet import TITLE as TERMS
from exports.comparison_workbook.terms_sheet import write_terms
from exports.comparison_workbook.working_sheet import WIDTHS as WORKING_WIDTHS
from exports.comparison_workbook.working_sheet import write_working
from exports.comparison_workbook.yarn_sheet import FLAGS as YARN_FLAGS
from exports.comparison_workbook.yarn_sheet import TITLE as YARN
from exports.comparison_workbook.yarn_sheet import WIDTHS as YARN_WIDTHS
from exports.comparison_workbook.yarn_sheet import write_yarn
from exports.costing_workbook.costing.costing_sheet import WIDTHS as TERMS_WIDTHS
from exports.costing_workbook.notes_sheet import WIDTHS as NOTES_WIDTHS
from exports.sheets.cells import Look, words
from exports.sheets.checks import TITLE as CHECKS
from exports.sheets.checks import WIDTHS as CHECKS_WIDTHS
from exports.sheets.checks import write_checks
from exports.sheets.grid import LETTERS, Grid
from exports.sheets.number_formats import Shapes
from exports.sheets.paper import set_up
from exports.sheets.saving import saved_bytes
from quoting.core.quote.quote import Quote
from quoting.core.weighing.comparison import Comparison
from quoting.wording import FILE_SPEECH, speech_of, verdict

TITLE_ROW = 1
WIDE = (TITLE, YARN, HOURS, WORKING)
GAP_WIDTH, FLAGS_WIDTH = 3, 60
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
    notes = Grid(book, "Notes", NOTES_WIDTHS, worded=speech.worded)
    write_comparison_notes(notes, comparison, speech)
    return _finished(book, [*grids, notes], quote)


def _sheets(book: Workbook, comparison: Comparison, shapes: Shapes) -> list[Grid]:
    """Write the sheets of the sizes, their terms, yarn and hours, the working and the checks."""
    rows = rows_of(comparison)
    sheet = partial(Grid, book, worded=shapes.speech.worded)
    sizes = sheet(TITLE, _widths(SIZES_WIDTHS, SIZES_FLAGS), flags=SIZES_FLAGS)
    terms = sheet(TERMS, _widths(TERMS_WIDTHS, TERMS_FLAGS), flags=TERMS_FLAGS)
    balls = sheet(YARN, _widths(YARN_WIDTHS, YARN_FLAGS), flags=YARN_FLAGS)
    times = sheet(HOURS, _widths(HOURS_WIDTHS, HOURS_FLAGS), flags=HOURS_FLAGS)
    working = sheet(WORKING, WORKING_WIDTHS)
    checks = sheet(CHECKS, CHECKS_WIDTHS)
    counted = write_counts(sizes, rows, shapes)
    yarn = write_yarn(balls, rows, counted.names, shapes)
    hours = write_hours(times, rows, counted.names, shapes.speech)
    inputs = inputs_table(sizes, rows, hours, shapes)
    shared = write_terms(terms, rows.first, rows.targets, inputs[0], shapes)
    found = write_working(working, rows, inputs, yarn, counted.counts, shared, shapes)
    write_answers(sizes, rows, counted.head, inputs, found, shared, shapes)
    asked = [sizes, terms, balls, times]
    write_checks(checks, asked, comparison_checks(found, yarn, shared, shapes))
    return [*asked, working, checks]


def _widths(table: Sequence[float], flags: str) -> list[float]:
    """Return the widths of a sheet whose flags stand in a column right of its table."""
    gap = LETTERS.index(flags) - len(table)
    return [*table, *[GAP_WIDTH] * gap, FLAGS_WIDTH]


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
        set_up(grid, locale, title, heads_row=TITLE_ROW, wide=grid.title in WIDE)
    properties = book.properties
    properties.creator = "" if quote is None else quote.workshop.name
    properties.title = "Comparison of sizes"
    properties.created = datetime(day.year, day.month, day.day)  # noqa: DTZ001
    book.calculation.fullCalcOnLoad = True
    return saved_bytes(book, {grid.title: grid.cached for grid in grids}, day)
