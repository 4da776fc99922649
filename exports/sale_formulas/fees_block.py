"""What each fee takes: its rate of its base once, and its fixed part for each payment."""

from __future__ import annotations

from exports.costing_workbook.costs_block import FOOT_GAP
from exports.costing_workbook.price_block import PriceRefs
from exports.costing_workbook.terms_block import TermRefs
from exports.sale_formulas.fee_formulas import base_of
from exports.sheets.cells import (
    Cell,
    Look,
    Ref,
    heads,
    reckoned,
    rounded,
    summed,
    total_of,
    words,
)
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, SHARE, Shapes
from quoting.core.price.cost_lines import Line, Unit
from quoting.core.quote.quote import Quote


def fees_block(grid: Grid, quote: Quote, terms: TermRefs, paid: PriceRefs, shapes: Shapes) -> Ref:
    """Write every part of every fee, also where it is nothing; return the cell of their sum."""
    grid.block("What fees take")
    grid.line(*heads("", "", "of", "", "rate", "amount", figures_from=2))
    cells = [fee for fee in terms.fees for _ in ("its rate", "its fixed part")]
    refs: list[Ref] = []
    for part, fee in zip(quote.price.sold.fee_parts, cells, strict=True):
        if part.unit is Unit.MONEY:
            base = base_of(fee, terms, paid.price, paid.tax, shapes.digits)
            quantity = reckoned(base, part.quantity, shapes.money)
            rate = reckoned(str(fee.rate), part.rate, SHARE)
            refs.append(_part(grid, f"{part.subject}, its rate", quantity, rate, part, shapes))
        else:
            count = reckoned(str(paid.payments), part.quantity, COUNT)
            fixed = reckoned(str(fee.fixed), part.rate, shapes.money)
            label = f"{part.subject}, on each payment"
            refs.append(_part(grid, label, count, fixed, part, shapes))
    cell = summed(total_of(refs), quote.price.fees, shapes.money)
    return grid.name("fees", grid.line(words("All fees", Look.FOOT), *FOOT_GAP, cell)[-1])


def _part(grid: Grid, label: str, quantity: Cell, rate: Cell, part: Line, shapes: Shapes) -> Ref:
    """Write one part of a fee, rounded once."""
    row = grid.next_row
    product = rounded(f"Costing!C{row}*Costing!E{row}", shapes.digits)
    amount = reckoned(product, part.amount, shapes.money)
    return grid.line(words(label), None, quantity, None, rate, amount)[-1]
