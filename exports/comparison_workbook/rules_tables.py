"""The trade's rules of thumb for a price, and what each would pay an hour."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from exports.comparison_workbook.counts_table import CountRefs
from exports.comparison_workbook.results_table import Sums
from exports.comparison_workbook.size_rows import Rows
from exports.comparison_workbook.sold_table import Selling, SoldRefs, sold_table
from exports.comparison_workbook.terms_sheet import Shared
from exports.sheets.cells import Formula, Ref, rounded
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from quoting.core.price.cost_lines import LineKind
from quoting.core.weighing.comparison import Rule
from quoting.wording import rule_words


def rules_tables(
    grid: Grid,
    rows: Rows,
    sums: Sequence[Sums],
    sales: Sequence[Selling],
    shared: Shared,
    shapes: Shapes,
) -> dict[Rule, list[SoldRefs]]:
    """Write a table for each rule and return the cells of every size compared."""
    asked = sums[: rows.count]
    bases = [own if rows.base is None else sums[rows.base] for own in asked]
    found = {}
    for rule in Rule:
        ruled = [
            replace(
                selling,
                each=_each(rule, own, base, shared, shapes),
                sold=own.sized.sold_by(rule),
            )
            for selling, own, base in zip(sales, asked, bases, strict=False)
        ]
        found[rule] = sold_table(grid, rule_words(rule, shapes.speech), ruled, shared, shapes)
    return found


def _each(rule: Rule, own: Sums, base: Sums, shared: Shared, shapes: Shapes) -> Formula:
    """Return the price of one blanket by a rule, rounded once; the base's carried over, or ×3."""
    if rule is Rule.THREE_TIMES_MATERIALS:
        amounts = own.cost.amounts
        materials = f"({amounts[LineKind.YARN]}+{amounts[LineKind.EXTRA]})"
        expression = f"3*{materials}/{shared.quantity}"
    else:
        mine, other = (_measure(rule, some.count) for some in (own, base))
        expression = f"{base.sold.each}*{mine}/{other}"
    return Formula(rounded(expression, shapes.digits), own.sized.price_by(rule))


def _measure(rule: Rule, count: CountRefs) -> Ref:
    """Return the cell of what a price is carried over by."""
    return count.area if rule is Rule.BY_AREA else count.grams
