"""How the buyer pays: a deposit, a second payment, what is left; and in her own currency."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.costing_workbook.costing.costs_block import CostRefs
from exports.costing_workbook.costing.terms_block import QUOTED_HEADS
from exports.sale_formulas.payment_formulas import at_half_of, deposit_of, payments_of, rest_of
from exports.sale_formulas.term_cells import TermRefs
from exports.sheets.cells import Ref, reckoned, rounded, strong, yours
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, SHARE, Shapes
from exports.sheets.rules import SHARE as A_SHARE
from exports.sheets.rules import SOME
from quoting.core.ground.currencies import minor_digits
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price import Price
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import RestDue
from quoting.wording import sheet_money

RATE = "#,##0.0#####"
"""Six digits behind the point, as reference rates are published at most."""

REST_DUE = {
    RestDue.BEFORE_SENDING: "before it is handed over",
    RestDue.ON_DELIVERY: "on delivery",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class PaidRefs:
    """The payments, how many they are, and the total in the buyer's currency.

    The `balance` is all that is left after the deposit.
    """

    deposit: Ref
    at_half: Ref
    rest: Ref
    balance: Ref
    count: Ref
    buyer_total: Ref | None


def paid_block(
    grid: Grid,
    price: Price,
    terms: TermRefs,
    costs: CostRefs,
    total: Ref,
    rest_due: RestDue,
    shapes: Shapes,
) -> PaidRefs:
    """Write what is paid when, of what the buyer pays; return the cells."""
    grid.block("How it is paid")
    grid.line(*QUOTED_HEADS)
    digits, parts = shapes.digits, price.parts

    def write(name: str, label: str, formula: str, amount: Decimal, note: str) -> Ref:
        return figure(grid, label, reckoned(formula, amount, shapes.money), note, name=name)

    yarn, accepted = rounded(costs.of(LineKind.YARN), digits), "when the order is agreed"
    first = deposit_of(terms, yarn, total, digits)
    deposit = write("deposit", "Deposit", first, parts.deposit, accepted)
    second = at_half_of(terms, deposit, total, digits)
    at_half = write("at_half", "Part payment", second, parts.at_half, "when half is made")
    last = rest_of(total, deposit, at_half, digits)
    rest = write("rest", "Rest", last, parts.rest, REST_DUE[rest_due])
    left = rounded(f"{total}-{deposit}", digits)
    balance = write("balance", "Balance", left, parts.balance, "after the deposit")
    count = reckoned(payments_of(deposit, at_half, rest), parts.count, COUNT)
    return PaidRefs(
        deposit=deposit,
        at_half=at_half,
        rest=rest,
        balance=balance,
        count=figure(grid, "Payments", count, "each bears the fixed fees"),
        buyer_total=_buyer_total(grid, price, total, shapes),
    )


def _buyer_total(grid: Grid, price: Price, total: Ref, shapes: Shapes) -> Ref | None:
    if price.exchange is None or price.buyer_total is None:
        return None
    return _other_currency(grid, price.exchange, price.buyer_total, total, shapes)


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
