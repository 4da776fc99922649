"""What an order is less without an extra that its buyer may leave out."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.estimate import again
from quoting.core.order.order import Extra, Order, Terms
from quoting.core.quote.left_out import LeftOut, left_out
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Delivery, Pricing, Target, Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from tests.examples import sample_order, sample_quote, sample_workshop

BOX = Extra(what="Gift box", cost=Decimal("3.20"), minutes=5)
INITIALS = Extra(what="Initials", cost=Decimal("2.00"), minutes=45, optional=True)
FRINGE = Extra(what="Fringe", minutes=60, colour="rust", yarn_m=90, optional=True)


def quoted(*extras: Extra, shop: Workshop | None = None, **order: Any) -> Quote:
    return sample_quote(sample_order(extras=extras, **order), shop)


def asked_anew(quote: Quote, *extras: Extra) -> Decimal:
    """Return the total of the same order with other extras, quoted from the beginning."""
    order: Order = replace(quote.order, extras=extras)
    return sample_quote(order, quote.workshop).price.total


@pytest.mark.parametrize("quantity", [1, 3])
@pytest.mark.parametrize("step", [None, Decimal("2.50")])
def test_it_is_the_difference_of_two_whole_quotes(quantity: int, step: Decimal | None) -> None:
    """Of pay, yarn, balls, fees, tax and steps alike, whether the extra takes yarn or none."""
    shop = sample_workshop(
        pricing=replace(sample_workshop().pricing, round_up_to=step),
        tax=Tax(registered=True, rate=0.2, shown=TaxShown.ADDED),
    )
    quote = quoted(BOX, INITIALS, FRINGE, shop=shop, quantity=quantity)
    total = quote.price.total
    assert list(left_out(quote)) == [
        LeftOut(what="Initials", less=total - asked_anew(quote, BOX, FRINGE)),
        LeftOut(what="Fringe", less=total - asked_anew(quote, BOX, INITIALS)),
    ]


def test_at_a_markup_without_fees_by_hand() -> None:
    """2.00 and 45 minutes at 12 an hour, which are 9.00 and no overhead, with a tenth on them."""
    plain = sample_workshop()
    pay = replace(plain.pay, making_per_hour=Decimal(12), overhead_per_hour=Decimal(0))
    pay = replace(pay, rest_allowance=0.0)
    shop = sample_workshop(pay=pay, fees=(), pricing=Pricing(target=Target(markup=0.1)))
    (found,) = left_out(quoted(BOX, INITIALS, shop=shop))
    assert abs(found.less - Decimal("12.10")) <= Decimal("0.01")


def test_only_what_the_buyer_may_leave_out_is_told() -> None:
    assert offer_of(quoted(BOX)).left_out == ()
    assert [each.what for each in offer_of(quoted(BOX, INITIALS)).left_out] == ["Initials"]


def test_nothing_is_said_where_it_makes_no_difference() -> None:
    """A price that is given stays; so does one that a step or the least price lifts."""
    given = Terms(target=Target(given=Decimal(300)))
    assert not list(left_out(quoted(INITIALS, terms=given)))
    for pricing in ({"round_up_to": Decimal(1000)}, {"minimum": Decimal(999)}):
        shop = sample_workshop(pricing=replace(sample_workshop().pricing, **pricing))
        assert not list(left_out(quoted(INITIALS, shop=shop)))


def test_nothing_is_said_where_there_is_no_price_without_it() -> None:
    """What is charged for delivery would pay for all but the extra."""
    dear = Extra(what="Silk lining", cost=Decimal(900), optional=True)
    shop = sample_workshop(delivery=Delivery(charged=Decimal(700), paid=Decimal(5)))
    assert not list(left_out(quoted(dear, shop=shop)))


def test_an_extra_without_yarn_is_left_out_without_estimating_the_yarn_anew(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    quote = quoted(*(replace(INITIALS, what=f"Initials {n}") for n in range(10)))
    monkeypatch.delattr(again, "estimate_plan")
    assert len(list(left_out(quote))) == 10
