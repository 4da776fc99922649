"""The sheet of the costing: what it costs, what is asked, how one follows from the other."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.costing.costing_checks import costing_checks
from exports.costing_workbook.costing.costs_block import costs_block
from exports.costing_workbook.costing.fees_taken import fees_taken
from exports.costing_workbook.costing.found import Found
from exports.costing_workbook.costing.paid_block import paid_block
from exports.costing_workbook.costing.price_block import price_block
from exports.costing_workbook.costing.result_block import Sums, result_block
from exports.costing_workbook.costing.shares_block import shares_block
from exports.costing_workbook.costing.terms_block import QUOTED_HEADS, terms_block
from exports.costing_workbook.hours.parts_block import HourRefs
from exports.costing_workbook.yarn.yarn_sheet import YarnRefs
from exports.sheets.cells import Look, words
from exports.sheets.checks import Check
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from exports.sheets.legend import legend
from exports.sheets.number_formats import Shapes
from quoting.core.quote.quote import Quote

TITLE = "Costing"
WIDTHS = (34, 28, 12, 10, 13, 15, 15, 12, 44)
FLAGS = "I"


@dataclass(frozen=True, slots=True)
class Costing:
    """What the other sheets read of this one, and its checks."""

    found: Found
    checks: list[Check]


def write_costing(
    grid: Grid, quote: Quote, yarn: YarnRefs, hours: HourRefs, shapes: Shapes
) -> Costing:
    """Write the sheet and return what others read of it."""
    heading(grid, TITLE)
    said = shapes.speech.count(quote.order.quantity, "blanket")
    grid.line(words(f"Yarn and hours are counted for {said}", Look.NOTE))
    legend(grid)
    costs = costs_block(grid, quote, yarn, hours, shapes)
    terms = terms_block(grid, quote, shapes)
    grid.break_here()
    factors, paid = price_block(grid, quote, terms, costs, shapes)
    rest_due = quote.workshop.pricing.rest_due
    split = paid_block(grid, quote.price, terms, costs, paid.total, rest_due, shapes)
    grid.block("What is left for you")
    grid.line(*QUOTED_HEADS)
    fees = fees_taken(grid, quote, terms, paid, split.count, shapes)
    sums = Sums(costs=costs, hours=hours, paid=paid, fees=fees)
    result = result_block(grid, quote, sums, shapes)
    adds_up = shares_block(grid, quote, sums, result, shapes)
    found = Found(terms=terms, factors=factors, sums=sums, split=split, result=result)
    return Costing(found, [*costing_checks(found, shapes.digits), adds_up])
