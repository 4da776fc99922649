"""What a sale leaves, beside what the maker wants for an hour, and how it is paid."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.comparison_workbook.costs_table import TITLE, CostRefs
from exports.comparison_workbook.counts_table import CountRefs
from exports.comparison_workbook.sized import Rows, Sized
from exports.comparison_workbook.sold_table import SoldRefs
from exports.comparison_workbook.terms_sheet import Shared
from exports.workbook.cells import Ref, heads, reckoned, rounded, words
from exports.workbook.grid import Grid
from exports.workbook.shapes import SHARE, Shapes
from exports.workbook.terms_block import SHARE_OF_TOTAL, YARN
from quoting.core.costing import LineKind
from quoting.core.money import round_money
from quoting.core.price import MARGIN_DIGITS


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultRefs:
    """What one size leaves and how it is paid."""

    margin: Ref
    pay: Ref
    per_area: Ref


@dataclass(frozen=True, slots=True)
class Sums:
    """What the results of one size are reckoned from."""

    sized: Sized
    cost: CostRefs
    count: CountRefs
    sold: SoldRefs


def results_table(
    grid: Grid, rows: Rows, sums: list[Sums], shared: Shared, shapes: Shapes
) -> list[ResultRefs]:
    """Write what every size compared leaves and return the cells, in order."""
    grid.block("What each sale comes to")
    grid.line(*heads("size", "margin", "hourly pay", "price of 100 cm²", "deposit", "balance"))
    return [_size(grid, own, shared, shapes) for own in sums[: rows.count]]


def _size(grid: Grid, own: Sums, shared: Shared, shapes: Shapes) -> ResultRefs:
    digits, money, sold = shapes.digits, shapes.money, own.sold
    quote, terms = own.sized.quote, shared.terms
    net = f"({sold.total}-{sold.tax})"
    margin = rounded(f"{sold.profit}/{net}", MARGIN_DIGITS)
    per_area = rounded(f"{sold.each}*100/{own.count.area}", digits)
    yarn = f"MIN({own.cost.amounts[LineKind.YARN]},{sold.total})"
    share = rounded(f"{sold.total}*{terms.deposit_share}", digits)
    other = f'IF({terms.deposit}="{YARN}",{yarn},0)'
    deposit = f'IF({terms.deposit}="{SHARE_OF_TOTAL}",{share},{other})'
    rest = rounded(f"{sold.total}-{TITLE}!E{grid.next_row}", digits)
    of_area = round_money(
        quote.price.each * 100 / Decimal(own.count.area.value), quote.price.currency
    )
    refs = grid.line(
        words(own.sized.name),
        reckoned(f"IF({net}=0,0,{margin})", quote.price.margin, SHARE),
        reckoned(str(shared.hour.making), shared.hour.making.value, money),
        reckoned(per_area, of_area, money),
        reckoned(deposit, quote.price.deposit, money),
        reckoned(rest, quote.price.balance, money),
    )
    return ResultRefs(margin=refs[1], pay=refs[2], per_area=refs[3])
