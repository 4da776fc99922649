"""What should hold of a comparison as a whole, beside what its lines say of themselves."""

from __future__ import annotations

from collections.abc import Iterator

from exports.comparison_workbook.results_table import Sums
from exports.comparison_workbook.shares_table import DIFFERS
from exports.comparison_workbook.terms_sheet import Shared
from exports.comparison_workbook.working_sheet import Answers
from exports.comparison_workbook.yarn_lines import AmountSpans
from exports.costing_workbook.costing.costing_checks import CENTS_APART
from exports.sale_formulas.term_cells import MARGIN, MARKUP
from exports.sheets.cells import Ref, span_of
from exports.sheets.checks import Check
from exports.sheets.grid import Fault
from exports.sheets.number_formats import Shapes
from quoting.core.price.cost_lines import LineKind


def comparison_checks(
    found: Answers, yarn: AmountSpans, shared: Shared, shapes: Shapes
) -> list[Check]:
    """Return the checks, in the order of the working."""
    return [
        _yarn_is_counted(found, yarn, shapes),
        *_targets_are_met(found, shared, shapes),
        _prices_add_up(found),
    ]


def _yarn_is_counted(found: Answers, yarn: AmountSpans, shapes: Shapes) -> Check:
    """Return the check that no line of yarn is left out of the sizes' costs."""
    costs = span_of([cost.amounts[LineKind.YARN] for cost in found.costs])
    apart = f"ROUND(SUM({yarn.amounts})-SUM({costs}),{shapes.digits})<>0"
    said = '"lines and sizes do not come to the same"'
    return Check("The yarn of all sizes is that of all lines", Fault(apart, said))


def _targets_are_met(found: Answers, shared: Shared, shapes: Shapes) -> Iterator[Check]:
    """Yield the checks that every price leaves what is asked; a discount may take it away."""
    terms, sums = shared.terms, found.sums
    slack = f"{CENTS_APART}*10^-{shapes.digits}"
    follows = span_of(found.follows[: len(sums)])
    cost, each, profit, tax, total = (
        span_of(refs) for refs in zip(*map(_cells_of, sums), strict=True)
    )
    for word, asked in (
        (MARGIN, f"{terms.margin}*({total}-{tax})"),
        (MARKUP, f"{terms.markup}*{cost}"),
    ):
        under = f'({follows}="{word}")*({each}>0)*({profit}+{slack}<{asked})'
        condition = f"IF({terms.discount}>0,FALSE,SUMPRODUCT({under})>0)"
        yield Check(f"The {word} is reached", Fault(condition, '"a price leaves less than that"'))


def _cells_of(sums: Sums) -> tuple[Ref, ...]:
    sold = sums.sold
    return sums.cost.total, sold.each, sold.profit, sold.tax, sold.total


def _prices_add_up(found: Answers) -> Check:
    """Return the check that all that a buyer pays goes somewhere, size by size."""
    names, said = span_of(found.shares.names), span_of(found.shares.adds_up)
    first = f'MATCH("{DIFFERS}",{said},0)'
    condition = f'COUNTIF({said},"{DIFFERS}")>0'
    told = f'INDEX({names},{first})&": the parts do not come to the total"'
    return Check("All that a buyer pays is told", Fault(condition, told))
