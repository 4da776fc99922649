"""The sheet of payments: all money received, by day, and its sums by currency."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.accounts_workbook.accounts import Accounts, Received
from exports.sheets.cells import (
    DAY_NOUGHT,
    Look,
    Span,
    beside,
    counted,
    heads,
    summed,
    total_where,
    words,
)
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import Shapes
from quoting.wording import sheet_day

TITLE = "Payments"
WIDTHS = (18, 14, 34, 24, 12, 10)


@dataclass(frozen=True, slots=True, kw_only=True)
class PaymentSpans:
    """The columns of the list: quotes, amounts and currencies; and what is in them."""

    numbers: Span
    amounts: Span
    currencies: Span
    payments: tuple[Received, ...]

    def of(self, number: str, currency: str) -> str:
        """Return what came for the quote and in the currency that two cells name."""
        return total_where(self.amounts, (self.numbers, number), (self.currencies, currency))

    def received(self, number: str, currency: str) -> Decimal:
        """Return what came for a quote in a currency."""
        mine = (p.amount for p in self.payments if (p.number, p.currency) == (number, currency))
        return sum(mine, Decimal(0))


def write_payments(grid: Grid, accounts: Accounts, shapes: Shapes) -> PaymentSpans:
    """Write every payment and the sum of each currency; return the columns."""
    title = "Payments" if accounts.year is None else f"Payments of {accounts.year}"
    grid.line(words(title, Look.TITLE))
    grid.line(words("Money that was paid back is below nothing.", Look.NOTE))
    grid.gap()
    headings = [*heads("day", figures_from=0), *heads("quote", "order", "buyer", figures_from=9)]
    lines = Lines(
        grid,
        len(accounts.payments),
        [*headings, *heads("amount", figures_from=0), *heads("currency")],
    )
    for payment in accounts.payments:
        _payment(grid, payment, shapes)
    lines.close()
    spans = PaymentSpans(
        numbers=lines.column("B"),
        amounts=lines.column("E"),
        currencies=lines.column("F"),
        payments=accounts.payments,
    )
    for currency in dict.fromkeys(payment.currency for payment in accounts.payments):
        _sum(grid, currency, spans, shapes)
    return spans


def _payment(grid: Grid, payment: Received, shapes: Shapes) -> None:
    grid.line(
        counted((payment.day - DAY_NOUGHT).days, sheet_day(shapes.speech)),
        words(payment.number),
        words(payment.title),
        words(payment.buyer),
        counted(payment.amount, shapes.bare_money),
        words(payment.currency),
    )


def _sum(grid: Grid, currency: str, spans: PaymentSpans, shapes: Shapes) -> None:
    all_of_it = sum((p.amount for p in spans.payments if p.currency == currency), Decimal(0))
    here = spans.currencies, beside("F", grid.next_row)
    grid.line(
        words("all payments", Look.FOOT),
        None,
        None,
        None,
        summed(total_where(spans.amounts, here), all_of_it, shapes.bare_money),
        words(currency),
    )
