"""Cost lines, and the price that covers them: case by case."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.costing import Line, LineKind, Unit
from quoting.core.errors import Refused
from quoting.core.exchange import ExchangeRate
from quoting.core.order import Extra, Terms
from quoting.core.price import ADJUSTMENTS, Price
from quoting.core.quote import Quote
from quoting.core.sale import Sale, solve_price
from quoting.core.terms import (
    Delivery,
    DeliveryBand,
    Deposit,
    Fee,
    FeeBase,
    Pricing,
    Target,
    Tax,
    TaxShown,
    YarnCharged,
)
from quoting.core.workshop import Workshop
from quoting.core.yarns import PutUp, Stock
from tests.examples import (
    TODAY,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
)

PRICING = Pricing(target=Target(margin=0.15))
HUNDRED = Terms(target=Target(given=Decimal(100)))


def money(text: str) -> Decimal:
    return Decimal(text)


def quoted(*, terms: Terms | None = None, quantity: int = 1, **changes: Any) -> Quote:
    order = sample_order(terms=terms or Terms(), quantity=quantity)
    return sample_quote(order, sample_workshop(**changes))


def lines_of(quote: Quote, kind: LineKind) -> list[Line]:
    return [line for line in quote.lines if line.kind is kind]


def cost_without_fees(price: Price) -> Decimal:
    kinds = set(LineKind) - ADJUSTMENTS - {LineKind.FEE}
    return sum((price.amount(kind) for kind in kinds), Decimal(0))


def test_the_cot_blanket_costs_and_earns_what_it_does_by_hand() -> None:
    """By hand.

    Wool 7 x 4.60, box 3.20, packaging 1.10, 11.79 h and 1.25 h at 14.00, 13.04 h at 1.80, post
    4.45. C = 246.98; a = b = 0.015, F = 0.40, D = 5: P = (246.98 + 0.40 + 0.075 - 4.25) / 0.835 =
    291.26, so 292. Hands-on timing with no rest allowance changes nothing.
    """
    price = quoted().price
    assert price.amount(LineKind.YARN) == money("32.20")
    assert price.amount(LineKind.MAKING) == money("165.06")
    assert price.amount(LineKind.OVERHEAD) == money("23.47")
    assert (price.cost, price.price, price.total) == (
        money("246.98"),
        money("292.00"),
        money("297.00"),
    )
    assert [line.amount for line in price.lines if line.kind is LineKind.FEE] == [
        money("4.46"),  # 4.455, halves up
        money("0.40"),
    ]
    assert (price.profit, price.margin) == (money("45.16"), money("0.1521"))
    assert price.earned_per_hour == money("17.46")
    assert (price.deposit, price.balance) == (money("148.50"), money("148.50"))


def test_each_line_is_quantity_times_rate_rounded_once() -> None:
    for line in quoted(terms=Terms(rush=0.1, discount=0.05)).lines:
        exact = line.quantity * line.rate
        assert abs(line.amount - exact) <= money("0.005"), line


def test_skeins_are_charged_whole_and_packs_as_packs() -> None:
    pack = PutUp(weight_g=100, length_m=200, price=money("8.00"), pack=2)
    quote = quoted(yarns=(sample_yarn(put_ups=(pack,), stock=()),))
    oat = lines_of(quote, LineKind.YARN)[0]
    assert (oat.unit, oat.quantity, oat.pack, oat.amount) == (
        Unit.PACK,
        money("2"),
        2,
        money("16.00"),
    )


def test_used_yarn_is_charged_by_the_gram_at_what_its_skeins_cost() -> None:
    quote = quoted(pricing=replace(PRICING, yarn_charged=YarnCharged.USED))
    teal = lines_of(quote, LineKind.YARN)[1]
    assert (teal.unit, teal.quantity, teal.rate) == (Unit.GRAM, money("168"), money("0.046"))
    assert teal.amount == money("7.73")


def test_stock_is_charged_at_the_cheapest_price_for_a_gram() -> None:
    """By hand: 17.00 for 400 g is 0.0425 a gram."""
    held = sample_yarn(stock=(Stock(colour="teal", weight_g=200),))
    teal = lines_of(quoted(yarns=(held,)), LineKind.YARN)[1]
    assert (teal.unit, teal.rate) == (Unit.GRAM, money("0.0425"))
    assert teal.quantity == 168


def test_extras_and_packaging_are_per_blanket() -> None:
    quote = quoted(quantity=3)
    assert lines_of(quote, LineKind.EXTRA)[0].amount == money("9.60")
    assert lines_of(quote, LineKind.PACKAGING)[0].amount == money("3.30")


def test_discount_and_rush_move_the_price_and_are_no_cost() -> None:
    price = quoted(terms=replace(HUNDRED, rush=0.2, discount=0.1)).price
    assert (price.listed, price.price) == (money("100"), money("108"))  # 100 + 20, less 10 % of 120
    assert price.cost == cost_without_fees(price)
    assert price.total == price.cost + price.fees + price.tax + price.profit


def test_a_minimum_lifts_a_low_price_but_not_a_given_one() -> None:
    pricing = Pricing(target=Target(markup=-0.9), minimum=money("60.00"))
    lifted = quoted(pricing=pricing)
    assert lifted.price.price == 60
    assert lines_of(lifted, LineKind.MINIMUM)[0].amount == 60 - lifted.price.listed
    given = quoted(pricing=pricing, terms=Terms(target=Target(given=Decimal(40))))
    assert given.price.price == 40
    assert lines_of(given, LineKind.MINIMUM) == []


def test_a_given_price_stays_as_given() -> None:
    price = quoted(terms=Terms(target=Target(given=money("184.37")))).price
    assert (price.listed, price.price) == (money("184.37"), money("184.37"))


def test_each_blanket_of_several_is_rounded_up_to_the_step() -> None:
    price = quoted(quantity=3, pricing=replace(PRICING, round_up_to=Decimal(5))).price
    assert price.each % 5 == 0
    assert price.price == 3 * price.each


def test_with_a_deposit_there_are_two_payments() -> None:
    def fixed(deposit: Deposit | None) -> Decimal:
        price = quoted(terms=HUNDRED, pricing=replace(PRICING, deposit=deposit)).price
        return price.fees - money("1.58")  # 1.5 % of 105 is 1.575

    assert fixed(None) == money("0.20")
    assert fixed(Deposit(share=0.5)) == money("0.40")


def test_the_deposit_is_a_share_of_the_total_or_the_yarn_and_never_more_than_the_total() -> None:
    def deposit(deposit: Deposit | None, given: str = "100") -> Decimal:
        terms = Terms(target=Target(given=money(given)))
        return quoted(terms=terms, pricing=replace(PRICING, deposit=deposit)).price.deposit

    assert deposit(None) == 0
    assert deposit(Deposit(share=0.3)) == money("31.50")
    assert deposit(Deposit(yarn=True)) == money("32.20")
    assert deposit(Deposit(yarn=True), given="10") == 15


def test_the_first_band_that_fits_sets_delivery() -> None:
    bands = tuple(
        DeliveryBand(to=to, up_to_g=grams, charged=money(charged), paid=money(charged) - 1)
        for to, grams, charged in (("GB", 400, "4"), ("GB", 800, "6"), ("GB", 2000, "9"))
    )
    delivery = Delivery(charged=money("20"), paid=money("18"), bands=bands)
    assert quoted(delivery=delivery).price.delivery == 6  # 525 g
    assert quoted(delivery=replace(delivery, packaging_g=300)).price.delivery == 9
    heavy = quoted(delivery=replace(delivery, packaging_g=3000)).price
    assert (heavy.delivery, heavy.delivery_band_found) == (money("20"), False)
    assert lines_of(quoted(delivery=delivery), LineKind.DELIVERY)[0].amount == 5


@pytest.mark.parametrize(
    ("base", "fee"),
    [(FeeBase.PRICE, "10.00"), (FeeBase.PRICE_AND_DELIVERY, "10.50"), (FeeBase.TOTAL, "12.60")],
)
def test_a_fee_is_taken_on_its_base(base: FeeBase, fee: str) -> None:
    """By hand: price 100, delivery 5, 20 % added to both: a total of 126."""
    tax = Tax(registered=True, rate=0.2, shown=TaxShown.ADDED)
    price = quoted(terms=HUNDRED, fees=(Fee(name="Shop", rate=0.1, on=base),), tax=tax).price
    assert price.total == 126
    assert price.fees == money(fee)


@pytest.mark.parametrize(
    ("shown", "on_delivery", "tax", "total"),
    [
        (TaxShown.INCLUDED, True, "17.50", "105.00"),
        (TaxShown.INCLUDED, False, "16.67", "105.00"),
        (TaxShown.ADDED, True, "21.00", "126.00"),
        (TaxShown.ADDED, False, "20.00", "125.00"),
    ],
)
def test_tax_is_inside_or_added_with_or_without_delivery(
    shown: TaxShown,
    on_delivery: bool,  # noqa: FBT001 - a parameter
    tax: str,
    total: str,
) -> None:
    rule = Tax(registered=True, rate=0.2, shown=shown, on_delivery=on_delivery)
    price = quoted(terms=HUNDRED, tax=rule).price
    assert (price.tax, price.total) == (money(tax), money(total))


def test_a_maker_who_is_not_registered_charges_no_tax() -> None:
    assert quoted(terms=HUNDRED, tax=Tax(registered=False, rate=0.2)).price.tax == 0


def refusal(**changes: Any) -> str:
    with pytest.raises(Refused) as refused:
        quoted(**changes)
    return str(refused.value)


def test_a_target_that_fees_make_impossible_is_refused_at_its_place() -> None:
    greedy = (Fee(name="Shop", rate=0.5),)
    assert refusal(fees=greedy, pricing=Pricing(target=Target(margin=0.5))) == (
        "price.margin: no-price"
    )
    greedy = (Fee(name="Shop", rate=1),)
    assert refusal(fees=greedy, pricing=Pricing(target=Target(markup=0.5))) == (
        "price.markup: no-price"
    )


def test_a_target_met_by_delivery_alone_is_refused() -> None:
    dear = Delivery(charged=Decimal(5000))
    assert refusal(delivery=dear) == "price.margin: price-not-positive"


def test_a_price_finer_than_the_smallest_coin_is_refused() -> None:
    given = Terms(target=Target(given=money("185.005")))
    assert refusal(terms=given) == "price.given: not-whole-minor-units"


def test_a_price_of_nothing_is_refused() -> None:
    free = {"delivery": Delivery(), "fees": ()}
    cent = Terms(target=Target(given=money("0.01")), discount=0.99)
    assert refusal(terms=cent, **free) == "price.discount: price-not-positive"


def test_a_blanket_that_takes_no_time_earns_nothing_an_hour() -> None:
    price = replace(quoted().price, hours=Decimal(0))
    assert price.earned_per_hour == 0


def test_the_buyer_sees_the_total_in_her_own_currency_too() -> None:
    rate = ExchangeRate(currency="JPY", rate=money("190.5"), day=TODAY, cushion=0.02)
    order = sample_order(terms=HUNDRED, pays_in="JPY")
    workshop: Workshop = sample_workshop(exchange={"JPY": rate})
    price = sample_quote(order, workshop).price
    assert price.buyer_total == 20403  # 105 x 190.5 x 1.02 = 20402.55
    assert quoted().price.buyer_total is None


def test_an_extra_that_costs_nothing_is_still_listed() -> None:
    order = sample_order(extras=(Extra(what="Name label"),), design=sample_design())
    (label,) = lines_of(sample_quote(order), LineKind.EXTRA)
    assert (label.subject, label.amount) == ("Name label", money("0"))


def test_used_grams_are_those_from_stock_and_those_bought() -> None:
    pricing = replace(PRICING, yarn_charged=YarnCharged.USED)
    order = sample_order(design=sample_design(mix_lots=True))
    quote = sample_quote(order, sample_workshop(pricing=pricing))
    oat = [line.quantity for line in lines_of(quote, LineKind.YARN) if line.subject == "oat"]
    whole = round(quote.estimate.colours[0].grams)
    assert len(oat) == 2
    assert sum(oat) == whole


def test_packaging_weighs_for_every_blanket() -> None:
    band = DeliveryBand(to="GB", up_to_g=1500, charged=money("4"), paid=money("3"))
    light, heavy = (
        Delivery(charged=money("20"), bands=(band,), packaging_g=grams) for grams in (200, 300)
    )
    assert quoted(quantity=2, delivery=light).price.delivery == 4  # 1050 g of wool and 400
    assert quoted(quantity=2, delivery=heavy).price.delivery == 20


def test_a_fee_on_the_total_is_taken_of_the_tax_on_delivery_too() -> None:
    """By hand: C = 100, D = 10, a = b = 0.1 x 1.2: P = (100 + 1.2 - 10) / (1 - 0.12)."""
    sale = Sale(
        cost=Decimal(100),
        delivery=Decimal(10),
        tax=Tax(registered=True, rate=0.2, shown=TaxShown.ADDED),
        fees=(Fee(name="Shop", rate=0.1),),
        payments=1,
        currency="GBP",
    )
    price = solve_price(sale, Target(margin=0.0))
    assert float(price) == pytest.approx(91.2 / 0.88)


def test_a_rush_and_a_discount_multiply_out_also_for_several_blankets() -> None:
    terms = Terms(target=Target(given=money("512.34")), rush=0.15, discount=0.05)
    price = quoted(terms=terms, quantity=3).price
    moves = [line for line in price.lines if line.kind in ADJUSTMENTS]
    assert [(line.quantity, line.rate, line.amount) for line in moves] == [
        (3, money("76.85"), money("230.55")),
        (3, money("-29.46"), money("-88.38")),
    ]
    assert price.each == money("512.34") + money("76.85") - money("29.46")
