"""What a comparison says of each size, and what its workbook shows of the same."""

from __future__ import annotations

from decimal import Decimal

from openpyxl.workbook import Workbook

from quoting.core.ground.measures import Units
from quoting.core.ground.money import exact
from quoting.core.weighing.comparison import Compared, Comparison, Rule
from tests.workbook.comparison.blocks import RULES, SHORT, row_under

COLUMNS = "BCDEFGHIJKL"
RULE_COLUMNS = "BCDEFG"

Figures = list[list[Decimal | None]]


def figures(comparison: Comparison) -> Figures:
    """Return what the answers say of each size, and of the rules of thumb for it."""
    return [[*_answers(some), *_rules(some)] for some in comparison.sizes]


def _answers(some: Compared) -> list[Decimal | None]:
    price, hours = some.quote.price, some.quote.estimate.hours
    inches = some.quote.workshop.units is Units.INCHES
    return [
        price.each,
        price.earned_per_hour,
        hours.total,
        hours.low,
        hours.high,
        price.profit,
        price.cost,
        price.total,
        price.margin,
        price.pay_per_hour,
        some.price_per_100_in2 if inches else some.price_per_100_cm2,
    ]


def _rules(some: Compared) -> list[Decimal | None]:
    ruled = {each.rule: each for each in some.rules}
    assert len(ruled) == len(Rule)
    both = ((ruled[rule].price, ruled[rule].earned_per_hour) for rule in Rule)
    return [figure for pair in both for figure in pair]


def shown(book: Workbook, sizes: int) -> Figures:
    """Return the same figures as a workbook shows them."""
    sheet, short, rules = book["Sizes"], row_under(book, SHORT), row_under(book, RULES)
    places = [*((short, x) for x in COLUMNS), *((rules, x) for x in RULE_COLUMNS)]
    cells = [
        [sheet[f"{letter}{first + at}"].value for first, letter in places] for at in range(sizes)
    ]
    return [[None if value is None else exact(value) for value in row] for row in cells]
