"""The equation that the price solves: every factor of it, as expression and as number.

It is `solve_price` of the core, written out: with revenue R = P/g + D/h and fees aP + bD + F.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal

from exports.workbook.cells import Formula, Ref, span_of, total_of
from exports.workbook.terms_block import GIVEN, MARGIN, MARKUP, TermRefs
from quoting.core.costing import LineKind
from quoting.core.money import exact
from quoting.core.offer import Offer, offer_in
from quoting.core.quote import Quote
from quoting.core.sale import Sale
from quoting.core.terms import FeeBase, TaxShown


@dataclass(frozen=True, slots=True, kw_only=True)
class Factors:
    """What the terms come to: tax rates, and the a and b of the price's equation.

    `fixed_fees` are those of one payment, F that of all of them.
    """

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


def fixed_fees(terms: TermRefs, sale: Sale) -> Formula:
    """Return the fixed parts of all fees, for one payment."""
    value = sum((fee.fixed for fee in sale.fees), Decimal(0))
    return Formula(total_of([fee.fixed for fee in terms.fees]), value)


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Equation:
    """The cells of the price's equation that do not hang on how it is paid.

    `kept`, `cover` and `left` are those of `kept_share`, `costs_to_cover` and `left_of_unit`.
    """

    kept: Ref | str
    cover: Ref | str
    left: Ref | str
    quantity: Ref

    def price_of_one(
        self, terms: TermRefs, factors: Factors, payments: Ref | str, asked: Decimal
    ) -> Formula:
        """Return the unrounded price of one that solves it, or the given one; it is `asked`."""
        delivered = f"{self.kept}*{terms.delivery}/{net_factor(terms, factors.delivery_rate)}"
        fees = f"{payments}*{factors.fixed_fees}+{factors.delivery_fees}*{terms.delivery}"
        solved = f"MAX(0,({self.cover}+{fees}-{delivered})/{self.left})/{self.quantity}"
        given = f'{terms.target}="{GIVEN}"'
        return Formula(f"IF({given},{terms.given},IF({self.left}>0,{solved},0))", asked)


def offer_of(quote: Quote, payments: int) -> Offer:
    """Return what a quote would ask in so many payments."""
    price = quote.price
    sale, yarn = replace(sale_of(quote), payments=payments), price.amount(LineKind.YARN)
    return offer_in(sale, price.target, quote.order, quote.workshop.pricing, yarn)


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
