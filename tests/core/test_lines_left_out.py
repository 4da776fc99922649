"""What costs nothing and what moves nothing has no line, and a parcel is weighed to the gram."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from quoting.core.ground.money import round_half_up
from quoting.core.order.order import Terms
from quoting.core.price.cost_lines import LineKind, Unit
from quoting.core.price.price import ADJUSTMENTS
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import (
    Delivery,
    DeliveryBand,
    Pay,
    Target,
    Tax,
    YarnCharged,
)
from quoting.core.workshop.yarns import Stock
from tests.core.priced_orders import HUNDRED, PRICING, lines_of, money, quoted
from tests.examples import COLOURS, sample_order, sample_quote, sample_workshop, sample_yarn


def kinds(quote: Quote) -> set[LineKind]:
    return {line.kind for line in quote.lines}


def test_what_costs_nothing_has_no_line() -> None:
    pay = Pay(making_per_hour=money("14"), office_per_hour=money("0"))
    quote = quoted(terms=HUNDRED, pay=pay, delivery=Delivery(), fees=())
    assert kinds(quote) == {LineKind.YARN, LineKind.EXTRA, LineKind.MAKING}


def test_without_rush_discount_or_minimum_no_line_moves_the_price() -> None:
    assert not kinds(quoted()) & ADJUSTMENTS


def test_a_price_that_is_just_the_minimum_is_not_lifted() -> None:
    listed = quoted(pricing=PRICING).price.listed
    quote = quoted(pricing=replace(PRICING, minimum=listed))
    assert (quote.price.price, lines_of(quote, LineKind.MINIMUM)) == (listed, [])


def test_a_rush_and_a_discount_say_what_share_they_are() -> None:
    quote = quoted(terms=replace(HUNDRED, rush=0.2, discount=0.1))
    shares = {line.kind: line.share for line in quote.lines if line.kind in ADJUSTMENTS}
    assert shares == {LineKind.RUSH: money("0.2"), LineKind.DISCOUNT: money("0.1")}


def test_single_balls_are_skeins_and_no_packs() -> None:
    units = {line.unit for line in lines_of(quoted(), LineKind.YARN)}
    assert units == {Unit.SKEIN}


def test_a_colour_that_stock_is_enough_of_is_charged_by_the_gram_alone() -> None:
    stock = tuple(Stock(colour=colour, weight_g=400) for colour in COLOURS)
    for charged in YarnCharged:
        pricing = replace(PRICING, yarn_charged=charged)
        quote = quoted(yarns=(sample_yarn(stock=stock),), pricing=pricing)
        lines = [(line.subject, line.unit) for line in lines_of(quote, LineKind.YARN)]
        assert lines == [(colour, Unit.GRAM) for colour in ("oat", "teal", "rust")]


def test_a_parcel_is_weighed_to_the_gram_halves_up() -> None:
    grams = round_half_up(quoted().estimate.grams, 0)

    def sent(up_to_g: Decimal) -> Quote:
        band = DeliveryBand(to="GB", up_to_g=float(up_to_g), charged=money("6"), paid=money("4"))
        return quoted(delivery=Delivery(charged=money("20"), paid=money("18"), bands=(band,)))

    just, over = sent(grams), sent(grams - 1)
    assert (just.price.delivery, lines_of(just, LineKind.DELIVERY)[0].amount) == (6, 4)
    assert (over.price.delivery, lines_of(over, LineKind.DELIVERY)[0].amount) == (20, 18)


def test_a_price_that_is_all_tax_has_no_margin() -> None:
    """By hand: ten elevenths of a penny are a penny, so nothing is brought in."""
    penny = Terms(target=Target(given=money("0.01")))
    tax = Tax(registered=True, rate=10.0)
    workshop = sample_workshop(tax=tax, delivery=Delivery(), fees=())
    price = sample_quote(sample_order(terms=penny), workshop).price
    assert (price.total, price.tax, price.margin) == (money("0.01"), money("0.01"), 0)
