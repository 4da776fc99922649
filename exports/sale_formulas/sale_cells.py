"""What becomes of a solved price: rounding, the least, tax and total, each as an expression.

Amounts are rounded once, to the `digits` of the currency.
"""

from __future__ import annotations

from exports.sale_formulas.fee_formulas import Part, added_of
from exports.sale_formulas.term_cells import GIVEN, TermRefs
from exports.sheets.cells import rounded
from quoting.core.price.price import MARGIN_DIGITS
from quoting.core.workshop.selling import TaxShown


def shown_of(terms: TermRefs, asked: Part, digits: int) -> str:
    """Return the price of one as it is shown: up to a whole step; a given one to the minor unit."""
    steps = f"ROUNDUP(ROUND({asked}/{terms.step},6),0)*{terms.step}"
    up = f"IF({terms.step}>0,{steps},{asked})"
    return rounded(f'IF({terms.target}="{GIVEN}",{asked},{up})', digits)


def rushed(terms: TermRefs, asked: Part) -> str:
    """Return an unrounded price with the rush on it."""
    return f"{asked}*(1+{terms.rush})"


def discounted(terms: TermRefs, asked: Part) -> str:
    """Return an unrounded price with the rush on it and the discount off that."""
    return f"{rushed(terms, asked)}*(1-{terms.discount})"


def at_least(terms: TermRefs, shown: Part, digits: int) -> str:
    """Return a price that is shown, no less than the least; a given price stays as it is.

    Where no price meets the target there is none to lift.
    """
    least = shown_of(terms, terms.minimum, digits)
    return f'IF(OR({terms.target}="{GIVEN}",{shown}<=0),{shown},MAX({shown},{least}))'


def tax_of(terms: TermRefs, rate: Part, price: Part, digits: int) -> str:
    """Return the sales tax of a price, inside it or to be added."""
    taxed = f'({price}+IF({terms.on_delivery}="yes",{terms.delivery},0))*{rate}'
    inside = f'/IF({terms.shown}="{TaxShown.INCLUDED.value}",1+{rate},1)'
    return rounded(f"{taxed}{inside}", digits)


def total_of_sale(terms: TermRefs, price: Part, tax: Part, digits: int) -> str:
    """Return all that the buyer pays."""
    return rounded(f"{price}+{terms.delivery}+{added_of(terms, tax)}", digits)


def profit_of(total: Part, tax: Part, fees: Part, cost: Part, digits: int) -> str:
    """Return what is left after tax, fees and every cost."""
    return rounded(f"{total}-{tax}-{fees}-{cost}", digits)


def margin_of(profit: Part, total: Part, tax: Part) -> str:
    """Return the profit as a share of the net price; nothing where that is nothing."""
    net = f"({total}-{tax})"
    return f"IF({net}=0,0,{rounded(f'{profit}/{net}', MARGIN_DIGITS)})"


def earned_of(profit: Part, pay: str, hours: Part, digits: int) -> str:
    """Return the maker's pay and profit over all hours; nothing where there are none."""
    return f"IF({hours}>0,{rounded(f'({profit}+{pay})/{hours}', digits)},0)"
