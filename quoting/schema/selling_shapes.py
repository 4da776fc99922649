"""The shapes of what the maker sells on: pay, price, fees, tax, delivery, exchange."""

from __future__ import annotations

from quoting.core.order.order import Terms
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.own_words import OwnWords
from quoting.core.workshop.pay_rates import Year
from quoting.core.workshop.selling import (
    Delivery,
    DeliveryBand,
    Deposit,
    Fee,
    FeeBase,
    Pay,
    Pricing,
    RestDue,
    Target,
    Tax,
    TaxShown,
    YarnCharged,
)
from quoting.schema.figures import COUNT, EXACT, MONEY, NUMBER, SHARE, WEIGHT
from quoting.schema.several import NamedBy, Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.words import DAY, TEXT, YES_NO, Choice

_words = Fields(OwnWords)
OWN_WORDS = Shape(
    OwnWords,
    _words(lambda words: words.contact, TEXT, "How buyers reach you"),
    _words(lambda words: words.address, TEXT, "Address"),
    _words(lambda words: words.greeting, TEXT, "Greeting"),
    _words(lambda words: words.care, TEXT, "Care"),
    _words(lambda words: words.terms, TEXT, "Terms of sale", name="terms_of_sale"),
)

_pay = Fields(Pay)
PAY = Shape(
    Pay,
    _pay(lambda pay: pay.making_per_hour, MONEY, "Pay for an hour of making"),
    _pay(
        lambda pay: pay.office_per_hour,
        MONEY,
        "Pay for an hour of admin",
        else_as=lambda pay: pay.making_per_hour,
    ),
    _pay(lambda pay: pay.overhead_per_hour, MONEY, "Overhead for an hour"),
    _pay(lambda pay: pay.rest_allowance, SHARE, "Rest allowance, %"),
)

_target = Fields(Target)
TARGET = Shape(
    Target,
    _target(lambda target: target.given, MONEY, "A price of my own"),
    _target(lambda target: target.margin, SHARE, "A margin, %"),
    _target(lambda target: target.markup, SHARE, "A markup on the cost, %"),
)

_deposit = Fields(Deposit)
DEPOSIT = Shape(
    Deposit,
    _deposit(lambda deposit: deposit.share, SHARE, "Share of the total, %"),
    _deposit(lambda deposit: deposit.yarn, YES_NO, "The cost of the yarn"),
)

_pricing = Fields(Pricing)
PRICING = Shape(
    Pricing,
    _pricing.inline(lambda pricing: pricing.target, TARGET),
    _pricing(lambda pricing: pricing.yarn_charged, Choice(YarnCharged), "Yarn is charged as"),
    _pricing(lambda pricing: pricing.round_up_to, MONEY, "Prices are rounded up to whole"),
    _pricing(lambda pricing: pricing.minimum, MONEY, "Minimum charge"),
    _pricing(lambda pricing: pricing.valid_days, COUNT, "Days a quote is valid"),
    _pricing(lambda pricing: pricing.deposit, DEPOSIT, "Deposit"),
    _pricing(lambda pricing: pricing.at_half, SHARE, "When half is made, % of the total"),
    _pricing(lambda pricing: pricing.rest_due, Choice(RestDue), "The rest is due"),
    _pricing(lambda pricing: pricing.exchange_cushion, SHARE, "On top of reference rates, %"),
)

_terms = Fields(Terms)
TERMS = Shape(
    Terms,
    _terms.inline(lambda terms: terms.target, TARGET),
    _terms(lambda terms: terms.discount, SHARE, "Discount, %", usual=0.0),
    _terms(lambda terms: terms.rush, SHARE, "Rush, % more", usual=0.0),
)

_fee = Fields(Fee)
FEE = Shape(
    Fee,
    _fee(lambda fee: fee.name, TEXT, "Name"),
    _fee(lambda fee: fee.rate, SHARE, "Rate, %"),
    _fee(lambda fee: fee.fixed, MONEY, "and for each payment"),
    _fee(lambda fee: fee.on, Choice(FeeBase), "Taken on"),
)

_tax = Fields(Tax)
TAX = Shape(
    Tax,
    _tax(lambda tax: tax.registered, YES_NO, "Registered for sales tax"),
    _tax(lambda tax: tax.rate, SHARE, "Rate, %"),
    _tax(lambda tax: tax.shown, Choice(TaxShown), "In the price shown"),
    _tax(lambda tax: tax.on_delivery, YES_NO, "Charged on delivery too"),
)

_delivery_band = Fields(DeliveryBand)
DELIVERY_BAND = Shape(
    DeliveryBand,
    _delivery_band(lambda band: band.to, TEXT, "Country"),
    _delivery_band(lambda band: band.up_to_g, WEIGHT, "Up to", name="up_to"),
    _delivery_band(lambda band: band.charged, MONEY, "Charged"),
    _delivery_band(lambda band: band.paid, MONEY, "Paid"),
)

_delivery = Fields(Delivery)
DELIVERY = Shape(
    Delivery,
    _delivery(lambda delivery: delivery.charged, MONEY, "Charged"),
    _delivery(lambda delivery: delivery.paid, MONEY, "Paid"),
    _delivery(lambda delivery: delivery.packaging, MONEY, "Packaging for one blanket"),
    _delivery(lambda delivery: delivery.packaging_g, WEIGHT, "Its weight", name="packaging_weight"),
    _delivery(lambda delivery: delivery.bands, Several(DELIVERY_BAND), "By country and weight"),
)

_rate = Fields(ExchangeRate)
EXCHANGE_RATE = Shape(
    ExchangeRate,
    _rate(lambda rate: rate.rate, EXACT, "For one of my own currency"),
    _rate(lambda rate: rate.per, EXACT, "or for so much of it"),
    _rate(lambda rate: rate.day, DAY, "Day"),
    _rate(lambda rate: rate.cushion, SHARE, "On top, %"),
)
EXCHANGE = NamedBy(EXCHANGE_RATE, "currency", "Currency")

_year = Fields(Year)
YEAR = Shape(
    Year,
    _year(lambda year: year.income, MONEY, "Income you want from making, a year"),
    _year(lambda year: year.overhead, MONEY, "Overhead, a year"),
    _year(lambda year: year.weeks, NUMBER, "Weeks a year"),
    _year(lambda year: year.hours_a_week, NUMBER, "Hours a week really worked on orders"),
)
