"""In how many payments each size is paid: asked of what it would come to were it paid at once."""

from __future__ import annotations

from dataclasses import dataclass, replace

from exports.comparison_workbook.costs_table import TITLE, CostRefs
from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.comparison_workbook.terms_sheet import Shared
from exports.costing_workbook.costing.terms_block import target_word
from exports.sale_formulas.price_formula import (
    EquationRefs,
    costs_to_cover,
    kept_share,
    left_of_unit,
)
from exports.sale_formulas.sale_cells import (
    at_least,
    deposit_of,
    discounted,
    payments_of,
    shown_of,
    tax_of,
    total_of_sale,
)
from exports.sale_formulas.term_cells import GIVEN, TermRefs
from exports.sheets.cells import Cell, Formula, Look, Ref, heads, rounded, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, SHARE, Shapes
from quoting.core.price.cost_lines import LineKind

COLUMNS = "CDEFGHI"


@dataclass(frozen=True, slots=True, kw_only=True)
class Priced:
    """What the price of one size is solved by, and the cell of its payments."""

    terms: TermRefs
    equation: EquationRefs
    payments: Ref


def payments_table(
    grid: Grid,
    rows: Rows,
    inputs: list[InputRefs],
    costs: list[CostRefs],
    shared: Shared,
    shapes: Shapes,
) -> list[Priced]:
    """Write what every size would come to, paid at once; return what its price is solved by."""
    grid.block("In how many payments")
    grid.line(
        *heads("size", "follows", "for costs and fees", "costs to cover", "left of each unit"),
        *heads("asked of one, at once", "price, at once", "buyer pays, at once", figures_from=0),
        *heads("deposit of that", "payments", figures_from=0),
    )
    return [
        _size(grid, sized, _follows(sized, shared, rows), own, cost, shared, shapes)
        for sized, own, cost in zip(rows.all, inputs, costs, strict=True)
    ]


def _follows(sized: Sized, shared: Shared, rows: Rows) -> Formula:
    """Return what a price follows: the terms; the order's own size what the order says."""
    word, asked = target_word(sized.quote.price.target), shared.terms.target
    if rows.keeps_its_price(sized):
        return Formula(f'"{GIVEN}"', GIVEN)
    if rows.is_own(sized):
        return Formula(f'IF({asked}="{GIVEN}","{word}",{asked})', word)
    return Formula(str(asked), word)


def _size(
    grid: Grid,
    sized: Sized,
    follows: Formula,
    own: InputRefs,
    cost: CostRefs,
    shared: Shared,
    shapes: Shapes,
) -> Priced:
    quote, digits, row = sized.quote, shapes.digits, grid.next_row
    once, factors = quote.price.as_paid.at_once, shared.factors
    kept, cover, left, asked, price, total, deposit = (
        f"{TITLE}!{letter}{row}" for letter in COLUMNS
    )
    terms = replace(
        shared.terms,
        target=Ref(TITLE, "B", row, follows.value),
        given=own.given,
        delivery=own.delivery,
    )
    equation = EquationRefs(kept=kept, cover=cover, left=left, quantity=shared.quantity)
    shown = at_least(terms, shown_of(terms, discounted(terms, asked), digits), digits)
    tax = tax_of(terms, factors.rate, price, digits)
    yarn = str(cost.amounts[LineKind.YARN])
    cells = (
        (follows, "General"),
        (kept_share(terms, once.equation), SHARE),
        (costs_to_cover(terms, cost.total, once.equation), shapes.money),
        (left_of_unit(terms, kept, factors, once.equation), SHARE),
        (equation.price_of_one(terms, factors, "1", once.asked), shapes.money),
        (Formula(rounded(f"{shown}*{shared.quantity}", digits), once.sold.price), shapes.money),
        (Formula(total_of_sale(terms, price, tax, digits), once.sold.total), shapes.money),
        (Formula(deposit_of(terms, yarn, total, digits), once.sold.deposit), shapes.money),
        (Formula(payments_of(deposit, total), quote.price.payments), COUNT),
    )
    line = grid.line(words(sized.name), *(Cell(what, Look.PLAIN, shape) for what, shape in cells))
    return Priced(terms=terms, equation=equation, payments=line[-1])
