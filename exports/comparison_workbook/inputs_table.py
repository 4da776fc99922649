"""What is put in for each size: its delivery, and a price for it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from exports.comparison_workbook.hours_sheet import HourRefs
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.sheets.cells import Look, Ref, heads, words, yours
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from exports.sheets.rules import AMOUNT

INPUT_HEADINGS = ("delivery paid", "delivery charged", "given price of one")
AT_TARGET = "as its target asks"


@dataclass(frozen=True, slots=True, kw_only=True)
class InputRefs:
    """What the sums of one size begin with: its hours, its delivery, a price given for it."""

    hours: HourRefs
    paid: Ref
    delivery: Ref
    given: Ref

    @property
    def all_hours(self) -> Ref:
        """The cell of all its hours."""
        return self.hours.total


def inputs_table(
    grid: Grid, rows: Rows, hours: Sequence[HourRefs], shapes: Shapes
) -> list[InputRefs]:
    """Write the inputs of every size and return their cells, in order."""
    grid.block("What you put in for each size")
    grid.line(*heads("size", *INPUT_HEADINGS))
    return [_size(grid, rows, *row, shapes) for row in zip(rows.all, hours, strict=True)]


def _size(grid: Grid, rows: Rows, sized: Sized, hours: HourRefs, shapes: Shapes) -> InputRefs:
    """Write what is put in for one size; the order's own is given no price beside the others."""
    price = sized.quote.price
    amounts = (
        price.delivery_paid,
        price.delivery,
        price.target.given or price.listed_each,
    )
    cells = [
        yours(amount, shapes.money, AMOUNT.called(heading))
        for heading, amount in zip(INPUT_HEADINGS, amounts, strict=True)
    ]
    if rows.is_own(sized) and not rows.keeps_its_price(sized):
        cells[-1] = words(AT_TARGET, Look.NOTE)
    _, post, delivery, given = grid.line(words(sized.name), *cells)
    return InputRefs(hours=hours, paid=post, delivery=delivery, given=given)
