"""What should hold of a costing whatever is changed in it."""

from __future__ import annotations

from collections.abc import Iterator

from exports.costing_workbook.costing.costs_block import costs_check
from exports.costing_workbook.costing.found import Found
from exports.sale_formulas.price_formula import net_factor
from exports.sale_formulas.term_cells import MARGIN, MARKUP
from exports.sheets.checks import Check
from exports.sheets.grid import Fault

CENTS_APART = 5
"""Minor units by which the rounding of price, tax and fees may miss a margin."""


def costing_checks(found: Found, digits: int) -> Iterator[Check]:
    """Yield the checks of costs, margin, and net and gross."""
    yield costs_check(found.sums.costs, digits)
    yield _margin_check(found, digits)
    yield _net_check(found, digits)


def _margin_check(found: Found, digits: int) -> Check:
    """Return the check that the price brings what it is to bring; a discount is the maker's own."""
    terms, paid, profit = found.terms, found.paid, found.result.profit
    wanted = (
        f'IF({terms.target}="{MARGIN}",{terms.margin}*({paid.total}-{paid.tax}),'
        f'IF({terms.target}="{MARKUP}",{terms.markup}*{found.sums.costs.total},{profit}))'
    )
    short = f"{profit}+{CENTS_APART}*10^-{digits}<{wanted}"
    return Check(
        "Margin or markup is reached",
        Fault(
            f"AND({terms.discount}=0,{short})",
            f'"the profit is less than the "&{terms.target}&" asks for"',
        ),
    )


def _net_check(found: Found, digits: int) -> Check:
    """Return the check that net and tax make up the gross: what is net of the tax is taxed."""
    terms, paid, factors = found.terms, found.paid, found.factors
    net = (
        f"{paid.price}/{net_factor(terms, factors.rate)}"
        f"+{terms.delivery}/{net_factor(terms, factors.delivery_rate)}"
    )
    return Check(
        "Net and tax make up the gross",
        Fault(
            f"ABS({paid.total}-{paid.tax}-({net}))>10^-{digits}",
            '"what the buyer pays is not the net price with its tax"',
        ),
    )
