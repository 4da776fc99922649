"""From cost to price on the sheet of the costing: the equation solved, moves, tax, total."""

from __future__ import annotations

from dataclasses import dataclass

from exports.workbook.cells import Cell, Formula, Look, Ref, heads, reckoned, rounded, strong, words
from exports.workbook.factors_block import write_factors
from exports.workbook.figures import figure
from exports.workbook.grid import Grid
from exports.workbook.selling import list_price_of, rise_of, tax_of, total_of_sale
from exports.workbook.shapes import COUNT, SHARE, Shapes
from exports.workbook.solving import (
    Factors,
    costs_to_cover,
    kept_share,
    left_of_unit,
    solved_price,
)
from exports.workbook.terms_block import TermRefs
from quoting.core.costing import LineKind
from quoting.core.quote import Quote
from quoting.wording import NO_PRICE

OF_ALL = "of all blankets"
MOVES = {
    LineKind.RUSH: ("Rush", "as a share of the price so far"),
    LineKind.DISCOUNT: ("Discount", "as a share of the price so far"),
    LineKind.MINIMUM: ("Up to the least price", ""),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceRefs:
    """What the buyer pays, and the count of payments."""

    payments: Ref
    price: Ref
    tax: Ref
    total: Ref


def price_block(
    grid: Grid, quote: Quote, terms: TermRefs, cost: Ref, quantity: Ref, shapes: Shapes
) -> PriceRefs:
    """Write how the price follows from the costs and the terms; return what is paid."""
    grid.block("From cost to price")
    factors = write_factors(grid, quote, terms, shapes)
    solved = _solved(grid, quote, terms, cost, factors, shapes)
    listed = _listed(grid, quote, terms, solved, quantity, shapes)
    price = _moved(grid, quote, terms, listed, quantity, shapes)
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
    return PriceRefs(payments=factors.payments, price=price, tax=tax, total=total)


def _solved(
    grid: Grid, quote: Quote, terms: TermRefs, cost: Ref, factors: Factors, shapes: Shapes
) -> Ref:
    """Write the rest of the equation and the price that solves it, unrounded."""

    def write(label: str, formula: Formula, shape: str, note: str) -> Ref:
        return figure(grid, label, Cell(formula, Look.PLAIN, shape), note)

    kept = write("For costs and fees", kept_share(terms, quote), SHARE, "of what is left after tax")
    cover = write(
        "Costs to cover", costs_to_cover(terms, cost, quote), shapes.money, "with the markup"
    )
    left = write(
        "For costs, of each unit of the price",
        left_of_unit(terms, kept, factors, quote),
        SHARE,
        "after tax and fees",
    )
    return write(
        "Price before rounding",
        solved_price(terms, factors, quote, kept=kept, cover=cover, left=left),
        shapes.money,
        "of all blankets, or the given price of one",
    )


def _listed(
    grid: Grid, quote: Quote, terms: TermRefs, solved: Ref, quantity: Ref, shapes: Shapes
) -> Ref:
    """Write the list price of all blankets: rounded up to the step for each."""
    price, asked = quote.price, list_price_of(terms, solved, quantity, shapes.digits)
    each = figure(
        grid,
        "List price of one",
        reckoned(asked, price.listed / price.quantity, shapes.money),
        "rounded up to the step",
        name="list_price_each",
    )
    said = Formula(f'IF({each}>0,"{OF_ALL}","{NO_PRICE}")', OF_ALL)
    listed = reckoned(f"{each}*{quantity}", price.listed, shapes.money)
    return grid.line(words("List price"), Cell(said), None, None, None, listed)[-1]


def _moved(
    grid: Grid, quote: Quote, terms: TermRefs, listed: Ref, quantity: Ref, shapes: Shapes
) -> Ref:
    """Write rush, discount and least price, each rounded for one blanket, and the price."""
    digits, moved = shapes.digits, str(listed)
    grid.gap()
    grid.line(*heads("", "", "blankets", "", "for one", "amount", figures_from=2))
    for kind, share in ((LineKind.RUSH, terms.rush), (LineKind.DISCOUNT, f"-{terms.discount}")):
        for_one = rounded(f"({moved})/{quantity}*{share}", digits)
        moved += f"+{_move(grid, quote, kind, for_one, quantity, shapes)}"
    up = rise_of(terms, rounded(f"({moved})/{quantity}", digits), digits)
    moved += f"+{_move(grid, quote, LineKind.MINIMUM, up, quantity, shapes)}"
    return figure(
        grid,
        "Price",
        strong(rounded(moved, digits), quote.price.price, shapes.money),
        "of all blankets, without delivery",
        name="price",
    )


def _move(
    grid: Grid, quote: Quote, kind: LineKind, for_one: str, quantity: Ref, shapes: Shapes
) -> Ref:
    """Write one thing that moves the price: for one blanket, and for all of them."""
    row, price, (label, note) = grid.next_row, quote.price, MOVES[kind]
    amount = price.amount(kind)
    return grid.line(
        words(label),
        words(note),
        reckoned(str(quantity), quantity.value, COUNT),
        None,
        reckoned(for_one, amount / price.quantity, shapes.money),
        reckoned(f"Costing!C{row}*Costing!E{row}", amount, shapes.money),
    )[-1]
