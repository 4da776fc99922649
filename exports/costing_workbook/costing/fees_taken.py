"""What each fee takes: its rate of its base, and its fixed part for each payment."""

from __future__ import annotations

from exports.costing_workbook.costing.price_block import PriceRefs
from exports.sale_formulas.fee_formulas import base_of
from exports.sale_formulas.term_cells import TermRefs
from exports.sheets.cells import Ref, beside, quoted, reckoned, rounded, summed
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from quoting.core.price.cost_lines import Line
from quoting.core.quote.quote import Quote


def fees_taken(
    grid: Grid, quote: Quote, terms: TermRefs, paid: PriceRefs, payments: Ref, shapes: Shapes
) -> Ref:
    """Add to every fee of the terms what it takes, and write the sum of all; return its cell."""
    parts = quote.price.sold.fee_parts
    for at, row in enumerate(terms.fees.rows):
        _add(grid, row, parts[2 * at : 2 * at + 2], terms, paid, payments, shapes)
    return figure(
        grid,
        "All fees",
        summed(f"SUM({terms.fees.takes})", quote.price.fees, shapes.money),
        "each fee stands with its terms",
        name="fees",
    )


def _add(
    grid: Grid,
    row: int,
    parts: tuple[Line, ...],
    terms: TermRefs,
    paid: PriceRefs,
    payments: Ref,
    shapes: Shapes,
) -> None:
    """Add the amount that one fee takes its rate of, and what it takes, each part rounded once."""
    on, of, rate, fixed = (beside(letter, row) for letter in "BCDE")
    base = base_of(on, terms, paid.price, paid.tax, shapes.digits)
    taken = sum(part.amount for part in parts)
    amount = parts[0].quantity if parts and parts[0].rate else 0
    grid.add("C", row, reckoned(f"IF({rate}>0,{base},0)", amount, shapes.money))
    by_rate, by_count = f"{rate}*{of}", f"{fixed}*{payments}"
    takes = f"{rounded(by_rate, shapes.digits)}+{rounded(by_count, shapes.digits)}"
    grid.add("F", row, reckoned(takes, taken, shapes.money))
    grid.add("G", row, quoted(taken, shapes.money))
