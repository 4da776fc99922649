"""The whole workbook of the accounts: its two sheets, filled, set up for print, and saved."""

from __future__ import annotations

from functools import partial

from openpyxl import Workbook

from exports.accounts_workbook import orders_sheet, payments_sheet
from exports.accounts_workbook.accounts import Accounts
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from exports.sheets.paper import set_up
from exports.sheets.saving import saved_bytes
from quoting.wording import speech_of

HEADS_ROW = 4


def write_accounts(accounts: Accounts) -> bytes:
    """Return the workbook of the accounts. Errors: as `speech_of`."""
    workshop = accounts.workshop
    speech, shapes = speech_of(workshop), Shapes(speech_of(workshop))
    book = Workbook()
    book.properties.language = speech.locale.replace("_", "-")
    book.remove(book.worksheets[0])
    sheet = partial(Grid, book, worded=speech.worded)
    orders = sheet(orders_sheet.TITLE, orders_sheet.WIDTHS)
    payments = sheet(payments_sheet.TITLE, payments_sheet.WIDTHS)
    spans = payments_sheet.write_payments(payments, accounts, shapes)
    orders_sheet.write_orders(orders, accounts, spans, shapes)
    grids = (orders, payments)
    for grid in grids:
        set_up(grid, workshop.locale, workshop.name, heads_row=HEADS_ROW, wide=grid is orders)
    book.properties.creator = workshop.name
    book.properties.title = "Accounts" if accounts.year is None else f"Accounts of {accounts.year}"
    book.calculation.fullCalcOnLoad = True
    return saved_bytes(book, {grid.title: grid.cached for grid in grids}, accounts.day)
