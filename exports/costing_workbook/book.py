"""The whole workbook: its sheets in order, filled, set up for print, and saved."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from functools import partial

from openpyxl import Workbook

from exports.costing_workbook import guide_sheet, notes_sheet, rows_sheet, summary_sheet
from exports.costing_workbook.actuals import actuals_sheet
from exports.costing_workbook.actuals.known import NOTHING_KNOWN, Actuals
from exports.costing_workbook.costing import costing_sheet
from exports.costing_workbook.hours import hours_sheet
from exports.costing_workbook.yarn import yarn_sheet
from exports.sheets import checks
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from exports.sheets.paper import set_up
from exports.sheets.saving import saved_bytes
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, number_words, speech_of

TITLE_ROW = 1
UPRIGHT = frozenset({summary_sheet.TITLE, costing_sheet.TITLE, actuals_sheet.TITLE, "Notes"})
"""The sheets that are printed on upright paper."""


def write_book(quote: Quote, actuals: Actuals = NOTHING_KNOWN) -> bytes:
    """Return the workbook of a quote, with what is known of what it took. Errors: `speech_of`'s."""
    speech = speech_of(quote.workshop)
    book = Workbook()
    book.properties.language = speech.locale.replace("_", "-")
    book.remove(book.worksheets[0])
    sheet = partial(Grid, book, worded=speech.worded)
    summary = sheet(summary_sheet.TITLE, summary_sheet.WIDTHS)
    costing = sheet(costing_sheet.TITLE, costing_sheet.WIDTHS, flags=costing_sheet.FLAGS)
    yarn = yarn_sheet.yarn_grid(book, speech)
    hours = sheet(hours_sheet.TITLE, hours_sheet.WIDTHS, flags=hours_sheet.FLAGS)
    guide = sheet(guide_sheet.TITLE, guide_sheet.WIDTHS)
    rows = sheet("Rows", rows_sheet.WIDTHS)
    taken = sheet(actuals_sheet.TITLE, actuals_sheet.WIDTHS, flags=actuals_sheet.FLAGS)
    checked = sheet(checks.TITLE, checks.WIDTHS)
    notes = sheet("Notes", notes_sheet.WIDTHS)
    guide_sheet.write_guide(guide, quote)
    heads_row = rows_sheet.write_rows(rows, quote, Shapes(speech))
    _write_figures((summary, costing, yarn, hours, taken, checked), quote, speech, actuals)
    notes_sheet.write_notes(notes, quote, speech)
    grids = (summary, costing, yarn, hours, guide, rows, taken, checked, notes)
    for grid in grids:
        set_up(
            grid,
            quote.workshop.locale,
            f"Quote {number_words(quote.number)}",
            heads_row=heads_row if grid is rows else TITLE_ROW,
            wide=grid.title not in UPRIGHT,
        )
    _describe(book, quote)
    return saved_bytes(book, {grid.title: grid.cached for grid in grids}, quote.day)


def _write_figures(grids: Sequence[Grid], quote: Quote, speech: Speech, known: Actuals) -> None:
    """Write the sheets that calculate, each after those that it reads."""
    summary, costing, yarn, hours, actuals, checked = grids
    shapes = Shapes(speech)
    yarns = yarn_sheet.write_yarn(yarn, quote, shapes)
    worked = hours_sheet.write_hours(hours, quote, speech)
    costed = costing_sheet.write_costing(costing, quote, yarns, worked, shapes)
    summary_sheet.write_summary(summary, quote, costed.found, shapes)
    actuals_sheet.write_actuals(actuals, quote, yarns, costed.found, shapes, known)
    told = (*costed.checks, *yarns.checks, *worked.checks)
    checks.write_checks(checked, (costing, yarn, hours, actuals), told)


def _describe(book: Workbook, quote: Quote) -> None:
    """Say whose workbook it is, and have it reckoned anew wherever it is opened."""
    properties = book.properties
    properties.creator = quote.workshop.name
    properties.title = f"Costing of quote {number_words(quote.number)}"
    properties.created = datetime(quote.day.year, quote.day.month, quote.day.day)  # noqa: DTZ001
    book.calculation.fullCalcOnLoad = True
