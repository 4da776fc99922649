"""The terms that all sizes share, each an input, and what follows from them for every price."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.comparison_workbook.inputs_table import InputRefs
from exports.costing_workbook.costing.terms_block import (
    QUOTED_HEADS,
    Asking,
    deposit_terms,
    fee_terms,
    move_terms,
    target_terms,
    tax_terms,
)
from exports.sale_formulas.factors_block import write_factors
from exports.sale_formulas.price_formula import FactorRefs
from exports.sale_formulas.term_cells import TermRefs
from exports.sheets.cells import (
    Look,
    Ref,
    Span,
    beside,
    heads,
    quoted,
    reckoned,
    rounded,
    words,
    written,
    yours,
)
from exports.sheets.grid import Fault, Grid
from exports.sheets.heading import heading
from exports.sheets.legend import legend
from exports.sheets.lines import Lines
from exports.sheets.number_formats import Shapes
from exports.sheets.rules import AMOUNT, NAME
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Target

TITLE = "Terms"
FLAGS = "I"
SPARE = 3
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
    heading(grid, "The terms of every size")
    legend(grid)
    quantity = quote.order.quantity
    grid.line(words(f"{shapes.speech.count(quantity, 'blanket')} of each size", Look.NOTE))
    asking = Asking(grid, shapes)
    hour = _hour_rates(asking, quote)
    extras, packaging = _pieces(grid, quote, shapes)
    grid.block("What you ask")
    grid.line(*QUOTED_HEADS)
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
    grid.line(*QUOTED_HEADS)
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
    asking.grid.line(*QUOTED_HEADS)
    return HourRates(
        making=asking.money("making_pay", "Making", pay.making_per_hour),
        office=asking.money("office_pay", "Admin: photos, packing, messages", pay.office_per_hour),
        overhead=asking.money(
            "overhead_per_hour", "Overhead", pay.overhead_per_hour, "on every hour"
        ),
    )


def _pieces(grid: Grid, quote: Quote, shapes: Shapes) -> tuple[Span, Ref]:
    """Write what goes with each blanket; return the amounts of the extras, and of packaging."""
    grid.block("What goes with each blanket")
    price, delivery = quote.price, quote.workshop.delivery
    extras = [line for line in price.lines if line.kind is LineKind.EXTRA]
    headings = heads("", "", "", "", "each", "amount", "as quoted", figures_from=4)
    listed = Lines(grid, len(extras) + SPARE, headings)
    for line in extras:
        _piece(grid, line.subject, line.rate, line.amount, quote, shapes)
    for _ in range(SPARE):
        _piece(grid, "", "", Decimal(0), quote, shapes)
    listed.close()
    each, amount = delivery.packaging, price.amount(LineKind.PACKAGING)
    packaging = _piece(grid, "Packaging", each, amount, quote, shapes)
    grid.name("packaging", packaging[0])
    return listed.figures("F"), packaging[1]


def _piece(
    grid: Grid, label: str, each: Decimal | str, amount: Decimal, quote: Quote, shapes: Shapes
) -> list[Ref]:
    """Write one thing that goes with each blanket; return what one and all of it cost."""
    cost, money = beside("E", grid.next_row), shapes.rate(Decimal(each or 0))
    product = rounded(f"{quote.order.quantity}*N({cost})", shapes.digits)
    rule = AMOUNT.called("each")
    unpriced = f'AND({beside("A", grid.next_row)}<>"",{cost}="")'
    return grid.line(
        words(label) if label else written("", NAME),
        *[None] * 3,
        yours(each, money, rule if label else rule.or_empty()),
        reckoned(product, amount, shapes.money),
        quoted(amount, shapes.money),
        faults=[] if label else [Fault(unpriced, '"what one costs is not given"')],
    )[1:]
