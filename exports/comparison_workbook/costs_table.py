"""What each size costs, each line rounded once."""

from __future__ import annotations

from dataclasses import dataclass

from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.sized import Rows, Sized
from exports.comparison_workbook.terms_sheet import Shared
from exports.sheets.cells import Cell, Ref, heads, reckoned, rounded, strong, total_of, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from quoting.core.price.cost_lines import LineKind

TITLE = "Working"
KINDS = {
    LineKind.YARN: "yarn",
    LineKind.EXTRA: "extras",
    LineKind.PACKAGING: "packaging",
    LineKind.MAKING: "making",
    LineKind.OFFICE: "office",
    LineKind.OVERHEAD: "overhead",
    LineKind.DELIVERY: "delivery paid",
}


@dataclass(frozen=True, slots=True)
class CostRefs:
    """The costs of one size by kind, and their sum."""

    amounts: dict[LineKind, Ref]
    total: Ref


def costs_table(
    grid: Grid, rows: Rows, inputs: list[InputRefs], shared: Shared, shapes: Shapes
) -> list[CostRefs]:
    """Write the costs of every size and return their cells, in order."""
    grid.block("What each size costs you, all blankets of the order together")
    grid.line(*heads("size", *KINDS.values(), "all costs"))
    return [
        _size(grid, sized, own, shared, shapes) for sized, own in zip(rows.all, inputs, strict=True)
    ]


def _size(grid: Grid, sized: Sized, own: InputRefs, shared: Shared, shapes: Shapes) -> CostRefs:
    hour, price = shared.hour, sized.quote.price
    expressions = {
        LineKind.YARN: rounded(str(own.yarn), shapes.digits),
        LineKind.EXTRA: total_of(shared.extras),
        LineKind.PACKAGING: str(shared.packaging),
        LineKind.MAKING: rounded(f"{own.making}*{hour.making}", shapes.digits),
        LineKind.OFFICE: rounded(f"{own.office}*{hour.office}", shapes.digits),
        LineKind.OVERHEAD: rounded(f"({own.making}+{own.office})*{hour.overhead}", shapes.digits),
        LineKind.DELIVERY: rounded(str(own.paid), shapes.digits),
    }
    row = grid.next_row
    cells: list[Cell] = [
        reckoned(expression, price.amount(kind), shapes.money)
        for kind, expression in expressions.items()
    ]
    total = strong(f"SUM({TITLE}!B{row}:H{row})", price.cost, shapes.money)
    _, *amounts, cost = grid.line(words(sized.name), *cells, total)
    return CostRefs(dict(zip(expressions, amounts, strict=True)), cost)
