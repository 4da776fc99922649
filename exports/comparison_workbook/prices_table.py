"""From cost to price, size by size: the equation solved, rounding to the step, what moves it."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from exports.comparison_workbook.costs_table import TITLE, CostRefs
from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.sized import Rows, Sized
from exports.comparison_workbook.terms_sheet import Shared
from exports.workbook.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    heads,
    reckoned,
    rounded,
    strong,
    words,
)
from exports.workbook.grid import Grid
from exports.workbook.shapes import SHARE, Shapes
from exports.workbook.solving import (
    costs_to_cover,
    kept_share,
    net_factor,
    sale_of,
    tax_factors,
)
from exports.workbook.terms_block import GIVEN, TermRefs, target_word
from quoting.core.costing import LineKind
from quoting.core.money import exact
from quoting.core.quote import Quote
from quoting.core.sale import solve_price

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
        Cell(_left(terms, at, quote, shared), Look.PLAIN, SHARE),
        Cell(_solved(terms, at, quote, shared), Look.PLAIN, money),
        Cell(_listed(terms, at, quote, shared, shapes), Look.PLAIN, money),
        *_moves(terms, at, quote, shapes),
        strong(
            rounded("+".join(at[letter] for letter in "HIJK"), shapes.digits),
            quote.price.each,
            money,
        ),
    )


def _left(terms: TermRefs, at: dict[str, str], quote: Quote, shared: Shared) -> Formula:
    """Return what each unit of the price leaves for costs: its net part less its fees."""
    factors, (g, _) = shared.factors, tax_factors(sale_of(quote)).net
    kept = 1 - exact(quote.price.target.margin or 0.0)
    fees = factors.price_fees.value
    assert isinstance(fees, Decimal), "the equation is solved in decimals"  # noqa: S101
    expression = f"{at['D']}/{net_factor(terms, factors.rate)}-{factors.price_fees}"
    return Formula(expression, kept / g - fees)


def _solved(terms: TermRefs, at: dict[str, str], quote: Quote, shared: Shared) -> Formula:
    """Return the price of all blankets that solves the equation, or the given price of one."""
    factors, target = shared.factors, quote.price.target
    delivered = f"{at['D']}*{terms.delivery}/{net_factor(terms, factors.delivery_rate)}"
    fees = f"{factors.fixed_fees}+{factors.delivery_fees}*{terms.delivery}"
    solved = f"IF({at['F']}>0,MAX(0,({at['E']}+{fees}-{delivered})/{at['F']}),0)"
    value = target.given if target.given is not None else solve_price(sale_of(quote), target)
    return Formula(f'IF({terms.target}="{GIVEN}",{terms.given},{solved})', value)


def _listed(
    terms: TermRefs, at: dict[str, str], quote: Quote, shared: Shared, shapes: Shapes
) -> Formula:
    """Return the list price of one blanket, rounded up to the step."""
    each = f"{at['G']}/{shared.quantity}"
    steps = f"ROUNDUP(ROUND({each}/{terms.step},6),0)*{terms.step}"
    up = f"IF({terms.step}>0,{steps},{each})"
    expression = rounded(f'IF({terms.target}="{GIVEN}",{terms.given},{up})', shapes.digits)
    return Formula(expression, quote.price.listed / quote.price.quantity)


def _moves(terms: TermRefs, at: dict[str, str], quote: Quote, shapes: Shapes) -> list[Cell]:
    """Return rush, discount and the rise to the least price, each rounded for one blanket."""
    digits, price = shapes.digits, quote.price
    asked = rounded(f"{at['H']}+{at['I']}+{at['J']}", digits)
    under = f'AND({terms.target}<>"{GIVEN}",{asked}<{terms.minimum})'
    rise = rounded(f"{rounded(str(terms.minimum), digits)}-{asked}", digits)
    expressions = {
        LineKind.RUSH: rounded(f"{at['H']}*{terms.rush}", digits),
        LineKind.DISCOUNT: rounded(f"-({at['H']}+{at['I']})*{terms.discount}", digits),
        LineKind.MINIMUM: f"IF({under},{rise},0)",
    }
    return [
        reckoned(expression, price.amount(kind) / price.quantity, shapes.money)
        for kind, expression in expressions.items()
    ]
