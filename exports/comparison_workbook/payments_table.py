"""In how many payments each size is paid: asked of what it would come to were it in fewer."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from exports.comparison_workbook.costs_table import TITLE, CostRefs
from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.comparison_workbook.terms_sheet import Shared
from exports.costing_workbook.costing.terms_block import target_word
from exports.sale_formulas.payment_formulas import at_half_of, deposit_of, payments_of, rest_of
from exports.sale_formulas.price_formula import (
    EquationRefs,
    costs_to_cover,
    kept_share,
    left_of_unit,
)
from exports.sale_formulas.sale_cells import (
    at_least,
    discounted,
    shown_of,
    tax_of,
    total_of_sale,
)
from exports.sale_formulas.term_cells import GIVEN, TermRefs
from exports.sheets.cells import Cell, Formula, Look, Ref, heads, rounded, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, SHARE, Shapes
from quoting.core.price.asking_price import AskingPrice
from quoting.core.price.cost_lines import LineKind

SPLIT_HEADS = ("deposit of that", "part payment of that", "payments")


@dataclass(frozen=True, slots=True, kw_only=True)
class Priced:
    """What the price of one size is solved by, and the cell of its payments."""

    terms: TermRefs
    equation: EquationRefs
    payments: Ref


@dataclass(frozen=True, slots=True, kw_only=True)
class _Solving:
    """What the prices of one size are solved from, whatever the payments."""

    terms: TermRefs
    yarn: str
    equation: EquationRefs
    shared: Shared
    shapes: Shapes


def payments_table(
    grid: Grid,
    rows: Rows,
    inputs: list[InputRefs],
    costs: list[CostRefs],
    shared: Shared,
    shapes: Shapes,
) -> list[Priced]:
    """Write what every size would come to, paid in fewer; return what its price is solved by."""
    grid.block("In how many payments, were it paid at once")
    grid.line(
        *heads("size", "follows", "for costs and fees", "costs to cover", "left of each unit"),
        *heads("asked of one, at once", "price, at once", "buyer pays, at once", figures_from=0),
        *heads(*SPLIT_HEADS, figures_from=0),
    )
    at_once = [
        _at_once(grid, sized, _follows(sized, shared, rows), own, cost, shared, shapes)
        for sized, own, cost in zip(rows.all, inputs, costs, strict=True)
    ]
    grid.block("In how many payments, were it paid in two at most")
    grid.line(
        *heads("size", "asked of one, in two", "price, in two", "buyer pays, in two"),
        *heads(*SPLIT_HEADS, figures_from=0),
    )
    return [
        _in_two(grid, sized, once, solving)
        for sized, (once, solving) in zip(rows.all, at_once, strict=True)
    ]


def _follows(sized: Sized, shared: Shared, rows: Rows) -> Formula:
    """Return what a price follows: the terms; the order's own size what the order says."""
    word, asked = target_word(sized.quote.price.target), shared.terms.target
    if rows.keeps_its_price(sized):
        return Formula(f'"{GIVEN}"', GIVEN)
    if rows.is_own(sized):
        return Formula(f'IF({asked}="{GIVEN}","{word}",{asked})', word)
    return Formula(str(asked), word)


def _at_once(
    grid: Grid,
    sized: Sized,
    follows: Formula,
    own: InputRefs,
    cost: CostRefs,
    shared: Shared,
    shapes: Shapes,
) -> tuple[Ref, _Solving]:
    row, once = grid.next_row, sized.quote.price.as_paid.at_once
    kept, cover, left = (f"{TITLE}!{letter}{row}" for letter in "CDE")
    terms = replace(
        shared.terms,
        target=Ref(TITLE, "B", row, follows.value),
        given=own.given,
        delivery=own.delivery,
    )
    solving = _Solving(
        terms=terms,
        yarn=str(cost.amounts[LineKind.YARN]),
        equation=EquationRefs(kept=kept, cover=cover, left=left, quantity=shared.quantity),
        shared=shared,
        shapes=shapes,
    )
    line = grid.line(
        words(sized.name),
        Cell(follows, Look.PLAIN),
        Cell(kept_share(terms, once.equation), Look.PLAIN, SHARE),
        Cell(costs_to_cover(terms, cost.total, once.equation), Look.PLAIN, shapes.money),
        Cell(left_of_unit(terms, kept, shared.factors, once.equation), Look.PLAIN, SHARE),
        *_split(solving, once, "1", [f"{TITLE}!{letter}{row}" for letter in "FGHIJ"]),
    )
    return line[-1], solving


def _in_two(grid: Grid, sized: Sized, once: Ref, solving: _Solving) -> Priced:
    in_two = sized.quote.price.as_paid.in_two
    columns = [f"{TITLE}!{letter}{grid.next_row}" for letter in "BCDEF"]
    line = grid.line(words(sized.name), *_split(solving, in_two, f"MIN(2,{once})", columns))
    return Priced(terms=solving.terms, equation=solving.equation, payments=line[-1])


def _split(
    solving: _Solving, priced: AskingPrice, payments: str, columns: list[str]
) -> Iterator[Cell]:
    """Yield the price, the total and its payments, each but their count in its own column."""
    terms, shared, shapes = solving.terms, solving.shared, solving.shapes
    digits, sold, parts = shapes.digits, priced.sold, priced.sold.payments
    asked, price, total, deposit, at_half = columns
    shown = at_least(terms, shown_of(terms, discounted(terms, asked), digits), digits)
    tax = tax_of(terms, shared.factors.rate, price, digits)
    for formula in (
        solving.equation.price_of_one(terms, shared.factors, payments, priced.asked),
        Formula(rounded(f"{shown}*{shared.quantity}", digits), sold.price),
        Formula(total_of_sale(terms, price, tax, digits), sold.total),
        Formula(deposit_of(terms, solving.yarn, total, digits), parts.deposit),
        Formula(at_half_of(terms, deposit, total, digits), parts.at_half),
    ):
        yield Cell(formula, Look.PLAIN, shapes.money)
    count = payments_of(deposit, at_half, rest_of(total, deposit, at_half, digits))
    yield Cell(Formula(count, parts.count), Look.PLAIN, COUNT)
