"""In how many payments an order is paid: asked of what it would come to were it in fewer."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.costing.costs_block import CostRefs
from exports.sale_formulas.payment_formulas import at_half_of, deposit_of, payments_of, rest_of
from exports.sale_formulas.price_formula import EquationRefs, FactorRefs
from exports.sale_formulas.sale_cells import (
    at_least,
    discounted,
    shown_of,
    tax_of,
    total_of_sale,
)
from exports.sale_formulas.term_cells import TermRefs
from exports.sheets.cells import Cell, Formula, Look, Ref, rounded
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, Shapes
from quoting.core.price.asking_price import AskingPrice
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class _Solving:
    """What a price is solved from, whatever the payments that it is solved for."""

    terms: TermRefs
    yarn: str
    factors: FactorRefs
    equation: EquationRefs


def payments_rows(
    grid: Grid,
    quote: Quote,
    terms: TermRefs,
    costs: CostRefs,
    factors: FactorRefs,
    equation: EquationRefs,
    shapes: Shapes,
) -> Ref:
    """Write what would be asked were it paid at once, or in two; return the cell of the payments.

    So no cell has to wait for itself: the fixed fees hang on the payments, the total on the fees,
    and the payments on how that lesser total is split.
    """
    yarn = rounded(costs.of(LineKind.YARN), shapes.digits)
    solving = _Solving(terms=terms, yarn=yarn, factors=factors, equation=equation)
    as_paid = quote.price.as_paid
    once = _rows(grid, solving, as_paid.at_once, "1", "at once", shapes)
    return _rows(grid, solving, as_paid.in_two, f"MIN(2,{once})", "in two at most", shapes)


def _rows(
    grid: Grid, solving: _Solving, priced: AskingPrice, payments: str, how: str, shapes: Shapes
) -> Ref:
    """Write the price, total and split were it paid so; return the cell of the payments."""
    terms, equation, factors = solving.terms, solving.equation, solving.factors
    digits, parts = shapes.digits, priced.sold.payments

    def write(label: str, formula: Formula, note: str = "", shape: str = shapes.money) -> Ref:
        return figure(grid, label, Cell(formula, Look.PLAIN, shape), note)

    asked = write(
        f"Price of one, were it paid {how}",
        equation.price_of_one(terms, factors, payments, priced.asked),
        "before rush, discount and rounding",
    )
    shown = at_least(terms, shown_of(terms, discounted(terms, asked), digits), digits)
    price = write(
        f"Price, were it paid {how}",
        Formula(rounded(f"{shown}*{equation.quantity}", digits), priced.sold.price),
        "of all blankets, rounded up to the step",
    )
    tax = tax_of(terms, factors.rate, price, digits)
    total = write(
        "The buyer would pay", Formula(total_of_sale(terms, price, tax, digits), priced.sold.total)
    )
    first = deposit_of(terms, solving.yarn, total, digits)
    deposit = write("Deposit of that", Formula(first, parts.deposit))
    second = at_half_of(terms, deposit, total, digits)
    at_half = write("Part payment of that", Formula(second, parts.at_half))
    count = payments_of(deposit, at_half, rest_of(total, deposit, at_half, digits))
    return write("Payments of that", Formula(count, parts.count), f"were it paid {how}", COUNT)
