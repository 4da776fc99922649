"""What is left for the maker."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.costing.costs_block import CostRefs
from exports.costing_workbook.costing.price_block import PriceRefs
from exports.costing_workbook.hours.parts_block import HourRefs
from exports.sale_formulas.sale_cells import earned_of, margin_of, profit_of
from exports.sheets.cells import Ref, reckoned, strong
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Grid
from exports.sheets.number_formats import SHARE, Shapes
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultRefs:
    """What is left."""

    profit: Ref
    margin: Ref
    earned: Ref


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """The sums that the result is reckoned from."""

    costs: CostRefs
    hours: HourRefs
    paid: PriceRefs
    fees: Ref


def result_block(grid: Grid, quote: Quote, sums: Sums, shapes: Shapes) -> ResultRefs:
    """Write profit, margin and what an hour earns; return their cells."""
    price, paid, digits, money = quote.price, sums.paid, shapes.digits, shapes.money
    left = profit_of(paid.total, paid.tax, sums.fees, sums.costs.total, digits)
    profit = figure(
        grid,
        "Profit",
        strong(left, price.profit, money),
        "after your pay and every cost",
        name="profit",
    )
    margin = reckoned(margin_of(profit, paid.total, paid.tax), price.margin, SHARE)
    note = "profit, of the net price"
    reached = figure(grid, "Margin reached", margin, note, name="margin_reached")
    pay = sums.costs.of(LineKind.MAKING, LineKind.OFFICE)
    hourly = earned_of(profit, pay, sums.hours.total, digits)
    earned = strong(hourly, price.earned_per_hour, money)
    note = "your pay and the profit, over all hours"
    hourly_pay = figure(grid, "An hour earns", earned, note, name="earned_per_hour")
    return ResultRefs(profit=profit, margin=reached, earned=hourly_pay)
