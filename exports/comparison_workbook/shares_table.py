"""Where all that the buyer pays goes, size by size, with a check that it adds up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from exports.comparison_workbook.costs_table import TITLE
from exports.comparison_workbook.results_table import Sums
from exports.costing_workbook.costing.shares_block import KINDS, PARTS
from exports.price_parts import part_amounts
from exports.sheets.cells import Cell, Formula, Look, Ref, heads, reckoned, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes

ADDS_UP, DIFFERS = "adds up", "does not add up"


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareRefs:
    """The names of the sizes, the columns of the parts, each under its heading, and the checks."""

    names: list[Ref]
    parts: list[list[Ref]]
    adds_up: list[Ref]


def shares_table(grid: Grid, sums: Sequence[Sums], shapes: Shapes) -> ShareRefs:
    """Write every size's parts and return their cells."""
    grid.block("What each price pays for")
    headings = grid.line(*heads("size", *PARTS, "check"))
    lines = [_size(grid, own, shapes) for own in sums]
    names, *parts, adds_up = ([*column] for column in zip(headings, *lines, strict=True))
    return ShareRefs(names=names[1:], parts=parts, adds_up=adds_up[1:])


def _size(grid: Grid, own: Sums, shapes: Shapes) -> list[Ref]:
    row = grid.next_row
    parts = f"SUM({TITLE}!B{row}:J{row})"
    adds_up = f"ROUND({parts}-{own.sold.total},{shapes.digits})=0"
    said = Formula(f'IF({adds_up},"{ADDS_UP}","{DIFFERS}")', ADDS_UP)
    cells = [reckoned(expression, value, shapes.money) for expression, value in _parts(own)]
    return grid.line(words(own.sized.name), *cells, Cell(said, Look.STRONG))


def _parts(own: Sums) -> Iterator[tuple[str, Decimal]]:
    price, sold = own.sized.quote.price, own.sold
    costs = ("+".join(str(own.cost.amounts[kind]) for kind in group) for group in KINDS.values())
    cells = (*costs, str(sold.fees), str(sold.tax), str(sold.profit))
    yield from zip(cells, part_amounts(price, KINDS.values()), strict=True)
