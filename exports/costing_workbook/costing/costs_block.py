"""The cost lines on the sheet of the costing, in the order of the quote."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from exports.costing_workbook.costing.charge import KIND_WORDS, Charge
from exports.costing_workbook.costing.yarn_charges import yarn_charges
from exports.costing_workbook.hours.parts_block import HourRefs
from exports.costing_workbook.yarn.yarn_sheet import YarnRefs
from exports.sheets.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    Span,
    beside,
    counted,
    heads,
    quoted,
    reckoned,
    rounded,
    summed,
    words,
    written,
    yours,
)
from exports.sheets.checks import Check
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, HOURS, Shapes
from exports.sheets.rules import AMOUNT, MEASURE, NAME
from quoting.core.price.cost_lines import Line, LineKind, Unit
from quoting.core.quote.quote import Quote
from quoting.wording import line_unit, line_what

FOOT_GAP = [words("", Look.FOOT)] * 4


SPARE_EXTRAS = 3
"""Lines that wait for further extras."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CostRefs:
    """The rates and amounts of all cost lines, the words they count as, and their sum."""

    rates: Span
    amounts: Span
    kinds: Span
    total: Ref

    @property
    def overhead_rate(self) -> str:
        """What overhead takes of an hour: the rates of all its lines, if any are left."""
        return f'SUMIF({self.kinds},"{KIND_WORDS[LineKind.OVERHEAD]}",{self.rates})'

    def of(self, *kinds: LineKind) -> str:
        """Return the sum of all lines of some kinds, as an expression."""
        sums = [f'SUMIF({self.kinds},"{KIND_WORDS[kind]}",{self.amounts})' for kind in kinds]
        return sums[0] if len(sums) == 1 else f"({'+'.join(sums)})"


def costs_block(
    grid: Grid, quote: Quote, yarn: YarnRefs, hours: HourRefs, shapes: Shapes
) -> CostRefs:
    """Write every cost line, those of pay, overhead and delivery also where they are nothing."""
    grid.block("What it costs you")
    charges = [
        *yarn_charges(quote, yarn, shapes, grid.next_row + 1),
        *_extra_charges(quote, shapes),
        *[None] * SPARE_EXTRAS,
        _packaging_charge(quote, shapes),
        *_hour_charges(quote, hours, shapes),
        _delivery_charge(quote, shapes),
    ]
    titles = heads("", "", "quantity", "", "rate", "amount", "as quoted", figures_from=2)
    lines = Lines(grid, len(charges), [*titles, *heads("counts as")])
    for charge in charges:
        if charge is None:
            _spare(grid, quote, shapes)
        else:
            _write(grid, charge, lines, shapes)
    lines.close()
    amounts = lines.column("F")
    cell = summed(f"SUM({amounts})", quote.price.cost, shapes.money)
    was = quoted(quote.price.cost, shapes.money)
    total = grid.line(words("All costs", Look.FOOT), *FOOT_GAP, cell, was)[-2]
    return CostRefs(
        rates=lines.column("E"),
        amounts=amounts,
        kinds=lines.column("H"),
        total=grid.name("cost", total),
    )


def costs_check(costs: CostRefs, digits: int) -> Check:
    """Return the check that every line of the costs counts as something that is known."""
    known = "+".join(costs.of(kind) for kind in KIND_WORDS)
    words_known = ", ".join(KIND_WORDS.values())
    return Check(
        "The costs by kind",
        Fault(
            f"ROUND({costs.total}-({known}),{digits})<>0",
            f'"a line of the costs counts as nothing that is known: {words_known}"',
        ),
    )


def _write(grid: Grid, charge: Charge, lines: Lines, shapes: Shapes) -> None:
    """Write one line; the cell of its rate may have a name."""
    line = charge.line
    amount = Formula(_product(grid, shapes), line.amount)
    if charge.amount is not None:
        amount = charge.amount(lines)
    refs = grid.line(
        words(charge.what or line_what(line, shapes.speech)),
        words(charge.detail),
        charge.quantity,
        words(line_unit(line, shapes.speech)),
        charge.rate,
        Cell(amount, Look.PLAIN, shapes.money),
        quoted(line.amount, shapes.money),
        words(KIND_WORDS[line.kind]),
    )
    if charge.name:
        grid.name(charge.name, refs[4])


def _product(grid: Grid, shapes: Shapes) -> str:
    """Return what a line comes to: its quantity at its rate, rounded once."""
    row = grid.next_row
    return rounded(f"{beside('C', row)}*{beside('E', row)}", shapes.digits)


def _spare(grid: Grid, quote: Quote, shapes: Shapes) -> None:
    """Write a line that waits for a further extra."""
    row = grid.next_row
    unpriced = f'AND({beside("A", row)}<>"",{beside("E", row)}="")'
    grid.line(
        written("", NAME),
        words("a further extra, its name", Look.NOTE),
        yours(quote.order.quantity, COUNT, MEASURE.called("quantity")),
        words("pieces"),
        yours("", shapes.money, AMOUNT.called("rate").or_empty()),
        reckoned(_product(grid, shapes), Decimal(0), shapes.money),
        quoted(Decimal(0), shapes.money),
        words(KIND_WORDS[LineKind.EXTRA]),
        faults=[Fault(unpriced, '"what one costs is not given"')],
    )


def _extra_charges(quote: Quote, shapes: Shapes) -> Iterator[Charge]:
    """Yield the extras, so many as there are blankets."""
    for line in quote.lines:
        if line.kind is LineKind.EXTRA:
            yield Charge(line, _pieces(quote), _rate(line.rate, shapes))


def _packaging_charge(quote: Quote, shapes: Shapes) -> Charge:
    rate, many = quote.workshop.delivery.packaging, Decimal(quote.order.quantity)
    line = _line(quote, LineKind.PACKAGING, Unit.PIECE, rate, many)
    return Charge(line, _pieces(quote), _rate(rate, shapes), "packaging")


def _pieces(quote: Quote) -> Cell:
    return yours(quote.order.quantity, COUNT, MEASURE.called("quantity"))


def _rate(rate: Decimal, shapes: Shapes) -> Cell:
    return yours(rate, shapes.rate(rate), AMOUNT.called("rate"))


def _hour_charges(quote: Quote, hours: HourRefs, shapes: Shapes) -> Iterator[Charge]:
    pay = quote.workshop.pay
    for kind, ref, rate, name in (
        (LineKind.MAKING, hours.making, pay.making_per_hour, "making_pay"),
        (LineKind.OFFICE, hours.office, pay.office_per_hour, "office_pay"),
        (LineKind.OVERHEAD, hours.total, pay.overhead_per_hour, "overhead_per_hour"),
    ):
        line = _line(quote, kind, Unit.HOUR, rate, Decimal(str(ref.value)))
        yield Charge(line, reckoned(str(ref), ref.value, HOURS), _rate(rate, shapes), name)


def _delivery_charge(quote: Quote, shapes: Shapes) -> Charge:
    paid = quote.price.delivery_paid
    line = _line(quote, LineKind.DELIVERY, Unit.PIECE, paid, Decimal(1))
    return Charge(line, counted(1, COUNT), _rate(paid, shapes), "delivery_paid")


def _line(quote: Quote, kind: LineKind, unit: Unit, rate: Decimal, quantity: Decimal) -> Line:
    """Return the one line of a kind, also where the quote leaves it out because it is nothing."""
    amount = quote.price.amount(kind)
    return Line(kind=kind, quantity=quantity, unit=unit, rate=rate, amount=amount)
