"""What is left for the maker, and how the buyer pays."""

from __future__ import annotations

from dataclasses import dataclass

from exports.workbook.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    Value,
    reckoned,
    rounded,
    total_of,
    words,
    yours,
)
from exports.workbook.costs_block import CostRefs
from exports.workbook.grid import Grid
from exports.workbook.hours_sheet import HourRefs
from exports.workbook.price_block import PriceRefs
from exports.workbook.shapes import FINE, SHARE, Shapes
from exports.workbook.terms_block import SHARE_OF_TOTAL, YARN, TermRefs
from quoting.core.costing import LineKind
from quoting.core.currencies import minor_digits
from quoting.core.exchange import ExchangeRate
from quoting.core.price import MARGIN_DIGITS
from quoting.core.quote import Quote
from quoting.wording import sheet_money


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultRefs:
    """What is left, and the two payments."""

    profit: Ref
    earned: Ref
    deposit: Ref
    balance: Ref


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """The sums that the result is reckoned from."""

    costs: CostRefs
    hours: HourRefs
    paid: PriceRefs
    fees: Ref


def result_block(
    grid: Grid, quote: Quote, terms: TermRefs, sums: Sums, shapes: Shapes
) -> ResultRefs:
    """Write profit, margin, what an hour earns, deposit and balance; return their cells."""
    profit, earned = _left(grid, quote, sums, shapes)
    deposit, balance = _payments(grid, quote, terms, sums, shapes)
    if quote.price.exchange is not None:
        _other_currency(grid, quote, quote.price.exchange, sums.paid.total, shapes)
    return ResultRefs(profit=profit, earned=earned, deposit=deposit, balance=balance)


def figure(grid: Grid, name: str, label: str, note: str, cell: Cell) -> Ref:
    """Write one figure with its label and return its cell, named."""
    return grid.name(name, grid.line(words(label), words(note), None, None, None, cell)[-1])


def _left(grid: Grid, quote: Quote, sums: Sums, shapes: Shapes) -> tuple[Ref, Ref]:
    grid.block("What is left for you")
    price, paid, digits = quote.price, sums.paid, shapes.digits
    left = rounded(f"{paid.total}-{paid.tax}-{sums.fees}-{sums.costs.total}", digits)
    money = shapes.money
    profit = figure(
        grid, "profit", "Profit", "after your pay and every cost", _key(left, price.profit, money)
    )
    net = f"({paid.total}-{paid.tax})"
    share = f"IF({net}=0,0,ROUND({profit}/{net},{MARGIN_DIGITS}))"
    margin = Cell(Formula(share, price.margin), Look.PLAIN, SHARE)
    figure(grid, "margin_reached", "Margin reached", "profit, of the net price", margin)
    pay = total_of(sums.costs.of(LineKind.MAKING, LineKind.OFFICE))
    hourly = rounded(f"({profit}+{pay})/{sums.hours.total}", digits)
    earned = _key(f"IF({sums.hours.total}>0,{hourly},0)", price.earned_per_hour, money)
    note = "your pay and the profit, over all hours"
    return profit, figure(grid, "earned_per_hour", "An hour earns", note, earned)


def _payments(
    grid: Grid, quote: Quote, terms: TermRefs, sums: Sums, shapes: Shapes
) -> tuple[Ref, Ref]:
    grid.block("How it is paid")
    price, total, digits = quote.price, sums.paid.total, shapes.digits
    yarn = total_of(sums.costs.of(LineKind.YARN))
    share = rounded(f"{total}*{terms.deposit_share}", digits)
    other = f'IF({terms.deposit}="{YARN}",MIN({rounded(yarn, digits)},{total}),0)'
    asked = f'IF({terms.deposit}="{SHARE_OF_TOTAL}",{share},{other})'
    deposit = figure(
        grid,
        "deposit",
        "Deposit",
        "when the order is agreed",
        reckoned(asked, price.deposit, shapes.money),
    )
    rest = rounded(f"{total}-{deposit}", digits)
    cell = reckoned(rest, price.balance, shapes.money)
    return deposit, figure(grid, "balance", "Balance", "before it is handed over", cell)


def _other_currency(
    grid: Grid, quote: Quote, exchange: ExchangeRate, total: Ref, shapes: Shapes
) -> Ref:
    """Write the total in the buyer's currency, at a stated rate with its cushion."""
    code = exchange.currency
    day = f"of {shapes.speech.day(exchange.day)}"
    label = f"{code} for one {shapes.speech.currency}"
    rate = figure(grid, "exchange_rate", label, day, yours(exchange.rate, FINE))
    cushion = figure(
        grid, "cushion", "Cushion", "in case the rate moves", yours(exchange.cushion, SHARE)
    )
    digits = minor_digits(code)
    amount = Cell(
        Formula(
            rounded(f"{total}*{rate}*(1+{cushion})", digits), exchange.convert(quote.price.total)
        ),
        Look.STRONG,
        sheet_money(shapes.speech, code),
    )
    return figure(grid, "buyer_total", f"The buyer pays in {code}", "", amount)


def _key(expression: str, value: Value, shape: str) -> Cell:
    return Cell(Formula(expression, value), Look.STRONG, shape)
