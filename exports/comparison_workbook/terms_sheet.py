"""The terms that all sizes share, each an input, and what follows from them for every price."""

from __future__ import annotations

from dataclasses import dataclass

from exports.comparison_workbook.inputs_table import InputRefs
from exports.costing_workbook.costing.terms_block import (
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
from exports.sheets.cells import Look, Ref, counted, heads, reckoned, rounded, words, yours
from exports.sheets.grid import Grid
from exports.sheets.legend import legend
from exports.sheets.number_formats import COUNT, Shapes
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Target

TITLE = "Terms"


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
    quantity: Ref
    extras: tuple[Ref, ...]
    packaging: Ref
    hour: HourRates
    factors: FactorRefs


def write_terms(
    grid: Grid, quote: Quote, targets: tuple[Target, ...], first: InputRefs, shapes: Shapes
) -> Shared:
    """Write the sheet, with the terms of a quote and what the targets name; return its cells."""
    grid.line(words("The terms of every size", Look.TITLE))
    legend(grid)
    grid.gap()
    asking = Asking(grid, shapes)
    quantity = asking.ask("quantity", "Blankets", counted(quote.order.quantity, COUNT))
    hour = _hour_rates(asking, quote)
    extras, packaging = _pieces(grid, quote, quantity, shapes)
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


def _pieces(grid: Grid, quote: Quote, quantity: Ref, shapes: Shapes) -> tuple[tuple[Ref, ...], Ref]:
    """Write what goes with each blanket; return the amounts of the extras, and of packaging."""
    grid.block("What goes with each blanket")
    grid.line(*heads("", "", "", "", "each", "amount", figures_from=4))
    price, packaging_each = quote.price, quote.workshop.delivery.packaging
    costs = [
        (line.subject, line.rate, line.amount)
        for line in price.lines
        if line.kind is LineKind.EXTRA
    ]
    costs.append(("Packaging", packaging_each, price.amount(LineKind.PACKAGING)))
    lines = []
    for label, cost, amount in costs:
        product = rounded(f"{quantity}*{TITLE}!E{grid.next_row}", shapes.digits)
        each, total = yours(cost, shapes.money), reckoned(product, amount, shapes.money)
        lines.append(grid.line(words(label), None, None, None, each, total))
    grid.name("packaging", lines[-1][1])
    *extras, packaging = [line[2] for line in lines]
    return tuple(extras), packaging
