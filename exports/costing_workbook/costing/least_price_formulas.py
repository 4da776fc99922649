"""The least prices, and what an hour earns, as the core reckons them, as expressions."""

from __future__ import annotations

from exports.costing_workbook.costing.price_block import PriceRefs
from exports.costing_workbook.costing.result_block import Sums
from exports.sale_formulas.fee_formulas import Part
from exports.sale_formulas.price_formula import FactorRefs, net_factor
from exports.sale_formulas.term_cells import TermRefs
from exports.sheets.cells import rounded
from quoting.core.price.cost_lines import LineKind


def price_covering_formula(
    cost: Part, terms: TermRefs, factors: FactorRefs, paid: PriceRefs, quantity: int, digits: int
) -> str:
    """Return the price of one that covers a cost, as `price_covering`; nothing where none does."""
    left = f"(1/{net_factor(terms, factors.rate)}-{factors.price_fees})"
    fees = f"{paid.payments}*{factors.fixed_fees}+{factors.delivery_fees}*{terms.delivery}"
    delivered = f"{terms.delivery}/{net_factor(terms, factors.delivery_rate)}"
    each = f"MAX(0,{cost}+{fees}-{delivered})/{left}/{quantity}"
    whole = rounded(f"ROUNDUP(ROUND({each}*10^{digits},6),0)/10^{digits}", digits)
    return f"IF({left}>0,{whole},0)"


def earned_in_formula(hours: Part, profit: Part, sums: Sums, digits: int) -> str:
    """Return what an hour earns if they turn out so many, as `earned_in`; nothing without any."""
    kept = sums.costs.of(LineKind.MAKING, LineKind.OFFICE, LineKind.OVERHEAD)
    spent = rounded(f"{hours}*{sums.costs.overhead_rate}", digits)
    return f"IF({hours}>0,{rounded(f'({profit}+{kept}-{spent})/{hours}', digits)},0)"
