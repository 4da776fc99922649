"""What is left for the maker, and how the buyer pays."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.costing_workbook.costing.costs_block import CostRefs
from exports.costing_workbook.costing.price_block import PriceRefs
from exports.costing_workbook.costing.terms_block import QUOTED_HEADS
from exports.costing_workbook.hours.parts_block import HourRefs
from exports.sale_formulas.sale_cells import deposit_of, earned_of, margin_of, profit_of
from exports.sale_formulas.term_cells import TermRefs
from exports.sheets.cells import Ref, reckoned, rounded, strong, yours
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Grid
from exports.sheets.number_formats import SHARE, Shapes
from exports.sheets.rules import SHARE as A_SHARE
from exports.sheets.rules import SOME
from quoting.core.ground.currencies import minor_digits
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price import Price
from quoting.core.quote.quote import Quote
from quoting.core.workshop.exchange import ExchangeRate
from quoting.wording import sheet_money

RATE = "#,##0.0#####"
"""Six digits behind the point, as reference rates are published at most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultRefs:
    """What is left, and the two payments."""

    profit: Ref
    margin: Ref
    earned: Ref
    deposit: Ref
    balance: Ref
    buyer_total: Ref | None


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
    profit, margin, earned = _left(grid, quote, sums, shapes)
    deposit, balance = _payments(grid, quote, terms, sums, shapes)
    return ResultRefs(
        profit=profit,
        margin=margin,
        earned=earned,
        deposit=deposit,
        balance=balance,
        buyer_total=_buyer_total(grid, quote.price, sums.paid.total, shapes),
    )


def _buyer_total(grid: Grid, price: Price, total: Ref, shapes: Shapes) -> Ref | None:
    if price.exchange is None or price.buyer_total is None:
        return None
    return _other_currency(grid, price.exchange, price.buyer_total, total, shapes)


def _left(grid: Grid, quote: Quote, sums: Sums, shapes: Shapes) -> tuple[Ref, Ref, Ref]:
    grid.block("What is left for you")
    grid.line(*QUOTED_HEADS)
    price, paid, digits, money = quote.price, sums.paid, shapes.digits, shapes.money
    left = profit_of(paid.total, paid.tax, sums.fees, sums.costs.total, digits)
    profit = figure(
        grid,
        "Profit",
        strong(left, price.profit, money),
        "after your pay and every cost",
        name="profit",
    )
    margin = reckoned(margin_of(profit, paid.total, paid.tax), price.margin, SHARE)
    note = "profit, of the net price"
    reached = figure(grid, "Margin reached", margin, note, name="margin_reached")
    pay = sums.costs.of(LineKind.MAKING, LineKind.OFFICE)
    hourly = earned_of(profit, pay, sums.hours.total, digits)
    earned = strong(hourly, price.earned_per_hour, money)
    note = "your pay and the profit, over all hours"
    return profit, reached, figure(grid, "An hour earns", earned, note, name="earned_per_hour")


def _payments(
    grid: Grid, quote: Quote, terms: TermRefs, sums: Sums, shapes: Shapes
) -> tuple[Ref, Ref]:
    grid.block("How it is paid")
    grid.line(*QUOTED_HEADS)
    price, total, digits = quote.price, sums.paid.total, shapes.digits
    yarn = rounded(sums.costs.of(LineKind.YARN), digits)
    asked = reckoned(deposit_of(terms, yarn, total, digits), price.deposit, shapes.money)
    deposit = figure(grid, "Deposit", asked, "when the order is agreed", name="deposit")
    rest = reckoned(rounded(f"{total}-{deposit}", digits), price.balance, shapes.money)
    return deposit, figure(grid, "Balance", rest, "before it is handed over", name="balance")


def _other_currency(
    grid: Grid, exchange: ExchangeRate, buyer_total: Decimal, total: Ref, shapes: Shapes
) -> Ref:
    """Write the total in the buyer's currency, at a stated rate with its cushion."""
    code, digits = exchange.currency, minor_digits(exchange.currency)
    day = f"of {shapes.speech.day(exchange.day)}"
    rate = figure(grid, f"{code} paid", yours(exchange.rate, RATE, SOME), day, name="exchange_rate")
    per = figure(
        grid, f"for {shapes.speech.currency}", yours(exchange.per, RATE, SOME), name="exchange_per"
    )
    share = yours(exchange.cushion, SHARE, A_SHARE)
    cushion = figure(grid, "Cushion", share, "in case the rate moves", name="cushion")
    amount = strong(
        rounded(f"{total}*{rate}*(1+{cushion})/{per}", digits),
        buyer_total,
        sheet_money(shapes.speech, code),
    )
    return figure(grid, f"The buyer pays in {code}", amount, name="buyer_total")
