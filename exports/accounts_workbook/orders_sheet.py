"""The sheet of orders: what each brought in, what it cost, and what an hour of it earned."""

from __future__ import annotations

from decimal import Decimal

from exports.accounts_workbook.accounts import Accounts, Booked
from exports.accounts_workbook.payments_sheet import PaymentSpans
from exports.sheets.cells import (
    DAY_NOUGHT,
    Cell,
    Look,
    beside,
    counted,
    heads,
    reckoned,
    rounded,
    summed,
    total_where,
    words,
)
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import HOURS, Shapes
from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.money import round_money
from quoting.wording import sheet_day

TITLE = "Orders"
WIDTHS = (14, 18, 18, 24, 10, 12, 12, 12, 12, 12, 10, 12, 12)
AMOUNTS = "FGHIJ"
"""Total, tax, fees, yarn, other costs."""

HOURS_COLUMN, RECEIVED = "K", "M"
NOTHING = Decimal(0)


def write_orders(grid: Grid, accounts: Accounts, payments: PaymentSpans, shapes: Shapes) -> None:
    """Write every order and the sums of each currency."""
    grid.line(words(_title(accounts), Look.TITLE))
    grid.line(words("Figures in italics are from the book; all others are formulas.", Look.NOTE))
    grid.gap()
    lines = Lines(
        grid,
        len(accounts.orders),
        [
            *heads("quote"),
            *heads("agreed", "handed over, or finished", figures_from=0),
            *heads("buyer", "currency", figures_from=9),
            *heads("total", "tax", "fees", "yarn", "other costs", "hours", figures_from=0),
            *heads("an hour earned", _received_head(accounts), figures_from=0),
        ],
    )
    for order in accounts.orders:
        _order(grid, order, payments, shapes)
    lines.close()
    for currency in dict.fromkeys(order.currency for order in accounts.orders):
        _sums(grid, currency, accounts, lines, shapes)


def _title(accounts: Accounts) -> str:
    return "Orders" if accounts.year is None else f"Orders of {accounts.year}"


def _received_head(accounts: Accounts) -> str:
    return "received" if accounts.year is None else f"received in {accounts.year}"


def _order(grid: Grid, order: Booked, payments: PaymentSpans, shapes: Shapes) -> None:
    row, money = grid.next_row, shapes.bare_money
    hours = words("") if order.hours is None else counted(order.hours, HOURS)
    day = sheet_day(shapes.speech)
    grid.line(
        words(order.number),
        counted((order.agreed - DAY_NOUGHT).days, day),
        counted((order.done - DAY_NOUGHT).days, day),
        words(order.buyer),
        words(order.currency),
        *(counted(amount, money) for amount in _amounts(order)),
        hours,
        _earned(row, order, shapes),
        reckoned(
            payments.of(beside("A", row), beside("E", row)),
            payments.received(order.number, order.currency),
            money,
        ),
    )


def _amounts(order: Booked) -> tuple[Decimal, ...]:
    return order.total, order.tax, order.fees, order.yarn, order.other_costs


def _earned(row: int, order: Booked, shapes: Shapes) -> Cell:
    """Return what an hour earned: what is left of the total, by the hours; empty without any."""
    kept = "-".join(beside(letter, row) for letter in AMOUNTS)
    hours = beside(HOURS_COLUMN, row)
    by_the_hour = rounded(f"({kept})/{hours}", minor_digits(order.currency))
    value = "" if order.earned is None else order.earned
    return reckoned(f'IF(N({hours})>0,{by_the_hour},"")', value, shapes.bare_money)


def _sums(grid: Grid, currency: str, accounts: Accounts, lines: Lines, shapes: Shapes) -> None:
    """Write the sums of the orders of one currency."""
    row, mine = grid.next_row, [o for o in accounts.orders if o.currency == currency]
    here = lines.column("E"), beside("E", row)
    sums = [
        summed(total_where(lines.column(letter), here), sum(amounts, NOTHING), shapes.bare_money)
        for letter, amounts in zip(AMOUNTS, zip(*map(_amounts, mine), strict=True), strict=True)
    ]
    hours = sum((order.hours or NOTHING for order in mine), NOTHING)
    received = total_where(lines.column(RECEIVED), here)
    grid.line(
        words("all orders", Look.FOOT),
        None,
        None,
        None,
        words(currency, Look.FOOT),
        *sums,
        summed(total_where(lines.column(HOURS_COLUMN), here), hours, HOURS),
        _earned_together(row, mine, hours, lines, shapes),
        summed(received, _received(accounts, mine, currency), shapes.bare_money),
    )


def _earned_together(
    row: int, mine: list[Booked], hours: Decimal, lines: Lines, shapes: Shapes
) -> Cell:
    """Return what an hour of all orders earned whose hours are known."""
    total, *costs = (str(lines.figures(letter)) for letter in AMOUNTS)
    kept = f"({total}-{'-'.join(costs)})"
    told = f"--ISNUMBER({lines.figures(HOURS_COLUMN)})"
    same = f"--EXACT({lines.figures('E')},{beside('E', row)})"
    together = f"SUMPRODUCT({same},{told},{kept})/{beside(HOURS_COLUMN, row)}"
    digits = minor_digits(mine[0].currency)
    left = sum(
        (o.total - o.tax - o.fees - o.yarn - o.other_costs for o in mine if o.hours is not None),
        NOTHING,
    )
    value = round_money(left / hours, mine[0].currency) if hours else ""
    expression = f'IF({beside(HOURS_COLUMN, row)}>0,{rounded(together, digits)},"")'
    return summed(expression, value, shapes.bare_money)


def _received(accounts: Accounts, mine: list[Booked], currency: str) -> Decimal:
    numbers = {order.number for order in mine}
    return sum(
        (p.amount for p in accounts.payments if p.number in numbers and p.currency == currency),
        NOTHING,
    )
