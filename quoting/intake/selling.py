"""What the maker sells on, in either file: pay, price, fees, tax, delivery, exchange."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.currencies import MINOR_DIGITS
from quoting.core.exchange import ExchangeRate
from quoting.core.order import Terms
from quoting.core.stitches import Vocabulary
from quoting.core.terms import (
    Delivery,
    DeliveryBand,
    Deposit,
    Fee,
    FeeBase,
    Pay,
    Pricing,
    Target,
    Tax,
    TaxShown,
    YarnCharged,
)
from quoting.intake.entries import (
    Entry,
    choice,
    count,
    day,
    each,
    money,
    number,
    text,
    weight,
    with_names,
    yes_no,
)
from quoting.intake.spots import NotRead, Spot
from quoting.intake.tables import Entries, Named, Table, shape, written

DEPOSIT = shape(Deposit, share=number, yarn=yes_no)
FEE = shape(Fee, name=text, rate=number, fixed=money, on=choice(FeeBase))
TAX = shape(Tax, registered=yes_no, rate=number, shown=choice(TaxShown), on_delivery=yes_no)
BAND = shape(DeliveryBand, to=text, up_to_g=Named("up_to", weight), charged=money, paid=money)
DELIVERY = shape(
    Delivery,
    charged=money,
    paid=money,
    packaging=money,
    packaging_g=Named("packaging_weight", weight),
    bands=each(BAND),
)

_TARGET: Entries = {"margin": number, "markup": number, "given": money}
_TERMS: Entries = {"discount": number, "rush": number}
_PRICING: Entries = {
    "yarn_charged": choice(YarnCharged),
    "round_up_to": money,
    "minimum": money,
    "valid_days": count,
    "deposit": DEPOSIT,
    "exchange_cushion": number,
}
_PAY: Entries = {"overhead_per_hour": money, "rest_allowance": number}
_RATE: Entries = {"rate": money, "per": money, "day": day, "cushion": number}


def _read_pay(spot: Spot) -> Pay:
    table = Table(spot)
    making = table.take("making_per_hour", money)
    office = table.may("office_per_hour", money, making)
    values = table.values(Pay, _PAY)
    table.done()
    return table.build(Pay, making_per_hour=making, office_per_hour=office, **values)


def _read_pricing(spot: Spot) -> Pricing:
    table = Table(spot)
    target = table.build(Target, **table.values(Target, _TARGET))
    values = table.values(Pricing, _PRICING)
    table.done()
    return table.build(Pricing, target=target, **values)


def _read_terms(spot: Spot) -> Terms:
    table = Table(spot)
    wishes = table.values(Target, _TARGET)
    target = table.build(Target, **wishes) if wishes else None
    values = table.values(Terms, _TERMS)
    table.done()
    return table.build(Terms, target=target, **values)


def _write_terms(terms: Terms, vocabulary: Vocabulary) -> dict[str, object]:
    target = written(terms.target, _TARGET, vocabulary) if terms.target else {}
    return target | written(terms, _TERMS, vocabulary)


def _read_rate(spot: Spot, code: str) -> ExchangeRate:
    """Return a rate; a code that is no currency is told by the workshop, as the table's name."""
    currency = code if code in MINOR_DIGITS else NotRead(code)
    table = Table(spot)
    values = table.values(ExchangeRate, _RATE)
    table.done()
    return table.build(ExchangeRate, currency=currency, **values)


def _read_exchange(spot: Spot) -> Mapping[str, ExchangeRate]:
    rates = spot.value if isinstance(spot.value, dict) else spot.wrong({}, "table")
    return with_names(spot, {code: _read_rate(spot.at(code, rates[code]), code) for code in rates})


PAY = Entry(_read_pay)
PRICING = Entry(_read_pricing)
TERMS = Entry(_read_terms, _write_terms)
EXCHANGE = Entry(_read_exchange)
