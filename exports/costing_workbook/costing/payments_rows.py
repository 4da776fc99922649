"""In how many payments an order is paid: asked of what it would come to were it paid at once."""

from __future__ import annotations

from exports.costing_workbook.costing.costs_block import CostRefs
from exports.sale_formulas.price_formula import EquationRefs, FactorRefs
from exports.sale_formulas.sale_cells import (
    at_least,
    deposit_of,
    discounted,
    payments_of,
    shown_of,
    tax_of,
    total_of_sale,
)
from exports.sale_formulas.term_cells import TermRefs
from exports.sheets.cells import Cell, Formula, Look, Ref, rounded
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, Shapes
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote


def payments_rows(
    grid: Grid,
    quote: Quote,
    terms: TermRefs,
    costs: CostRefs,
    factors: FactorRefs,
    equation: EquationRefs,
    shapes: Shapes,
) -> Ref:
    """Write what would be asked were it paid at once; return the cell of the payments.

    So no cell has to wait for itself: the fixed fees hang on the payments, the total on the fees,
    and the payments on how much of that lesser total the deposit is.
    """
    once, digits = quote.price.as_paid.at_once, shapes.digits

    def write(label: str, formula: Formula, note: str = "", shape: str = shapes.money) -> Ref:
        return figure(grid, label, Cell(formula, Look.PLAIN, shape), note)

    asked = write(
        "Price of one, were it paid at once",
        equation.price_of_one(terms, factors, "1", once.asked),
        "before rush, discount and rounding",
    )
    shown = at_least(terms, shown_of(terms, discounted(terms, asked), digits), digits)
    price = write(
        "Price, were it paid at once",
        Formula(rounded(f"{shown}*{equation.quantity}", digits), once.sold.price),
        "of all blankets, rounded up to the step",
    )
    tax = tax_of(terms, factors.rate, price, digits)
    total = write(
        "The buyer would pay", Formula(total_of_sale(terms, price, tax, digits), once.sold.total)
    )
    yarn = rounded(costs.of(LineKind.YARN), digits)
    deposit = write(
        "Deposit of that", Formula(deposit_of(terms, yarn, total, digits), once.sold.deposit)
    )
    count = Formula(payments_of(deposit, total), quote.price.payments)
    return write("Payments", count, "two with a deposit of a part", COUNT)
