"""From cost to price, size by size: the equation solved, what moves it, rounding to the step."""

from __future__ import annotations

from exports.comparison_workbook.costs_table import TITLE
from exports.comparison_workbook.payments_table import Priced
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.comparison_workbook.terms_sheet import Shared
from exports.sale_formulas.sale_cells import at_least, discounted, rushed, shown_of
from exports.sheets.cells import Cell, Look, Ref, heads, reckoned, strong, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from quoting.core.price.cost_lines import LineKind


def prices_table(
    grid: Grid, rows: Rows, priced: list[Priced], shared: Shared, shapes: Shapes
) -> list[Ref]:
    """Write how every price follows; return the cells of the price of one blanket, in order."""
    grid.block("From cost to price, of one blanket")
    grid.line(
        *heads("size", "before rounding", "list price", "with the rush", "less the discount"),
        *heads("price", figures_from=0),
    )
    refs = []
    for sized, found in zip(rows.all, priced, strict=True):
        refs.append(_size(grid, sized, found, shared, shapes))
        if rows.is_own(sized):
            grid.name("own_size_price", refs[-1])
    return refs


def _size(grid: Grid, sized: Sized, found: Priced, shared: Shared, shapes: Shapes) -> Ref:
    price, terms, digits = sized.quote.price, found.terms, shapes.digits
    asked, discounted_one = (f"{TITLE}!{letter}{grid.next_row}" for letter in "BE")
    listed = price.listed_each
    hurried, cheaper = price.each_after(LineKind.RUSH), price.each_after(LineKind.DISCOUNT)
    solved = found.equation.price_of_one(terms, shared.factors, found.payments, price.asking.asked)
    return grid.line(
        words(sized.name),
        Cell(solved, Look.PLAIN, shapes.money),
        reckoned(shown_of(terms, asked, digits), listed, shapes.money),
        reckoned(shown_of(terms, rushed(terms, asked), digits), hurried, shapes.money),
        reckoned(shown_of(terms, discounted(terms, asked), digits), cheaper, shapes.money),
        strong(at_least(terms, discounted_one, digits), price.each, shapes.money),
    )[-1]
