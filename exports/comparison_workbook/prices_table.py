"""From cost to price, size by size: the equation solved, rounding to the step, what moves it."""

from __future__ import annotations

from dataclasses import replace

from exports.comparison_workbook.costs_table import TITLE, CostRefs
from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.sized import Rows, Sized
from exports.comparison_workbook.terms_sheet import Shared
from exports.workbook.cells import Cell, Formula, Look, Ref, heads, reckoned, rounded, strong, words
from exports.workbook.grid import Grid
from exports.workbook.selling import list_price_of, rise_of
from exports.workbook.shapes import SHARE, Shapes
from exports.workbook.solving import costs_to_cover, kept_share, left_of_unit, solved_price
from exports.workbook.terms_block import GIVEN, TermRefs, target_word
from quoting.core.costing import LineKind
from quoting.core.quote import Quote

COLUMNS = "BCDEFGHIJKL"


def prices_table(
    grid: Grid,
    rows: Rows,
    inputs: list[InputRefs],
    costs: list[CostRefs],
    shared: Shared,
    shapes: Shapes,
) -> list[Ref]:
    """Write how every price follows; return the cells of the price of one blanket, in order."""
    grid.block("From cost to price")
    grid.line(
        *heads("size", "follows", "costs", "for costs and fees", "costs to cover", figures_from=1),
        *heads("left of each unit", "price before rounding", "list price of one", figures_from=0),
        *heads("rush", "discount", "up to the least", "price of one", figures_from=0),
    )
    refs = []
    for at, (sized, own, cost) in enumerate(zip(rows.all, inputs, costs, strict=True)):
        follows = _follows(sized, shared, own_size=at >= rows.count)
        terms = replace(
            shared.terms,
            target=Ref(TITLE, "B", grid.next_row, target_word(sized.quote.price.target)),
            given=own.given,
            delivery=own.delivery,
        )
        line = _size(grid, sized, follows, terms, cost.total, shared, shapes)
        if at >= rows.count:
            grid.name("own_size_price", line[-1])
        refs.append(line[-1])
    return refs


def _follows(sized: Sized, shared: Shared, *, own_size: bool) -> Cell:
    """Return what a price follows: the terms; the order's own size no given price of others."""
    word, asked = target_word(sized.quote.price.target), shared.terms.target
    expression = f'IF({asked}="{GIVEN}","{word}",{asked})' if own_size else str(asked)
    if own_size and word == GIVEN:
        expression = f'"{GIVEN}"'
    return Cell(Formula(expression, word), Look.PLAIN)


def _size(
    grid: Grid,
    sized: Sized,
    follows: Cell,
    terms: TermRefs,
    cost: Ref,
    shared: Shared,
    shapes: Shapes,
) -> list[Ref]:
    quote, money = sized.quote, shapes.money
    at = {letter: f"{TITLE}!{letter}{grid.next_row}" for letter in COLUMNS}
    return grid.line(
        words(sized.name),
        follows,
        reckoned(str(cost), quote.price.cost, money),
        Cell(kept_share(terms, quote), Look.PLAIN, SHARE),
        Cell(costs_to_cover(terms, cost, quote), Look.PLAIN, money),
        Cell(left_of_unit(terms, at["D"], shared.factors, quote), Look.PLAIN, SHARE),
        Cell(
            solved_price(terms, shared.factors, quote, kept=at["D"], cover=at["E"], left=at["F"]),
            Look.PLAIN,
            money,
        ),
        reckoned(
            list_price_of(terms, at["G"], shared.quantity, shapes.digits),
            quote.price.listed / quote.price.quantity,
            money,
        ),
        *_moves(terms, at, quote, shapes),
        strong(
            rounded("+".join(at[letter] for letter in "HIJK"), shapes.digits),
            quote.price.each,
            money,
        ),
    )


def _moves(terms: TermRefs, at: dict[str, str], quote: Quote, shapes: Shapes) -> list[Cell]:
    """Return rush, discount and the rise to the least price, each rounded for one blanket."""
    digits, price = shapes.digits, quote.price
    asked = rounded(f"{at['H']}+{at['I']}+{at['J']}", digits)
    expressions = {
        LineKind.RUSH: rounded(f"{at['H']}*{terms.rush}", digits),
        LineKind.DISCOUNT: rounded(f"-({at['H']}+{at['I']})*{terms.discount}", digits),
        LineKind.MINIMUM: rise_of(terms, asked, digits),
    }
    return [
        reckoned(expression, price.amount(kind) / price.quantity, shapes.money)
        for kind, expression in expressions.items()
    ]
