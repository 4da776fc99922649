"""From cost to price on the sheet of the costing: the equation solved, moves, tax, total."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.costing.costs_block import CostRefs
from exports.costing_workbook.costing.payments_rows import payments_rows
from exports.costing_workbook.costing.terms_block import QUOTED_HEADS
from exports.sale_formulas.factors_block import write_factors
from exports.sale_formulas.price_formula import (
    EquationRefs,
    FactorRefs,
    costs_to_cover,
    kept_share,
    left_of_unit,
)
from exports.sale_formulas.sale_cells import (
    at_least,
    discounted,
    rushed,
    shown_of,
    tax_of,
    total_of_sale,
)
from exports.sale_formulas.term_cells import GIVEN, TermRefs
from exports.sheets.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    beside,
    counted,
    heads,
    quoted,
    reckoned,
    rounded,
    strong,
    words,
)
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Fault, Grid
from exports.sheets.number_formats import COUNT, SHARE, Shapes
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote
from quoting.wording import NO_PRICE

OF_ALL = "of all blankets"
MOVES = {
    LineKind.RUSH: ("Rush", "what it makes of the price, rounded up to the step"),
    LineKind.DISCOUNT: ("Discount", "what it makes of the price, rounded up to the step"),
    LineKind.MINIMUM: ("Up to the minimum charge", ""),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceRefs:
    """What the buyer pays, and the count of payments."""

    payments: Ref
    price: Ref
    tax: Ref
    total: Ref


def price_block(
    grid: Grid, quote: Quote, terms: TermRefs, costs: CostRefs, shapes: Shapes
) -> tuple[FactorRefs, PriceRefs]:
    """Write how the price follows; return the factors of its equation, and what is paid."""
    grid.block("From cost to price")
    grid.line(*QUOTED_HEADS)
    factors = write_factors(grid, quote.price, terms, shapes)
    equation = _equation(grid, quote, terms, costs.total, factors, shapes)
    payments = payments_rows(grid, quote, terms, costs, factors, equation, shapes)
    asked = equation.price_of_one(terms, factors, payments, quote.price.asking.asked)
    one = figure(
        grid,
        "Price of one before rounding",
        Cell(asked, Look.PLAIN, shapes.money),
        "before rush and discount; or the given price",
        faults=[Fault(f'AND({terms.target}<>"{GIVEN}",{equation.left}<=0)', f'"{NO_PRICE}"')],
    )
    price = _moved(grid, quote, terms, one, shapes)
    tax = figure(
        grid,
        "Sales tax",
        reckoned(tax_of(terms, factors.rate, price, shapes.digits), quote.price.tax, shapes.money),
        "inside the price, or added to it",
        name="tax",
    )
    paid = total_of_sale(terms, price, tax, shapes.digits)
    total = figure(
        grid,
        "The buyer pays",
        strong(paid, quote.price.total, shapes.money),
        "with delivery and tax",
        name="total",
    )
    return factors, PriceRefs(payments=payments, price=price, tax=tax, total=total)


def _equation(
    grid: Grid,
    quote: Quote,
    terms: TermRefs,
    cost: Ref,
    factors: FactorRefs,
    shapes: Shapes,
) -> EquationRefs:
    """Write the rest of the equation that does not hang on how the price is paid."""

    def write(label: str, formula: Formula, shape: str, note: str) -> Ref:
        return figure(grid, label, Cell(formula, Look.PLAIN, shape), note)

    solved = quote.price.equation
    kept = write(
        "For costs and fees", kept_share(terms, solved), SHARE, "of what is left after tax"
    )
    cover = write(
        "Costs to cover", costs_to_cover(terms, cost, solved), shapes.money, "with the markup"
    )
    left = write(
        "For costs, of each unit of the price",
        left_of_unit(terms, kept, factors, solved),
        SHARE,
        "after tax and fees",
    )
    return EquationRefs(kept=kept, cover=cover, left=left, quantity=quote.price.quantity)


def _listed(
    grid: Grid, quote: Quote, terms: TermRefs, asked: Ref, shapes: Shapes
) -> tuple[Ref, Ref]:
    """Write the list price of one, up to a whole step, and of all blankets."""
    price, shown = quote.price, shown_of(terms, asked, shapes.digits)
    each = figure(
        grid,
        "Base price of one",
        reckoned(shown, price.listed_each, shapes.money),
        "rounded up to the step",
        name="list_price_each",
    )
    listed = reckoned(f"{each}*{price.quantity}", price.listed, shapes.money)
    was, said = quoted(price.listed, shapes.money), _of_all(f"{each}>0", OF_ALL)
    return each, grid.line(words("Base price"), said, None, None, None, listed, was)[-2]


def _of_all(meets: str, note: str) -> Cell:
    """Return a note beside a price, which says so where no price meets the target."""
    return Cell(Formula(f'IF({meets},"{note}","{NO_PRICE}")', note))


def _moved(grid: Grid, quote: Quote, terms: TermRefs, asked: Ref, shapes: Shapes) -> Ref:
    """Write the list price, what rush, discount and least price make of it, and the price."""
    digits = shapes.digits
    each, listed = _listed(grid, quote, terms, asked, shapes)
    one, moved = str(each), str(listed)
    grid.gap()
    grid.line(*heads("", "", "blankets", "", "for one", "amount", "as quoted", figures_from=2))
    for kind in MOVES:
        shown = _shown_after(kind, terms, asked, rounded(one, digits), digits)
        change = rounded(f"{shown}-({one})", digits)
        for_one, amount = _move(grid, quote, kind, change, shapes)
        one, moved = f"{one}+{for_one}", f"{moved}+{amount}"
    said = _of_all(f"{each}>0", "of all blankets, without delivery")
    price = strong(rounded(moved, digits), quote.price.price, shapes.money)
    was = quoted(quote.price.price, shapes.money)
    ref = grid.line(words("Price", Look.BLOCK), said, None, None, None, price, was)[-2]
    return grid.name("price", ref)


def _shown_after(kind: LineKind, terms: TermRefs, asked: Ref, before: str, digits: int) -> str:
    """Return the price of one as it is shown after a move; `before` is what is shown before it."""
    if kind is LineKind.MINIMUM:
        return at_least(terms, before, digits)
    unrounded = rushed if kind is LineKind.RUSH else discounted
    return shown_of(terms, unrounded(terms, asked), digits)


def _move(grid: Grid, quote: Quote, kind: LineKind, change: str, shapes: Shapes) -> list[Ref]:
    """Write one thing that moves the price; return what it is for one blanket and for all."""
    row, price, (label, note) = grid.next_row, quote.price, MOVES[kind]
    return grid.line(
        words(label),
        words(note),
        counted(price.quantity, COUNT),
        None,
        reckoned(change, price.change_each(kind), shapes.money),
        reckoned(f"{beside('C', row)}*{beside('E', row)}", price.amount(kind), shapes.money),
        quoted(price.amount(kind), shapes.money),
    )[-3:-1]
