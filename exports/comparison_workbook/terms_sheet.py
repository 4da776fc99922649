"""The terms that all sizes share, each an input, and what follows from them for every price."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.comparison_workbook.inputs_table import InputRefs
from exports.costing_workbook.terms_block import (
    Asking,
    TermRefs,
    deposit_terms,
    fee_terms,
    move_terms,
    target_terms,
    tax_terms,
)
from exports.sale_formulas.factors_block import write_factors
from exports.sale_formulas.price_formula import FactorRefs
from exports.sheets.cells import (
    Cell,
    Look,
    Ref,
    Span,
    beside,
    heads,
    reckoned,
    rounded,
    words,
    yours,
)
from exports.sheets.checks import state_line
from exports.sheets.grid import Grid
from exports.sheets.legend import legend
from exports.sheets.lines import Lines
from exports.sheets.number_formats import Shapes
from exports.sheets.rules import AMOUNT, NAME
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Target

TITLE = "Terms"
FLAGS = "H"
SPARE = 1
"""Lines for extras that are thought of later."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HourRates:
    """What an hour is paid and carries."""

    making: Ref
    office: Ref
    overhead: Ref


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """The cells that every size reads; `terms` has the delivery and given price of the first."""

    terms: TermRefs
    quantity: int
    extras: Span
    packaging: Ref
    hour: HourRates
    factors: FactorRefs


def write_terms(
    grid: Grid, quote: Quote, targets: tuple[Target, ...], first: InputRefs, shapes: Shapes
) -> Shared:
    """Write the sheet, with the terms of a quote and what the targets name; return its cells."""
    grid.line(words("The terms of every size", Look.TITLE))
    state_line(grid)
    legend(grid)
    quantity = quote.order.quantity
    grid.line(words(f"{shapes.speech.count(quantity, 'blanket')} of each size", Look.NOTE))
    asking = Asking(grid, shapes)
    hour = _hour_rates(asking, quote)
    extras, packaging = _pieces(grid, quote, shapes)
    grid.block("What you ask")
    terms = TermRefs(
        **target_terms(asking, *targets),
        given=first.given,
        **move_terms(asking, quote),
        delivery=first.delivery,
        **deposit_terms(asking, quote),
        **tax_terms(asking, quote),
        fees=fee_terms(grid, quote, shapes),
    )
    grid.block("What follows for every size")
    return Shared(
        terms=terms,
        quantity=quantity,
        extras=extras,
        packaging=packaging,
        hour=hour,
        factors=write_factors(grid, quote.price, terms, shapes),
    )


def _hour_rates(asking: Asking, quote: Quote) -> HourRates:
    pay = quote.workshop.pay
    asking.grid.block("What an hour is paid")
    return HourRates(
        making=asking.money("making_pay", "Making", pay.making_per_hour),
        office=asking.money("office_pay", "Photographs, packing, letters", pay.office_per_hour),
        overhead=asking.money(
            "overhead_per_hour", "Overhead", pay.overhead_per_hour, "on every hour"
        ),
    )


def _pieces(grid: Grid, quote: Quote, shapes: Shapes) -> tuple[Span, Ref]:
    """Write what goes with each blanket; return the amounts of the extras, and of packaging."""
    grid.block("What goes with each blanket")
    price, delivery = quote.price, quote.workshop.delivery
    extras = [line for line in price.lines if line.kind is LineKind.EXTRA]
    headings = heads("", "", "", "", "each", "amount", figures_from=4)
    listed = Lines(grid, len(extras) + SPARE, headings)
    for line in extras:
        _piece(grid, words(line.subject), line.rate, line.amount, quote, shapes)
    for _ in range(SPARE):
        label = yours("another extra", rule=NAME.called("name"))
        _piece(grid, label, Decimal(0), Decimal(0), quote, shapes)
    listed.close()
    each, amount = delivery.packaging, price.amount(LineKind.PACKAGING)
    packaging = _piece(grid, words("Packaging"), each, amount, quote, shapes)
    grid.name("packaging", packaging[0])
    return listed.column("F"), packaging[1]


def _piece(
    grid: Grid, label: Cell, each: Decimal, amount: Decimal, quote: Quote, shapes: Shapes
) -> list[Ref]:
    """Write one thing that goes with each blanket; return what one and all of it cost."""
    product = rounded(f"{quote.order.quantity}*{beside('E', grid.next_row)}", shapes.digits)
    cost = yours(each, shapes.rate(each), AMOUNT.called("each"))
    total = reckoned(product, amount, shapes.money)
    return grid.line(label, None, None, None, cost, total)[1:]
