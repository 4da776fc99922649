"""The sheet of the working: costs, prices, sales and rules of thumb, a row for each size."""

from __future__ import annotations

from dataclasses import dataclass

from exports.comparison_workbook.costs_table import CostRefs, costs_table
from exports.comparison_workbook.counts_table import CountRefs
from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.payments_table import payments_table
from exports.comparison_workbook.prices_table import prices_table
from exports.comparison_workbook.results_table import ResultRefs, Sums, results_table
from exports.comparison_workbook.rules_tables import rules_tables
from exports.comparison_workbook.shares_table import ShareRefs, shares_table
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.comparison_workbook.sold_table import Selling, SoldRefs, sold_table
from exports.comparison_workbook.terms_sheet import Shared
from exports.comparison_workbook.yarn_lines import AmountSpans
from exports.sheets.cells import Formula, Ref
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from exports.sheets.number_formats import Shapes
from quoting.core.weighing.comparison import Rule

WIDTHS = (24, *[15] * 12)


@dataclass(frozen=True, slots=True, kw_only=True)
class Answers:
    """What the first sheet shows of the working, of the sizes compared, in order.

    `costs` and `follows`, what a price follows, are of all rows.
    """

    sums: list[Sums]
    costs: list[CostRefs]
    results: list[ResultRefs]
    follows: list[Ref]
    shares: ShareRefs
    rules: dict[Rule, list[SoldRefs]]


def write_working(
    grid: Grid,
    rows: Rows,
    inputs: list[InputRefs],
    yarn: AmountSpans,
    counts: list[CountRefs],
    shared: Shared,
    shapes: Shapes,
) -> Answers:
    """Write the sheet and return what the first one shows of it."""
    heading(grid, "The working")
    costs = costs_table(grid, rows, inputs, yarn, shared, shapes)
    priced = payments_table(grid, rows, inputs, costs, shared, shapes)
    prices = prices_table(grid, rows, priced, shared, shapes)
    asked_for = zip(rows.all, inputs, costs, prices, strict=True)
    sales = [_selling(sized, own, cost, each) for sized, own, cost, each in asked_for]
    sold = sold_table(grid, "What the buyer pays, and what is left", sales, shared, shapes)
    sums = [
        Sums(sized, cost, count, sale)
        for sized, cost, count, sale in zip(rows.all, costs, counts, sold, strict=True)
    ]
    asked = sums[: rows.count]
    results = results_table(grid, rows, inputs, sums, shapes)
    shares = shares_table(grid, asked, shapes)
    rules = rules_tables(grid, rows, sums, sales, shared, shapes)
    return Answers(
        sums=asked,
        costs=costs,
        results=results,
        follows=[each.terms.target for each in priced],
        shares=shares,
        rules=rules,
    )


def _selling(sized: Sized, own: InputRefs, cost: CostRefs, each: Ref) -> Selling:
    """Return the sale of a size at the price that is asked for it."""
    price = sized.quote.price
    each_price = Formula(str(each), price.each)
    return Selling(sized=sized, own=own, cost=cost, each=each_price, sold=price.sold)
