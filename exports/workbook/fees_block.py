"""What each fee takes: its rate of its base once, and its fixed part for each payment."""

from __future__ import annotations

from decimal import Decimal

from exports.workbook.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    heads,
    reckoned,
    rounded,
    summed,
    total_of,
    words,
)
from exports.workbook.costs_block import FOOT_GAP
from exports.workbook.grid import Grid
from exports.workbook.price_block import PriceRefs
from exports.workbook.shapes import COUNT, SHARE, Shapes
from exports.workbook.solving import sale_of
from exports.workbook.terms_block import FeeRefs, TermRefs
from quoting.core.money import exact, round_money
from quoting.core.quote import Quote
from quoting.core.terms import Fee, FeeBase


def fees_block(grid: Grid, quote: Quote, terms: TermRefs, paid: PriceRefs, shapes: Shapes) -> Ref:
    """Write every part of every fee, also where it is nothing; return the cell of their sum."""
    grid.block("What fees take")
    grid.line(*heads("", "", "of", "", "rate", "amount", figures_from=2))
    refs: list[Ref] = []
    for fee, cells in zip(quote.workshop.fees, terms.fees, strict=True):
        base = _base(cells, terms, paid, fee, quote)
        share = Cell(base, Look.PLAIN, shapes.money)
        rate = reckoned(str(cells.rate), exact(fee.rate), SHARE)
        refs.append(_part(grid, f"{fee.name}, its rate", share, rate, shapes))
        count = reckoned(str(paid.payments), paid.payments.value, COUNT)
        fixed = reckoned(str(cells.fixed), fee.fixed, shapes.money)
        refs.append(_part(grid, f"{fee.name}, on each payment", count, fixed, shapes))
    cell = summed(total_of(refs), quote.price.fees, shapes.money)
    return grid.name("fees", grid.line(words("All fees", Look.FOOT), *FOOT_GAP, cell)[-1])


def _part(grid: Grid, label: str, quantity: Cell, rate: Cell, shapes: Shapes) -> Ref:
    """Write one part of a fee, rounded once."""
    row = grid.next_row
    amount = round_money(_value(quantity) * _value(rate), shapes.speech.currency)
    product = rounded(f"Costing!C{row}*Costing!E{row}", shapes.digits)
    return grid.line(
        words(label), None, quantity, None, rate, reckoned(product, amount, shapes.money)
    )[-1]


def _value(cell: Cell) -> Decimal:
    assert isinstance(cell.content, Formula), "both factors are formulas"  # noqa: S101
    return Decimal(cell.content.value)


def _base(cells: FeeRefs, terms: TermRefs, paid: PriceRefs, fee: Fee, quote: Quote) -> Formula:
    """Return what a fee's rate is taken of: the price, with delivery, or all that is paid."""
    sale, price = sale_of(quote), quote.price
    values = {
        FeeBase.PRICE: price.price,
        FeeBase.PRICE_AND_DELIVERY: price.price + sale.delivery,
        FeeBase.TOTAL: price.total,
    }
    delivered = f"{paid.price}+{terms.delivery}"
    other = f'IF({cells.on}="{FeeBase.PRICE_AND_DELIVERY.value}",{delivered},{paid.total})'
    expression = f'IF({cells.on}="{FeeBase.PRICE.value}",{paid.price},{other})'
    return Formula(expression, values[fee.on])
