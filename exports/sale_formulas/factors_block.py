"""What the terms come to for any price: tax rates, and what fees take."""

from __future__ import annotations

from exports.sale_formulas.price_formula import (
    FactorRefs,
    charged_rate,
    delivery_fees,
    delivery_rate,
    fixed_fees,
    price_fees,
)
from exports.sale_formulas.term_cells import TermRefs
from exports.sheets.cells import Cell, Formula, Look, Ref
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Grid
from exports.sheets.number_formats import SHARE, Shapes
from quoting.core.price.price import Price


def write_factors(grid: Grid, price: Price, terms: TermRefs, shapes: Shapes) -> FactorRefs:
    """Write the factors of the price's equation and return their cells."""
    sale, equation = price.sale, price.equation

    def write(label: str, formula: Formula, shape: str = SHARE, note: str = "") -> Ref:
        return figure(grid, label, Cell(formula, Look.PLAIN, shape), note)

    rate = write("Tax charged", charged_rate(terms, sale))
    on_delivery = write("Tax charged on delivery", delivery_rate(terms, rate, sale))
    return FactorRefs(
        rate=rate,
        delivery_rate=on_delivery,
        price_fees=write("Fees on each unit of the price", price_fees(terms, rate, equation)),
        delivery_fees=write(
            "Fees on each unit of delivery", delivery_fees(terms, on_delivery, equation)
        ),
        fixed_fees=write("Fixed fees", fixed_fees(terms, sale), shapes.money, "of each payment"),
    )
