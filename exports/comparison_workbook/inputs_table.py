"""What is put in for each size: its yarn, its hours, its delivery, and a price for it."""

from __future__ import annotations

from dataclasses import dataclass

from exports.comparison_workbook.sized import Rows, Sized
from exports.sheets.cells import Ref, heads, words, yours
from exports.sheets.grid import Grid
from exports.sheets.number_formats import HOURS, Shapes
from quoting.core.price.cost_lines import LineKind


@dataclass(frozen=True, slots=True, kw_only=True)
class InputRefs:
    """The inputs of one size."""

    making: Ref
    office: Ref
    yarn: Ref
    paid: Ref
    delivery: Ref
    given: Ref


def inputs_table(grid: Grid, rows: Rows, shapes: Shapes) -> list[InputRefs]:
    """Write the inputs of every size and return their cells, in order."""
    grid.block("What you put in for each size")
    grid.line(
        *heads("size", "making, hours", "office, hours", "yarn", "delivery paid"),
        *heads("delivery charged", "given price of one", figures_from=0),
    )
    return [_size(grid, sized, shapes) for sized in rows.all]


def _size(grid: Grid, sized: Sized, shapes: Shapes) -> InputRefs:
    quote, price = sized.quote, sized.quote.price
    _, making, office, yarn, post, delivery, given = grid.line(
        words(sized.name),
        yours(quote.estimate.hours.making, HOURS),
        yours(quote.estimate.hours.office, HOURS),
        yours(price.amount(LineKind.YARN), shapes.money),
        yours(price.delivery_paid, shapes.money),
        yours(price.delivery, shapes.money),
        yours(price.target.given or price.listed_each, shapes.money),
    )
    return InputRefs(
        making=making, office=office, yarn=yarn, paid=post, delivery=delivery, given=given
    )
