"""What an order really came to, and what an hour of it really earned."""

from __future__ import annotations

from decimal import Decimal

from exports.costing_workbook.actuals.actual_line import ActualLine, compare_line
from exports.costing_workbook.summary_sheet import Found
from exports.sheets.cells import Formula, Look, Ref, heads, reckoned, rounded, strong, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import HOURS, Shapes
from exports.sheets.rules import AMOUNT
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote

TO_PAY = AMOUNT.or_empty()
OUTLAYS = {
    "Yarn": (LineKind.YARN,),
    "Extras": (LineKind.EXTRA,),
    "Packaging and delivery": (LineKind.PACKAGING, LineKind.DELIVERY),
}


def money_block(grid: Grid, quote: Quote, found: Found, hours: ActualLine, shapes: Shapes) -> None:
    """Write what was paid and what it was paid for; what is left is earned in all hours.

    Overhead falls on the hours that it really took, unless it is typed.
    """
    price, sums, money = quote.price, found.sums, shapes.money
    grid.block("What it came to")
    grid.line(*heads("", "estimated", "really", "difference", "of the estimate"))

    def line(label: str, expression: str, value: Decimal) -> ActualLine:
        return compare_line(grid, words(label), Formula(expression, value), money, TO_PAY)

    paid = line("The buyer paid", str(sums.paid.total), price.total)
    spent = [
        line("Sales tax", str(sums.paid.tax), price.tax),
        line("Fees", str(sums.fees), price.fees),
        *(
            line(label, sums.costs.of(*kinds), price.amount(*kinds))
            for label, kinds in OUTLAYS.items()
        ),
    ]
    overhead = line("Overhead", sums.costs.of(LineKind.OVERHEAD), price.amount(LineKind.OVERHEAD))
    own = rounded(f"{hours.really}*{sums.costs.overhead_rate}", shapes.digits)
    follows = f'IF({hours.really}="",{overhead.estimated},{own})'
    fell = f'IF({overhead.really}="",{follows},{overhead.really})'
    outlay = "-".join([*(each.best for each in spent), fell])
    _earned(grid, quote, f"{paid.best}-{outlay}", hours, shapes)


def _earned(grid: Grid, quote: Quote, left: str, hours: ActualLine, shapes: Shapes) -> Ref:
    """Write what is left for the maker's hours, and what one of them earned."""
    price, digits = quote.price, shapes.digits
    kept = rounded(left, digits)
    label = words("Left for your hours", Look.FOOT)
    rest = grid.line(label, None, reckoned(kept, price.profit + price.own_pay, shapes.money))[1]
    took = reckoned(hours.best, price.hours, HOURS)
    at = grid.line(words("in so many hours"), None, took)[1]
    earned = f"IF({at}>0,{rounded(f'{rest}/{at}', digits)},0)"
    cell = strong(earned, price.earned_per_hour, shapes.money)
    return grid.name("really_earned", grid.line(words("An hour earned"), None, cell)[1])
