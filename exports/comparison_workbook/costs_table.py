"""What each size costs, each line rounded once."""

from __future__ import annotations

from dataclasses import dataclass

from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.comparison_workbook.terms_sheet import Shared
from exports.comparison_workbook.yarn_lines import AmountSpans
from exports.sheets.cells import Cell, Ref, beside, heads, reckoned, rounded, strong, words
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
    grid: Grid,
    rows: Rows,
    inputs: list[InputRefs],
    yarn: AmountSpans,
    shared: Shared,
    shapes: Shapes,
) -> list[CostRefs]:
    """Write the costs of every size and return their cells, in order."""
    grid.block("What each size costs you, all blankets of the order together")
    grid.line(*heads("size", *KINDS.values(), "all costs"))
    return [
        _size(grid, sized, own, yarn, shared, shapes)
        for sized, own in zip(rows.all, inputs, strict=True)
    ]


def _size(
    grid: Grid,
    sized: Sized,
    own: InputRefs,
    yarn: AmountSpans,
    shared: Shared,
    shapes: Shapes,
) -> CostRefs:
    hour, price, hours = shared.hour, sized.quote.price, own.hours
    row = grid.next_row
    expressions = {
        LineKind.YARN: rounded(yarn.of(beside("A", row)), shapes.digits),
        LineKind.EXTRA: f"SUM({shared.extras})",
        LineKind.PACKAGING: str(shared.packaging),
        LineKind.MAKING: rounded(f"{hours.making}*{hour.making}", shapes.digits),
        LineKind.OFFICE: rounded(f"{hours.office}*{hour.office}", shapes.digits),
        LineKind.OVERHEAD: rounded(f"{hours.total}*{hour.overhead}", shapes.digits),
        LineKind.DELIVERY: rounded(str(own.paid), shapes.digits),
    }
    cells: list[Cell] = [
        reckoned(expression, price.amount(kind), shapes.money)
        for kind, expression in expressions.items()
    ]
    total = strong(f"SUM({TITLE}!B{row}:H{row})", price.cost, shapes.money)
    _, *amounts, cost = grid.line(words(sized.name), *cells, total)
    return CostRefs(dict(zip(expressions, amounts, strict=True)), cost)
