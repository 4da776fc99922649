"""The first sheet: whose quote it is, what it comes to, and what an hour earns, on one page."""

from __future__ import annotations

from exports.costing_workbook.costing.found import Found
from exports.costing_workbook.costing.least_price_formulas import (
    earned_in_formula,
    price_covering_formula,
)
from exports.costing_workbook.costing.paid_block import PaidRefs
from exports.sheets.cells import Cell, Formula, Look, beside, dated, heads, quoted, reckoned, words
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from exports.sheets.number_formats import HOURS, ROUGH_SHARE, Shapes
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.least_prices import break_even_price, earned_in, paying_price
from quoting.core.price.price import Price
from quoting.core.quote.quote import Quote
from quoting.wording import count_figures, number_words, sheet_day, sheet_money
from quoting.wording.shapes import made_size

TITLE = "Summary"
GROSS, EARNED = "Gross: the buyer pays", "An hour earns"
WIDTHS = (48, 24, 18, 18, 18)


def write_summary(grid: Grid, quote: Quote, found: Found, shapes: Shapes) -> None:
    """Write the sheet."""
    heading(grid, quote.order.title)
    _quote(grid, quote, shapes)
    _buyer(grid, quote, found, shapes)
    _hours(grid, quote, found, shapes)
    _left(grid, found, shapes)
    _least(grid, quote, found, shapes)


def _quote(grid: Grid, quote: Quote, shapes: Shapes) -> None:
    """Write what the quote is, its days as days that can be reckoned with."""
    speech = shapes.speech
    day = sheet_day(speech)
    grid.block("The quote")
    grid.line(words("Number"), words(number_words(quote.number)))
    if quote.order.buyer:
        grid.line(words("For"), words(quote.order.buyer))
    grid.line(words("Blankets"), words(speech.count(quote.order.quantity, "blanket"), Look.NOTE))
    size = made_size(quote.plan, speech)
    grid.line(words("Size"), words(size, Look.NOTE))
    for label, said in count_figures(quote, speech).items():
        grid.line(words(label), words(said, Look.NOTE))
    for label, date in (
        ("Given on", quote.day),
        ("Valid until", quote.valid_until),
        ("Ready by", quote.ready_by),
    ):
        grid.line(words(label), dated(date, day))
    grid.line(words("All amounts are in"), words(speech.currency))


def _buyer(grid: Grid, quote: Quote, found: Found, shapes: Shapes) -> None:
    """Write what the buyer pays: net, tax and gross."""
    price, paid, split = quote.price, found.paid, found.split
    grid.block("What the buyer pays")
    _heads(grid)
    lines = (
        ("Price of one blanket", f"{paid.price}/{price.quantity}", price.each),
        ("Price of all blankets", paid.price, price.price),
        ("Delivery", found.terms.delivery, price.delivery),
        ("Net, before sales tax", f"{paid.total}-{paid.tax}", price.total - price.tax),
        ("Sales tax", paid.tax, price.tax),
        (GROSS, paid.total, price.total),
        ("Deposit", split.deposit, price.deposit),
        ("Balance", split.balance, price.balance),
        ("of it when half is made", split.at_half, price.parts.at_half),
    )
    for label, formula, value in lines:
        _line(grid, label, Formula(str(formula), value), shapes.money)
    _buyers_own(grid, price, split, shapes)


def _buyers_own(grid: Grid, price: Price, split: PaidRefs, shapes: Shapes) -> None:
    """Write what she pays in her own currency, where that is another one."""
    if split.buyer_total is None or price.exchange is None:
        return
    code = price.exchange.currency
    formula = Formula(str(split.buyer_total), split.buyer_total.value)
    _line(grid, f"The buyer pays in {code}", formula, sheet_money(shapes.speech, code))


def _hours(grid: Grid, quote: Quote, found: Found, shapes: Shapes) -> None:
    """Write how few or many hours it may take, and what an hour earns in each case."""
    hours, price, sums = quote.estimate.hours, quote.price, found.sums
    grid.block("The hours, and what an hour earns")
    grid.line(*heads("", "hours", "an hour earns", "hours as quoted", "an hour earned, as quoted"))
    for label, ref, own in (
        (_surely("Fewest", sums.hours.how_sure), sums.hours.low, hours.low),
        (words("Most likely"), sums.hours.total, hours.total),
        (_surely("Most", sums.hours.how_sure), sums.hours.high, hours.high),
    ):
        at, earned = beside("B", grid.next_row), earned_in(own, price)
        formula = earned_in_formula(at, found.result.profit, sums, shapes.digits)
        grid.line(
            label,
            reckoned(str(ref), own, HOURS),
            reckoned(formula, earned, shapes.money),
            quoted(own, HOURS),
            quoted(earned, shapes.money),
        )


def _surely(label: str, sure: Formula) -> Cell:
    """Return a label, and how surely it holds."""
    return Cell(Formula(f'"{label}, "&{sure.expression}', f"{label}, {sure.value}"))


def _left(grid: Grid, found: Found, shapes: Shapes) -> None:
    sums, result = found.sums, found.result
    grid.block("What is left")
    _heads(grid)
    for label, ref, shape in (
        ("All costs, your pay with them", sums.costs.total, shapes.money),
        ("Fees", sums.fees, shapes.money),
        ("Profit, after your pay", result.profit, shapes.money),
        ("Margin reached", result.margin, ROUGH_SHARE),
        (EARNED, result.earned, shapes.money),
    ):
        _line(grid, label, Formula(str(ref), ref.value), shape)


def _least(grid: Grid, quote: Quote, found: Found, shapes: Shapes) -> None:
    """Write the prices of one blanket under which it stops paying."""
    price, costs = quote.price, found.sums.costs
    materials = f"({costs.total}-{costs.of(LineKind.MAKING, LineKind.OFFICE)})"
    grid.block("The least price of one blanket, without delivery")
    _heads(grid)
    for label, cost, each in (
        ("Breaks even: all is paid but your own hours", materials, break_even_price(price)),
        ("Pays your hours too, and no profit", costs.total, paying_price(price)),
    ):
        covering = price_covering_formula(
            cost, found.terms, found.factors, found.paid, price.quantity, shapes.digits
        )
        _line(grid, label, Formula(covering, each), shapes.money)


def _heads(grid: Grid) -> None:
    grid.line(*heads("", "as it stands", "as quoted", "difference"))


def _line(grid: Grid, label: str, now: Formula, shape: str) -> None:
    """Write a figure as it stands, as it was quoted, and the difference."""
    row = grid.next_row
    look = Look.STRONG if label in (GROSS, EARNED) else Look.PLAIN
    difference = reckoned(f"{beside('B', row)}-{beside('C', row)}", 0, shape)
    grid.line(words(label), Cell(now, look, shape), quoted(now.value, shape), difference)
