"""At a limit, just under it and just over it: prices, weights and days."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest

from quoting.core.order.order import Terms
from quoting.core.quote.quote import Quote
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Delivery, DeliveryBand, Deposit, Pricing, Target
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop


def codes(quote: Quote) -> set[str]:
    return {caution.code for caution in quote.cautions}


def given(price: Decimal) -> Terms:
    return Terms(target=Target(given=price))


def test_a_price_without_a_profit_is_no_loss_and_a_pound_less_is() -> None:
    """Both kinds of hour are paid alike, so no profit is exactly her pay."""
    shop = sample_workshop(fees=())
    cost = sample_quote(None, shop).price.cost
    delivered = shop.delivery.charged
    for less, told in ((Decimal(-1), False), (Decimal(0), False), (Decimal(1), True)):
        order = sample_order(terms=given(cost - delivered - less))
        quote = sample_quote(order, shop)
        assert quote.price.profit == -less
        assert ("pays-under-wage" in codes(quote)) is told


@pytest.mark.parametrize(("price", "told"), [("59.99", True), ("60.00", False), ("60.01", False)])
def test_the_least_price_itself_is_not_under_it(
    price: str,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    pricing = Pricing(target=Target(margin=0.15), minimum=Decimal(60))
    quote = sample_quote(
        sample_order(terms=given(Decimal(price))), sample_workshop(pricing=pricing)
    )
    assert ("under-minimum" in codes(quote)) is told


@pytest.mark.parametrize(("spare_g", "told"), [(-1, True), (0, False), (1, False)])
def test_a_band_carries_what_weighs_as_much_as_its_limit(
    spare_g: int,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    grams = round(sample_quote().estimate.grams)
    bands = (
        DeliveryBand(
            to="GB", up_to_g=grams + spare_g, charged=Decimal("7.77"), paid=Decimal("6.66")
        ),
    )
    shop = sample_workshop(delivery=Delivery(charged=Decimal(5), paid=Decimal(4), bands=bands))
    quote = sample_quote(None, shop)
    assert ("too-heavy-for-bands" in codes(quote)) is told
    assert quote.price.delivery == (Decimal(5) if told else Decimal("7.77"))


def test_the_day_wanted_is_not_too_late_and_the_day_after_is() -> None:
    ready = sample_quote().ready_by
    for days, told in ((-1, True), (0, False), (1, False)):
        quote = sample_quote(sample_order(wanted_by=ready + timedelta(days=days)))
        assert ("late" in codes(quote)) is told


@pytest.mark.parametrize(("days", "told"), [(6, False), (7, False), (8, True)])
def test_a_rate_of_a_week_ago_is_not_old_and_one_of_a_day_more_is(
    days: int,
    told: bool,  # noqa: FBT001 - a parameter
) -> None:
    rate = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY - timedelta(days=days))
    quote = sample_quote(sample_order(pays_in="EUR"), sample_workshop(exchange={"EUR": rate}))
    assert ("old-rate" in codes(quote)) is told


def test_a_deposit_of_the_yarn_is_never_more_than_the_whole() -> None:
    """The yarn costs more than a price that was given: the deposit is all of it, and no more."""
    pricing = Pricing(target=Target(margin=0.15), deposit=Deposit(yarn=True))
    shop = sample_workshop(pricing=pricing)
    yarn = sample_quote(None, shop).price.deposit
    for price, deposit in ((yarn, yarn), (yarn - 6, yarn - 1)):
        quote = sample_quote(sample_order(terms=given(price)), shop)
        assert (quote.price.deposit, quote.price.total) == (deposit, price + 5)
        assert quote.price.balance == quote.price.total - deposit


def test_a_quote_is_valid_for_the_days_that_the_workshop_says() -> None:
    for days in (1, 21):
        pricing = replace(sample_workshop().pricing, valid_days=days)
        quote = sample_quote(None, sample_workshop(pricing=pricing))
        assert quote.valid_until == date(2026, 11, 25) + timedelta(days=days)
