"""A table of every size sold at some price: the price asked, or that of a rule of thumb."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from exports.comparison_workbook.costs_table import TITLE, CostRefs
from exports.comparison_workbook.inputs_table import InputRefs
from exports.comparison_workbook.sized import Sized
from exports.comparison_workbook.sold import Sold, fees_of
from exports.comparison_workbook.terms_sheet import Shared
from exports.workbook.cells import Formula, Ref, heads, reckoned, rounded, strong, words
from exports.workbook.grid import Grid
from exports.workbook.selling import (
    deposit_of,
    earned_of,
    payments_of,
    profit_of,
    tax_of,
    total_of_sale,
)
from exports.workbook.shapes import COUNT, Shapes
from quoting.core.costing import LineKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """One size, the cells that its sale reads, and the price asked of one blanket."""

    sized: Sized
    own: InputRefs
    cost: CostRefs
    each: Formula


@dataclass(frozen=True, slots=True, kw_only=True)
class SoldRefs:
    """The cells of one size sold."""

    each: Ref
    price: Ref
    delivery: Ref
    tax: Ref
    total: Ref
    fees: Ref
    profit: Ref
    earned: Ref


def sold_table(
    grid: Grid, title: str, offers: Sequence[Offer], shared: Shared, shapes: Shapes
) -> list[SoldRefs]:
    """Write what becomes of every offer and return the cells, in order."""
    grid.block(title)
    grid.line(
        *heads("size", "price of one", "price of all", "delivery", "sales tax"),
        *heads("the buyer pays", "payments", "fees", "costs", "profit", figures_from=0),
        *heads("an hour earns", figures_from=0),
    )
    return [_offer(grid, offer, shared, shapes) for offer in offers]


def _offer(grid: Grid, offer: Offer, shared: Shared, shapes: Shapes) -> SoldRefs:
    digits, money = shapes.digits, shapes.money
    each, price, _, tax, total, payments, fees, cost, profit = (
        f"{TITLE}!{letter}{grid.next_row}" for letter in "BCDEFGHIJ"
    )
    terms = replace(shared.terms, delivery=Ref(TITLE, "D", grid.next_row, 0))
    sold = Sold(offer.sized.quote, Decimal(offer.each.value))
    hours = f"({offer.own.making}+{offer.own.office})"
    pay = "+".join(str(offer.cost.amounts[kind]) for kind in (LineKind.MAKING, LineKind.OFFICE))
    earned = earned_of(profit, pay, hours, digits)
    deposit = deposit_of(terms, str(offer.cost.amounts[LineKind.YARN]), total, digits)
    refs = grid.line(
        words(offer.sized.name),
        reckoned(offer.each.expression, offer.each.value, money),
        reckoned(rounded(f"{each}*{shared.quantity}", digits), sold.price, money),
        reckoned(rounded(str(offer.own.delivery), digits), sold.sale.delivery, money),
        reckoned(tax_of(terms, shared.factors.rate, price, digits), sold.tax, money),
        reckoned(total_of_sale(terms, price, tax, digits), sold.total, money),
        reckoned(payments_of(deposit, total), sold.sale.payments, COUNT),
        reckoned(fees_of(terms, payments, price, total, digits), sold.fees, money),
        reckoned(str(offer.cost.total), sold.quote.price.cost, money),
        reckoned(profit_of(total, tax, fees, cost, digits), sold.profit, money),
        strong(f'IF({each}>0,{earned},"")', sold.earned_per_hour if sold.each > 0 else "", money),
    )
    return SoldRefs(
        each=refs[1],
        price=refs[2],
        delivery=refs[3],
        tax=refs[4],
        total=refs[5],
        fees=refs[7],
        profit=refs[9],
        earned=refs[10],
    )
