"""A table of every size sold at some price: the price asked, or that of a rule of thumb."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from exports.comparison_workbook.costs_table import TITLE, CostRefs
from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.size_rows import Sized
from exports.comparison_workbook.terms_sheet import Shared
from exports.sale_formulas.fee_formulas import fees_of
from exports.sale_formulas.payment_formulas import at_half_of, deposit_of, payments_of, rest_of
from exports.sale_formulas.sale_cells import (
    earned_of,
    profit_of,
    tax_of,
    total_of_sale,
)
from exports.sheets.cells import Formula, Ref, heads, reckoned, rounded, strong, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, Shapes
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.sale import Sold


@dataclass(frozen=True, slots=True, kw_only=True)
class Selling:
    """One size, the cells that its sale reads, the price asked of one blanket, and the sale."""

    sized: Sized
    own: InputRefs
    cost: CostRefs
    each: Formula
    sold: Sold


@dataclass(frozen=True, slots=True, kw_only=True)
class SoldRefs:
    """The cells of one size sold."""

    each: Ref
    price: Ref
    delivery: Ref
    tax: Ref
    total: Ref
    deposit: Ref
    at_half: Ref
    fees: Ref
    profit: Ref
    earned: Ref


def sold_table(
    grid: Grid, title: str, sales: Sequence[Selling], shared: Shared, shapes: Shapes
) -> list[SoldRefs]:
    """Write what becomes of every sale and return the cells, in order."""
    grid.block(title)
    grid.line(
        *heads("size", "price of one", "price of all", "delivery", "sales tax"),
        *heads("the buyer pays", "deposit", "part payment", "payments", figures_from=0),
        *heads("fees", "costs", "profit", "an hour earns", figures_from=0),
    )
    return [_size(grid, selling, shared, shapes) for selling in sales]


def _size(grid: Grid, selling: Selling, shared: Shared, shapes: Shapes) -> SoldRefs:
    digits, money = shapes.digits, shapes.money
    each, price, _, tax, total, deposit, at_half, payments, fees, cost, profit = (
        f"{TITLE}!{letter}{grid.next_row}" for letter in "BCDEFGHIJKL"
    )
    terms = replace(shared.terms, delivery=Ref(TITLE, "D", grid.next_row, 0))
    sold, priced = selling.sold, selling.sized.quote.price
    pay = "+".join(str(selling.cost.amounts[kind]) for kind in (LineKind.MAKING, LineKind.OFFICE))
    earned = earned_of(profit, pay, selling.own.all_hours, digits)
    yarn, parts = str(selling.cost.amounts[LineKind.YARN]), sold.payments
    count = payments_of(deposit, at_half, rest_of(total, deposit, at_half, digits))
    refs = grid.line(
        words(selling.sized.name),
        reckoned(selling.each.expression, selling.each.value, money),
        reckoned(rounded(f"{each}*{shared.quantity}", digits), sold.price, money),
        reckoned(rounded(str(selling.own.delivery), digits), sold.sale.delivery, money),
        reckoned(tax_of(terms, shared.factors.rate, price, digits), sold.tax, money),
        reckoned(total_of_sale(terms, price, tax, digits), sold.total, money),
        reckoned(deposit_of(terms, yarn, total, digits), parts.deposit, money),
        reckoned(at_half_of(terms, deposit, total, digits), parts.at_half, money),
        reckoned(count, parts.count, COUNT),
        reckoned(fees_of(terms, payments, price, tax, digits), sold.fees, money),
        reckoned(str(selling.cost.total), sold.sale.cost, money),
        reckoned(profit_of(total, tax, fees, cost, digits), sold.profit, money),
        strong(
            f'IF({each}>0,{earned},"")', priced.earned_by(sold) if sold.price > 0 else "", money
        ),
    )
    return SoldRefs(
        each=refs[1],
        price=refs[2],
        delivery=refs[3],
        tax=refs[4],
        total=refs[5],
        deposit=refs[6],
        at_half=refs[7],
        fees=refs[9],
        profit=refs[11],
        earned=refs[12],
    )
