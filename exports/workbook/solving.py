"""The equation that the price solves: every factor of it, as expression and as number.

It is `solve_price` of the core, written out: with revenue R = P/g + D/h and fees aP + bD + F.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.workbook.cells import Formula, Ref, span_of, total_of
from exports.workbook.terms_block import GIVEN, MARGIN, MARKUP, NONE, TermRefs
from quoting.core.money import exact
from quoting.core.quote import Quote
from quoting.core.sale import Sale, solve_price
from quoting.core.terms import FeeBase, TaxShown


@dataclass(frozen=True, slots=True, kw_only=True)
class Factors:
    """What the terms come to: payments, tax rates, and the a, b and F of the price's equation."""

    payments: Ref
    rate: Ref
    delivery_rate: Ref
    price_fees: Ref
    delivery_fees: Ref
    fixed_fees: Ref


def sale_of(quote: Quote) -> Sale:
    """Return the terms that a quote was reckoned on."""
    price, workshop = quote.price, quote.workshop
    return Sale(
        cost=price.cost,
        delivery=price.delivery,
        tax=workshop.tax,
        fees=workshop.fees,
        payments=price.payments,
        currency=price.currency,
    )


@dataclass(frozen=True, slots=True)
class TaxFactors:
    """By what a price and a delivery are divided to be net (g, h) or multiplied (v, w)."""

    price: Decimal
    delivery: Decimal
    included: bool

    @property
    def net(self) -> tuple[Decimal, Decimal]:
        """The factors g and h of a price with its tax inside."""
        return (self.price, self.delivery) if self.included else (Decimal(1), Decimal(1))

    @property
    def gross(self) -> tuple[Decimal, Decimal]:
        """The factors v and w of a price that tax is added to."""
        return (Decimal(1), Decimal(1)) if self.included else (self.price, self.delivery)


def tax_factors(sale: Sale) -> TaxFactors:
    """Return one and the rates of a sale's tax."""
    included = sale.tax.shown is TaxShown.INCLUDED
    return TaxFactors(1 + sale.tax_rate, 1 + sale.delivery_tax_rate, included)


def payments(terms: TermRefs, sale: Sale) -> Formula:
    """Return how many payments there are: two where there is a deposit."""
    return Formula(f'IF({terms.deposit}="{NONE}",1,2)', sale.payments)


def charged_rate(terms: TermRefs, sale: Sale) -> Formula:
    """Return the rate of tax that is charged."""
    return Formula(f'IF({terms.registered}="yes",{terms.tax_rate},0)', sale.tax_rate)


def delivery_rate(terms: TermRefs, rate: Ref, sale: Sale) -> Formula:
    """Return the rate of tax that is charged on delivery."""
    return Formula(f'IF({terms.on_delivery}="yes",{rate},0)', sale.delivery_tax_rate)


def price_fees(terms: TermRefs, rate: Ref, sale: Sale) -> Formula:
    """Return a: what fees take of each unit of the price."""
    plain = _rates(terms, FeeBase.PRICE, FeeBase.PRICE_AND_DELIVERY)
    grown = f"{_rates(terms, FeeBase.TOTAL)}*{_grown(terms, rate)}"
    gross, _ = tax_factors(sale).gross
    on_total = sale.fee_rate(FeeBase.TOTAL) * gross
    fixed = sale.fee_rate(FeeBase.PRICE) + sale.fee_rate(FeeBase.PRICE_AND_DELIVERY)
    return Formula(f"{plain}+{grown}", fixed + on_total)


def delivery_fees(terms: TermRefs, rate: Ref, sale: Sale) -> Formula:
    """Return b: what fees take of each unit of the delivery."""
    plain = _rates(terms, FeeBase.PRICE_AND_DELIVERY)
    grown = f"{_rates(terms, FeeBase.TOTAL)}*{_grown(terms, rate)}"
    _, gross = tax_factors(sale).gross
    on_total = sale.fee_rate(FeeBase.TOTAL) * gross
    return Formula(f"{plain}+{grown}", sale.fee_rate(FeeBase.PRICE_AND_DELIVERY) + on_total)


def fixed_fees(terms: TermRefs, count: Ref, sale: Sale) -> Formula:
    """Return F: the fixed parts of all fees, for every payment."""
    value = sale.payments * sum((fee.fixed for fee in sale.fees), Decimal(0))
    return Formula(f"{count}*{total_of([fee.fixed for fee in terms.fees])}", value)


def kept_share(terms: TermRefs, quote: Quote) -> Formula:
    """Return the share of the net revenue that costs and fees may take: 1 − m."""
    return Formula(f'IF({terms.target}="{MARGIN}",1-{terms.margin},1)', _kept(quote))


def _kept(quote: Quote) -> Decimal:
    return 1 - exact(quote.price.target.margin or 0.0)


def costs_to_cover(terms: TermRefs, cost: Ref, quote: Quote) -> Formula:
    """Return the costs with the markup on them: (1 + k)·C."""
    value = (1 + exact(quote.price.target.markup or 0.0)) * quote.price.cost
    return Formula(f'{cost}*IF({terms.target}="{MARKUP}",1+{terms.markup},1)', value)


def left_of_unit(terms: TermRefs, kept: Ref | str, factors: Factors, quote: Quote) -> Formula:
    """Return what each unit of the price leaves for costs: (1 − m)/g − a."""
    g, _ = tax_factors(sale_of(quote)).net
    fees = factors.price_fees.value
    assert isinstance(fees, Decimal), "the equation is solved in decimals"  # noqa: S101
    value = _kept(quote) / g - fees
    return Formula(f"{kept}/{net_factor(terms, factors.rate)}-{factors.price_fees}", value)


def solved_price(
    terms: TermRefs,
    factors: Factors,
    quote: Quote,
    *,
    kept: Ref | str,
    cover: Ref | str,
    left: Ref | str,
) -> Formula:
    """Return the price of all blankets that solves the equation, or the given price of one.

    `kept`, `cover` and `left` are the cells of `kept_share`, `costs_to_cover` and `left_of_unit`.
    """
    delivered = f"{kept}*{terms.delivery}/{net_factor(terms, factors.delivery_rate)}"
    fees = f"{factors.fixed_fees}+{factors.delivery_fees}*{terms.delivery}"
    solved = f"IF({left}>0,MAX(0,({cover}+{fees}-{delivered})/{left}),0)"
    target = quote.price.target
    value = solve_price(sale_of(quote), target) if target.given is None else target.given
    return Formula(f'IF({terms.target}="{GIVEN}",{terms.given},{solved})', value)


def net_factor(terms: TermRefs, rate: Ref) -> str:
    """Return g or h, for the rate of the price or of the delivery, as an expression."""
    return f'IF({terms.shown}="{TaxShown.INCLUDED.value}",1+{rate},1)'


def _grown(terms: TermRefs, rate: Ref) -> str:
    return f'IF({terms.shown}="{TaxShown.INCLUDED.value}",1,1+{rate})'


def _rates(terms: TermRefs, *bases: FeeBase) -> str:
    """Return the summed rates of the fees on some bases."""
    if not terms.fees:
        return "0"
    on, rates = (span_of([getattr(fee, cell) for fee in terms.fees]) for cell in ("on", "rate"))
    return "+".join(f'SUMPRODUCT(({on}="{base.value}")*{rates})' for base in bases)
