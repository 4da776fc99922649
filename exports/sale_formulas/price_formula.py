"""The equation that the price solves, each factor of it as the core has it and as an expression.

With revenue R = P/g + D/h and fees aP + bD + F.
"""

from __future__ import annotations

from dataclasses import dataclass

from exports.sale_formulas.fee_formulas import added_of, rates_of
from exports.sale_formulas.term_cells import GIVEN, MARGIN, MARKUP, TermRefs
from exports.sheets.cells import Formula, Ref, Value
from quoting.core.price.price_equation import Equation
from quoting.core.price.sale import Sale
from quoting.core.workshop.selling import TaxShown


@dataclass(frozen=True, slots=True, kw_only=True)
class FactorRefs:
    """What the terms come to: tax rates, and the a and b of the price's equation.

    `fixed_fees` are those of one payment, F that of all of them.
    """

    rate: Ref
    delivery_rate: Ref
    price_fees: Ref
    delivery_fees: Ref
    fixed_fees: Ref


def charged_rate(terms: TermRefs, sale: Sale) -> Formula:
    """Return the rate of tax that is charged."""
    return Formula(f'IF({terms.registered}="yes",{terms.tax_rate},0)', sale.tax_rate)


def delivery_rate(terms: TermRefs, rate: Ref, sale: Sale) -> Formula:
    """Return the rate of tax that is charged on delivery."""
    return Formula(f'IF({terms.on_delivery}="yes",{rate},0)', sale.delivery_tax_rate)


def price_fees(terms: TermRefs, rate: Ref, equation: Equation) -> Formula:
    """Return a: what fees take of each unit of the price."""
    shown = rates_of(terms, lambda base: base.of_price)
    return Formula(f"{shown}+{_fees_on_tax(terms, rate)}", equation.factors.price_fees)


def delivery_fees(terms: TermRefs, rate: Ref, equation: Equation) -> Formula:
    """Return b: what fees take of each unit of the delivery."""
    shown = rates_of(terms, lambda base: base.of_delivery)
    return Formula(f"{shown}+{_fees_on_tax(terms, rate)}", equation.factors.delivery_fees)


def fixed_fees(terms: TermRefs, sale: Sale) -> Formula:
    """Return the fixed parts of all fees, for one payment."""
    return Formula(f"SUM({terms.fees.fixed})", sale.fixed_fees)


def kept_share(terms: TermRefs, equation: Equation) -> Formula:
    """Return the share of the net revenue that costs and fees may take: 1 − m."""
    return Formula(f'IF({terms.target}="{MARGIN}",1-{terms.margin},1)', equation.kept)


def costs_to_cover(terms: TermRefs, cost: Ref, equation: Equation) -> Formula:
    """Return the costs with the markup on them: (1 + k)·C."""
    return Formula(f'{cost}*IF({terms.target}="{MARKUP}",1+{terms.markup},1)', equation.cover)


def left_of_unit(
    terms: TermRefs, kept: Ref | str, factors: FactorRefs, equation: Equation
) -> Formula:
    """Return what each unit of the price leaves for costs: (1 − m)/g − a."""
    net = f"{kept}/{net_factor(terms, factors.rate)}"
    return Formula(f"{net}-{factors.price_fees}", equation.left)


@dataclass(frozen=True, slots=True, kw_only=True)
class EquationRefs:
    """The cells of the price's equation that do not hang on how it is paid.

    `kept`, `cover` and `left` are those of `kept_share`, `costs_to_cover` and `left_of_unit`.
    """

    kept: Ref | str
    cover: Ref | str
    left: Ref | str
    quantity: Ref | int

    def price_of_one(
        self, terms: TermRefs, factors: FactorRefs, payments: Ref | str, asked: Value
    ) -> Formula:
        """Return the unrounded price of one that solves it, or the given one; it is `asked`."""
        delivered = f"{self.kept}*{terms.delivery}/{net_factor(terms, factors.delivery_rate)}"
        fees = f"{payments}*{factors.fixed_fees}+{factors.delivery_fees}*{terms.delivery}"
        solved = f"MAX(0,({self.cover}+{fees}-{delivered})/{self.left})/{self.quantity}"
        given = f'{terms.target}="{GIVEN}"'
        return Formula(f"IF({given},{terms.given},IF({self.left}>0,{solved},0))", asked)


def net_factor(terms: TermRefs, rate: Ref) -> str:
    """Return g or h, for the rate of the price or of the delivery, as an expression."""
    return f'IF({terms.shown}="{TaxShown.INCLUDED.value}",1+{rate},1)'


def _fees_on_tax(terms: TermRefs, rate: Ref) -> str:
    """Return what fees take of the tax that is added to each unit."""
    return f"({rates_of(terms, lambda base: base.of_added_tax)})*{added_of(terms, rate)}"
