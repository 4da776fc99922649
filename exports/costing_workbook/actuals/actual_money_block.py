"""What an order really came to, and what an hour of it really earned."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from exports.costing_workbook.actuals.actual_line import (
    EMPTY,
    ActualLine,
    compare_line,
    number_of,
)
from exports.costing_workbook.actuals.known import Actuals
from exports.costing_workbook.costing.found import Found
from exports.sale_formulas.sale_cells import earned_of
from exports.sheets.cells import Formula, Look, heads, rounded, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import HOURS, Shapes
from exports.sheets.rules import AMOUNT
from quoting.core.ground.money import product, round_money
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote

TO_PAY = AMOUNT.or_empty()
OUTLAYS = {
    "Yarn": (LineKind.YARN,),
    "Extras": (LineKind.EXTRA,),
    "Packaging and delivery": (LineKind.PACKAGING, LineKind.DELIVERY),
}


def money_block(
    grid: Grid, quote: Quote, found: Found, hours: ActualLine, shapes: Shapes, known: Actuals
) -> None:
    """Write what was paid and what it was paid for; what is left is earned in all hours.

    Overhead falls on the hours that it really took, unless it is typed.
    """
    price, sums, money = quote.price, found.sums, shapes.money
    grid.block("What it came to")
    grid.line(*heads("", "estimated", "really", "difference", "of the estimate"))

    def line(
        label: str, expression: str, value: Decimal, really: Decimal | None = None
    ) -> ActualLine:
        formula = Formula(expression, value)
        return compare_line(grid, words(label), formula, money, TO_PAY, known=really)

    paid = line("The buyer paid", str(sums.paid.total), price.total, known.paid)
    spent = [
        line("Sales tax", str(sums.paid.tax), price.tax),
        line("Fees", str(sums.fees), price.fees),
        *(
            line(
                label,
                sums.costs.of(*kinds),
                price.amount(*kinds),
                known.yarn_cost if LineKind.YARN in kinds else None,
            )
            for label, kinds in OUTLAYS.items()
        ),
    ]
    overhead = line("Overhead", sums.costs.of(LineKind.OVERHEAD), price.amount(LineKind.OVERHEAD))
    rate = sums.costs.overhead_rate
    _earned(grid, quote, _left(paid, spent, overhead, hours, _Rate(rate, quote, shapes)), shapes)


@dataclass(frozen=True, slots=True)
class _Rate:
    """The overhead of an hour: the cell that has it, and what it comes to in some hours."""

    at: str
    quote: Quote
    shapes: Shapes

    def on(self, hours: ActualLine) -> Formula:
        """Return the overhead of the hours that it really took."""
        expression = rounded(f"{hours.really}*{self.at}", self.shapes.digits)
        if not hours.is_known:
            return Formula(expression, EMPTY)
        each = self.quote.workshop.pay.overhead_per_hour
        amount = product(hours.best_value, each)
        return Formula(expression, round_money(amount, self.quote.price.currency))


@dataclass(frozen=True, slots=True)
class _Left:
    """What is left for the maker's hours, and whether anything is known yet of what really was."""

    estimated: Formula
    really: Formula
    hours: ActualLine
    is_typed: str
    is_known: bool

    def once_typed(self, formula: Formula) -> Formula:
        """Return a figure that is nothing until what really was is known of something."""
        value = formula.value if self.is_known else EMPTY
        return Formula(f'IF({self.is_typed},{formula.expression},"")', value)


def _left(
    paid: ActualLine,
    spent: Sequence[ActualLine],
    overhead: ActualLine,
    hours: ActualLine,
    rate: _Rate,
) -> _Left:
    """Return what was paid less all that it was paid for."""
    lines, others, own = (paid, *spent, overhead), (paid, *spent), rate.on(hours)
    follows = f'IF({hours.really}="",{overhead.estimated},{own.expression})'
    fell = f'IF({overhead.really}="",{follows},{overhead.really})'
    fell_value = number_of(own.value) if hours.is_known else overhead.best_value
    digits, price = rate.shapes.digits, rate.quote.price
    first, *rest = (each.best_value for each in others)
    return _Left(
        estimated=Formula(
            rounded("-".join(str(each.estimated) for each in lines), digits),
            price.profit + price.own_pay,
        ),
        really=Formula(
            rounded("-".join([*(each.best for each in others), fell]), digits),
            first - sum(rest) - fell_value,
        ),
        hours=hours,
        is_typed=f"""OR({",".join(f'{each.really}<>""' for each in (hours, *lines))})""",
        is_known=any(each.is_known for each in (hours, *lines)),
    )


def _earned(grid: Grid, quote: Quote, left: _Left, shapes: Shapes) -> None:
    """Write what is left for the maker's hours, and what one of them earned."""
    price, digits, money = quote.price, shapes.digits, shapes.money
    rest = compare_line(
        grid,
        words("Left for your hours", Look.FOOT),
        left.estimated,
        money,
        left.once_typed(left.really),
    )
    took = compare_line(
        grid,
        words("in so many hours"),
        Formula(str(left.hours.estimated), price.hours),
        HOURS,
        left.once_typed(Formula(left.hours.best, left.hours.best_value)),
    )
    earned = compare_line(
        grid,
        words("An hour earned"),
        Formula(earned_of(str(rest.estimated), "0", took.estimated, digits), price.earned_per_hour),
        money,
        left.once_typed(
            Formula(
                earned_of(str(rest.really), "0", took.really, digits),
                _an_hour(left, price.currency),
            )
        ),
    )
    grid.name("really_earned", earned.really)


def _an_hour(left: _Left, currency: str) -> Decimal:
    """Return what is left over the hours that it took; nothing where there are none."""
    hours = left.hours.best_value
    return round_money(number_of(left.really.value) / hours, currency) if hours else Decimal(0)
