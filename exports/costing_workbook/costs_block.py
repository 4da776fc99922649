"""The cost lines on the sheet of the costing, in the order of the quote."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from exports.costing_workbook.charge import Charge
from exports.costing_workbook.hours_sheet import HourRefs
from exports.costing_workbook.yarn_charges import yarn_charges
from exports.costing_workbook.yarn_sheet import YarnRefs
from exports.sheets.cells import (
    Look,
    Ref,
    counted,
    heads,
    reckoned,
    rounded,
    summed,
    total_of,
    words,
    yours,
)
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, HOURS, Shapes
from quoting.core.price.cost_lines import Line, LineKind, Unit
from quoting.core.quote.quote import Quote
from quoting.wording import line_unit, line_what

FOOT_GAP = [words("", Look.FOOT)] * 4


@dataclass(frozen=True, slots=True)
class CostRefs:
    """The amounts of all cost lines by kind, and their sum."""

    amounts: dict[LineKind, list[Ref]]
    total: Ref

    def of(self, *kinds: LineKind) -> list[Ref]:
        """Return the amounts of some kinds of line."""
        return [ref for kind in kinds for ref in self.amounts.get(kind, [])]


def costs_block(
    grid: Grid,
    quote: Quote,
    yarn: YarnRefs,
    hours: HourRefs,
    quantity: Ref,
    shapes: Shapes,
) -> CostRefs:
    """Write every cost line, those of pay, overhead and delivery also where they are nothing."""
    grid.block("What it costs you")
    grid.line(*heads("", "", "quantity", "", "rate", "amount", figures_from=2))
    charges = [
        *yarn_charges(quote, yarn, shapes, grid.next_row),
        *_piece_charges(quote, quantity, shapes),
        *_hour_charges(quote, hours, shapes),
        _delivery_charge(quote, shapes),
    ]
    amounts: dict[LineKind, list[Ref]] = {}
    for charge in charges:
        amounts.setdefault(charge.line.kind, []).append(_write(grid, charge, shapes))
    refs = [ref for own in amounts.values() for ref in own]
    cell = summed(total_of(refs), quote.price.cost, shapes.money)
    total = grid.line(words("All costs", Look.FOOT), *FOOT_GAP, cell)[-1]
    return CostRefs(amounts, grid.name("cost", total))


def _write(grid: Grid, charge: Charge, shapes: Shapes) -> Ref:
    row, line = grid.next_row, charge.line
    product = rounded(f"Costing!C{row}*Costing!E{row}", shapes.digits)
    refs = grid.line(
        words(charge.what or line_what(line, shapes.speech)),
        words(charge.detail),
        charge.quantity,
        words(line_unit(line, shapes.speech)),
        charge.rate,
        reckoned(product, line.amount, shapes.money),
    )
    if charge.name:
        grid.name(charge.name, refs[4])
    return refs[5]


def _piece_charges(quote: Quote, quantity: Ref, shapes: Shapes) -> Iterator[Charge]:
    """Yield what goes with each blanket: the extras, and packaging."""
    pieces = reckoned(str(quantity), quantity.value, COUNT)
    for line in quote.lines:
        if line.kind is LineKind.EXTRA:
            yield Charge(line, pieces, yours(line.rate, shapes.rate(line.rate)))
    packaging, many = quote.workshop.delivery.packaging, Decimal(quote.order.quantity)
    line = _line(quote, LineKind.PACKAGING, Unit.PIECE, packaging, many)
    yield Charge(line, pieces, yours(packaging, shapes.rate(packaging)), "packaging")


def _hour_charges(quote: Quote, hours: HourRefs, shapes: Shapes) -> Iterator[Charge]:
    pay = quote.workshop.pay
    for kind, ref, rate, name in (
        (LineKind.MAKING, hours.making, pay.making_per_hour, "making_pay"),
        (LineKind.OFFICE, hours.office, pay.office_per_hour, "office_pay"),
        (LineKind.OVERHEAD, hours.total, pay.overhead_per_hour, "overhead_per_hour"),
    ):
        line = _line(quote, kind, Unit.HOUR, rate, Decimal(str(ref.value)))
        yield Charge(
            line, reckoned(str(ref), ref.value, HOURS), yours(rate, shapes.rate(rate)), name
        )


def _delivery_charge(quote: Quote, shapes: Shapes) -> Charge:
    paid = quote.price.delivery_paid
    line = _line(quote, LineKind.DELIVERY, Unit.PIECE, paid, Decimal(1))
    return Charge(line, counted(1, COUNT), yours(paid, shapes.rate(paid)), "delivery_paid")


def _line(quote: Quote, kind: LineKind, unit: Unit, rate: Decimal, quantity: Decimal) -> Line:
    """Return the one line of a kind, also where the quote leaves it out because it is nothing."""
    amount = quote.price.amount(kind)
    return Line(kind=kind, quantity=quantity, unit=unit, rate=rate, amount=amount)
