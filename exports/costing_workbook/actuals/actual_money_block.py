"""What an order really came to, and what an hour of it really earned."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.costing_workbook.actuals.actual_line import ActualLine, compare_line
from exports.costing_workbook.costing.found import Found
from exports.sale_formulas.sale_cells import earned_of
from exports.sheets.cells import Formula, Look, heads, rounded, words
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
    lines = (paid, *spent, overhead)
    _earned(
        grid,
        quote,
        _Left(
            estimated="-".join(str(each.estimated) for each in lines),
            really="-".join([*(each.best for each in (paid, *spent)), fell]),
            is_typed=f"""OR({",".join(f'{each.really}<>""' for each in (hours, *lines))})""",
        ),
        hours,
        shapes,
    )


@dataclass(frozen=True, slots=True)
class _Left:
    """What is left for the maker's hours, as expressions, and whether anything is typed yet."""

    estimated: str
    really: str
    is_typed: str

    def once_typed(self, expression: str) -> Formula:
        """Return a figure that is nothing until what really was is known of something."""
        return Formula(f'IF({self.is_typed},{expression},"")', "")


def _earned(grid: Grid, quote: Quote, left: _Left, hours: ActualLine, shapes: Shapes) -> None:
    """Write what is left for the maker's hours, and what one of them earned."""
    price, digits, money = quote.price, shapes.digits, shapes.money
    rest = compare_line(
        grid,
        words("Left for your hours", Look.FOOT),
        Formula(rounded(left.estimated, digits), price.profit + price.own_pay),
        money,
        left.once_typed(rounded(left.really, digits)),
    )
    took = compare_line(
        grid,
        words("in so many hours"),
        Formula(str(hours.estimated), price.hours),
        HOURS,
        left.once_typed(hours.best),
    )
    earned = compare_line(
        grid,
        words("An hour earned"),
        Formula(earned_of(str(rest.estimated), "0", took.estimated, digits), price.earned_per_hour),
        money,
        left.once_typed(earned_of(str(rest.really), "0", took.really, digits)),
    )
    grid.name("really_earned", earned.really)
