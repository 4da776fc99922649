"""How a total is paid, as the core splits it, each payment as an expression."""

from __future__ import annotations

from exports.sale_formulas.fee_formulas import Part
from exports.sale_formulas.term_cells import NONE, SHARE_OF_TOTAL, YARN_AND_SHARE, TermRefs
from exports.sheets.cells import rounded


def deposit_of(terms: TermRefs, yarn: str, total: Part, digits: int) -> str:
    """Return the deposit: a share, the yarn with or without a share of the rest, or none."""
    share = rounded(f"{total}*{terms.deposit_share}", digits)
    more = rounded(f"({total}-{yarn})*{terms.deposit_share}", digits)
    with_yarn = f'{yarn}+IF({terms.deposit}="{YARN_AND_SHARE}",{more},0)'
    other = f'IF({terms.deposit}="{NONE}",0,{rounded(f"MIN({with_yarn},{total})", digits)})'
    return f'IF({terms.deposit}="{SHARE_OF_TOTAL}",{share},{other})'


def at_half_of(terms: TermRefs, deposit: Part, total: Part, digits: int) -> str:
    """Return the second payment: a share of the total, at most what the deposit leaves."""
    share = rounded(f"{total}*{terms.at_half}", digits)
    return f"MIN({share},{rounded(f'{total}-{deposit}', digits)})"


def rest_of(total: Part, deposit: Part, at_half: Part, digits: int) -> str:
    """Return what is left after a deposit and a second payment."""
    return rounded(f"{total}-{deposit}-{at_half}", digits)


def payments_of(*parts: Part) -> str:
    """Return how many payments there are: those of more than nothing, and at least one."""
    asked = "+".join(f"IF({part}>0,1,0)" for part in parts)
    return f"MAX(1,{asked})"
