"""The sheet of the costing: what it costs, what is asked, how one follows from the other."""

from __future__ import annotations

from exports.costing_workbook.costs_block import costs_block
from exports.costing_workbook.hours_sheet import HourRefs
from exports.costing_workbook.price_block import PriceRefs, price_block
from exports.costing_workbook.result_block import ResultRefs, Sums, result_block
from exports.costing_workbook.shares_block import shares_block
from exports.costing_workbook.terms_block import terms_block
from exports.costing_workbook.yarn_sheet import YarnRefs
from exports.sale_formulas.fees_block import fees_block
from exports.sheets.cells import Look, Ref, counted, reckoned, words
from exports.sheets.grid import Grid
from exports.sheets.legend import legend
from exports.sheets.number_formats import COUNT, HOURS, Shapes
from quoting.core.quote.quote import Quote

TITLE = "Costing"
WIDTHS = (36, 36, 13, 10, 13, 16)
ANSWERS = 6


def write_costing(
    grid: Grid, quote: Quote, yarn: YarnRefs, hours: HourRefs, shapes: Shapes
) -> None:
    """Write the sheet; the answers on top of it come from below."""
    speech = shapes.speech
    grid.line(words(quote.order.title, Look.TITLE))
    buyer = f" for {quote.order.buyer}" if quote.order.buyer else ""
    days = f"{speech.day(quote.day)}, valid until {speech.day(quote.valid_until)}"
    grid.line(words(f"Quote {quote.number}{buyer}, {days}", Look.NOTE))
    legend(grid)
    top = grid.next_row
    grid.next_row += ANSWERS + 2
    gap = [None] * 4
    quantity = grid.line(words("Blankets"), *gap, counted(quote.order.quantity, COUNT))[-1]
    costs = costs_block(grid, quote, yarn, hours, quantity, shapes)
    terms = terms_block(grid, quote, shapes)
    grid.break_here()
    paid = price_block(grid, quote, terms, costs, quantity, shapes)
    fees = fees_block(grid, quote, terms, paid, shapes)
    sums = Sums(costs=costs, hours=hours, paid=paid, fees=fees)
    result = result_block(grid, quote, terms, sums, shapes)
    shares_block(grid, quote, sums, result, shapes)
    grid.next_row = top
    _answers(grid, paid, result, hours, shapes)


def _answers(
    grid: Grid, paid: PriceRefs, result: ResultRefs, hours: HourRefs, shapes: Shapes
) -> None:
    grid.block("In short")
    for label, ref, shape in (
        ("The buyer pays", paid.total, shapes.money),
        ("of it the price, without delivery", paid.price, shapes.money),
        ("Hours", hours.total, HOURS),
        ("An hour earns", result.earned, shapes.money),
        ("Profit, after your pay", result.profit, shapes.money),
        ("Deposit", result.deposit, shapes.money),
    ):
        _answer(grid, label, ref, shape)


def _answer(grid: Grid, label: str, ref: Ref, shape: str) -> None:
    gap = [None] * 4
    grid.line(words(label), *gap, reckoned(str(ref), ref.value, shape))
