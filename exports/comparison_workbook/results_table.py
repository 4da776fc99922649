"""What a sale leaves, beside what the maker wants for an hour, and how it is paid."""

from __future__ import annotations

from dataclasses import dataclass

from exports.comparison_workbook.costs_table import CostRefs
from exports.comparison_workbook.counts_table import CountRefs, square_cm
from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.comparison_workbook.sold_table import SoldRefs
from exports.sale_formulas.sale_cells import earned_of, margin_of
from exports.sheets.cells import Ref, heads, reckoned, rounded, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import SHARE, Shapes
from quoting.core.price.cost_lines import LineKind
from quoting.core.weighing.comparison import price_of_area

AREA = 100
"""Square units, of the workshop's own, that the price of an area is for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultRefs:
    """What one size leaves and how it is paid."""

    margin: Ref
    pay: Ref
    per_area: Ref


@dataclass(frozen=True, slots=True)
class Sums:
    """What the results of one size are reckoned from."""

    sized: Sized
    cost: CostRefs
    count: CountRefs
    sold: SoldRefs


def results_table(
    grid: Grid,
    rows: Rows,
    inputs: list[InputRefs],
    sums: list[Sums],
    shapes: Shapes,
) -> list[ResultRefs]:
    """Write what every size compared leaves and return the cells, in order."""
    grid.block("What each sale comes to")
    grid.line(
        *heads("size", "margin", "hourly pay", area_price_words(shapes), "deposit", "balance"),
        *heads("of it at half", figures_from=0),
    )
    return [
        _size(grid, own, put_in, shapes)
        for own, put_in in zip(sums[: rows.count], inputs, strict=False)
    ]


def _size(grid: Grid, own: Sums, put_in: InputRefs, shapes: Shapes) -> ResultRefs:
    digits, money, sold = shapes.digits, shapes.money, own.sold
    quote = own.sized.quote
    per_area = rounded(f"{sold.each}*{AREA}/{own.count.area}", digits)
    amounts, hours = own.cost.amounts, put_in.all_hours
    pay = f"{amounts[LineKind.MAKING]}+{amounts[LineKind.OFFICE]}"
    rest = rounded(f"{sold.total}-{sold.deposit}", digits)
    of_area = price_of_area(quote, AREA * square_cm(shapes))
    refs = grid.line(
        words(own.sized.name),
        reckoned(margin_of(sold.profit, sold.total, sold.tax), quote.price.margin, SHARE),
        reckoned(earned_of("0", pay, hours, digits), quote.price.pay_per_hour, money),
        reckoned(per_area, of_area, money),
        reckoned(str(sold.deposit), quote.price.deposit, money),
        reckoned(rest, quote.price.balance, money),
        reckoned(str(sold.at_half), quote.price.parts.at_half, money),
    )
    return ResultRefs(margin=refs[1], pay=refs[2], per_area=refs[3])


def area_price_words(shapes: Shapes) -> str:
    """Return the heading of the prices of an area."""
    return f"price of {AREA} {shapes.short_unit}²"
