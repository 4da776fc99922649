"""Quotes of many kinds, and changes to a workbook's inputs with the quote they should give."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

from quoting.core.ground.measures import Units
from quoting.core.ground.money import round_money
from quoting.core.order.design import EndsBecome
from quoting.core.order.in_rows import Stripe
from quoting.core.order.order import Extra, Order, Terms
from quoting.core.quote.quote import Quote
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.ranges import Ranges
from quoting.core.workshop.selling import (
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
from quoting.core.workshop.stitches import Stitch, Vocabulary
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Pattern, Workshop
from quoting.core.workshop.yarns import Stock
from tests.examples import (
    LARGE,
    SMALL,
    band,
    sample_design,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)
from tests.workbook.constructions import construction_quotes
from tests.workbook.guessed_hours import guessed_quote, one_row_quote

PLAIN = Pricing(
    target=Target(margin=0.15),
    round_up_to=Decimal("1.00"),
    minimum=Decimal("60.00"),
    deposit=Deposit(share=0.5),
)
THREE_FEES = (
    Fee(name="Card payment", rate=0.015, fixed=Decimal("0.20")),
    Fee(name="Market stall", rate=0.065, on=FeeBase.PRICE),
    Fee(name="Listing", rate=0.03, fixed=Decimal("0.35"), on=FeeBase.PRICE_AND_DELIVERY),
)
INCLUDED = Tax(registered=True, rate=0.2)
ADDED_TO_ALL = Tax(registered=True, rate=0.2, shown=TaxShown.ADDED)
ADDED = Tax(registered=True, rate=0.07, shown=TaxShown.ADDED, on_delivery=False)


WIDENED = 1.3
SURER = Habits(tension=0.09, confidence=0.99, join=Join.AT_AN_EDGE)
"""Of a maker who wants to be surer of her yarn, and whose tension drifts more."""


def priced(**changes: Any) -> Pricing:
    """Return the plain pricing with some of it changed."""
    return replace(PLAIN, **changes)


def at_price(price: str) -> Order:
    """Return the sample order at a price of its own."""
    return sample_order(terms=Terms(target=Target(given=Decimal(price))))


def in_money(code: str, locale: str, factor: str, step: str) -> Workshop:
    """Return the workshop with all its money in another currency."""
    shop = sample_workshop()

    def money(amount: Decimal) -> Decimal:
        return round_money(amount * Decimal(factor), code)

    put_ups = (replace(SMALL, price=money(SMALL.price)), replace(LARGE, price=money(LARGE.price)))
    return replace(
        shop,
        currency=code,
        locale=locale,
        yarns=(sample_yarn(put_ups=put_ups),),
        pay=Pay(
            making_per_hour=money(Decimal("14.37")),
            office_per_hour=money(Decimal("12.11")),
            overhead_per_hour=money(Decimal("1.83")),
        ),
        fees=tuple(replace(fee, fixed=money(fee.fixed)) for fee in THREE_FEES),
        pricing=priced(round_up_to=Decimal(step), minimum=money(Decimal(60))),
        delivery=replace(shop.delivery, charged=money(Decimal(5)), bands=()),
    )


def _timed_shop() -> Workshop:
    """Return a workshop with several timings, an untimed stitch, and measured other work."""
    timings = (
        Timing(stitch="hdc", stitches=500, minutes=27.5, rows=5, hands_on=True),
        Timing(stitch="hdc", stitches=420, minutes=24.0, rows=4),
        Timing(stitch="hdc", stitches=610, minutes=31.0, rows=6, hands_on=True),
        Timing(stitch="sc", stitches=300, minutes=12.5),
    )
    pay = Pay(
        making_per_hour=Decimal("14.00"),
        office_per_hour=Decimal("11.50"),
        overhead_per_hour=Decimal(0),
        rest_allowance=0.12,
    )
    minutes = sample_minutes(turn=(0.1, 0.14, 0.12), weave_in_end=(2.5, 3.0), rip_back=0.06)
    return sample_workshop(timings=timings, pay=pay, minutes=minutes)


def _mixed_order() -> Order:
    """Return two blankets whose stripes differ in stitch, with extras that take yarn."""
    striped = (
        Stripe(colour="teal", rows=2, stitch="dc"),
        Stripe(colour="rust", rows=3),
        Stripe(colour="plum", rows=1, stitch="moss stitch"),
    )
    design = sample_design(
        width_cm=60,
        height_cm=75,
        sections=(replace(section("teal"), stripes=striped),),
        border=(band(rounds=2), band("dc", "plum")),
        mix_lots=True,
    )
    extras = (
        Extra(what="=HYPERLINK(A1)", cost=Decimal("2.15"), minutes=12, colour="moss", yarn_m=31),
        Extra(what="Card", cost=Decimal(0)),
    )
    return sample_order(design=design, quantity=2, extras=extras)


def _stocked_shop() -> Workshop:
    wool = sample_yarn(
        put_ups=(SMALL, replace(SMALL, price=Decimal("40.00"), pack=10), LARGE),
        stock=(
            Stock(colour="plum", weight_g=140, lot="12"),
            Stock(colour="teal", weight_g=35.5, lot="=1+1"),
        ),
    )
    moss = Pattern(name="moss stitch", like=Stitch.SC, multiple=2, plus=1)
    return sample_workshop(
        yarns=(wool,),
        patterns=(moss,),
        pricing=priced(yarn_charged=YarnCharged.USED),
        habits=replace(sample_workshop().habits, join=Join.AT_AN_EDGE),
    )


def quotes() -> dict[str, Quote]:
    """Return quotes of every kind that a workbook has to reckon, by name."""
    euro = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=date(2026, 11, 20), cushion=0.02)
    shops = {
        "plain": sample_workshop(),
        "yen": in_money("JPY", "ja_JP", "190", "100"),
        "dinar": in_money("KWD", "ar_KW", "0.39", "0.250"),
        "markup, tax inside": sample_workshop(
            pricing=priced(target=Target(markup=0.25), round_up_to=None),
            tax=INCLUDED,
            fees=THREE_FEES,
        ),
        "tax added": sample_workshop(
            pricing=priced(deposit=None, round_up_to=Decimal("0.50")), tax=ADDED, fees=THREE_FEES
        ),
        "tax added to delivery too": sample_workshop(
            pricing=priced(deposit=Deposit(share=0.3)), tax=ADDED_TO_ALL, fees=THREE_FEES
        ),
        "least price": sample_workshop(pricing=priced(minimum=Decimal("333.33")), fees=()),
        "timed": _timed_shop(),
        "inches": replace(_timed_shop(), units=Units.INCHES, speaks=Vocabulary.UK, locale="en_US"),
    }
    found = {name: sample_quote(None, shop) for name, shop in shops.items()}
    found["mixed, used"] = sample_quote(_mixed_order(), _stocked_shop())
    found["given"] = sample_quote(
        at_price("185.00"), sample_workshop(pricing=priced(deposit=Deposit(yarn=True)))
    )
    rushed = sample_order(quantity=3, terms=Terms(rush=0.125, discount=0.0333))
    found["paid at once"] = sample_quote(
        sample_order(quantity=2, terms=Terms(rush=0.2)),
        sample_workshop(
            pricing=priced(deposit=Deposit(share=1.0), round_up_to=Decimal("2.50")),
            tax=ADDED,
            fees=THREE_FEES,
        ),
    )
    found["the yarn is all"] = sample_quote(
        at_price("26.00"),
        sample_workshop(pricing=priced(deposit=Deposit(yarn=True)), fees=THREE_FEES),
    )
    found["three payments"] = sample_quote(
        sample_order(pays_in="EUR"),
        sample_workshop(
            pricing=priced(
                deposit=Deposit(yarn=True, share=0.3), at_half=0.25, rest_due=RestDue.ON_DELIVERY
            ),
            fees=THREE_FEES,
            exchange={"EUR": euro},
        ),
    )
    found["paid at half"] = sample_quote(
        None, sample_workshop(pricing=priced(deposit=None, at_half=0.4), fees=THREE_FEES)
    )
    found["rush and discount"] = sample_quote(rushed, sample_workshop(fees=THREE_FEES))
    abroad = sample_workshop(exchange={"EUR": euro})
    found["euro"] = sample_quote(sample_order(pays_in="EUR"), abroad)
    fringed = sample_design(ends=EndsBecome.FRINGE)
    found["fringe"] = sample_quote(sample_order(design=fringed))
    found["guessed hours"] = guessed_quote()
    found["one row"] = one_row_quote()
    crown = ExchangeRate(
        currency="EUR", rate=Decimal(1), per=Decimal("0.86753"), day=date(2026, 11, 20)
    )
    divided = sample_workshop(exchange={"EUR": crown})
    found["euro, divided"] = sample_quote(sample_order(pays_in="EUR"), divided)
    return found | construction_quotes()


def surer(name: str) -> Quote:
    """Return the quote of joined squares, or from the centre, by a maker who wants to be surer."""
    quote = construction_quotes()[name]
    habits = replace(quote.workshop.habits, tension=SURER.tension, confidence=SURER.confidence)
    shop = replace(
        quote.workshop, habits=habits, ranges=replace(quote.workshop.ranges, yarn=WIDENED)
    )
    return sample_quote(quote.order, shop)


def surer_quote() -> Quote:
    """Return the quote of mixed stitches by a maker who wants to be surer of her yarn."""
    shop = replace(_stocked_shop(), habits=SURER, ranges=Ranges(yarn=WIDENED))
    return sample_quote(_mixed_order(), shop)
