"""What a price passes on: fees, tax and delivery, and the deposit taken before: case by case."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.order.order import Terms
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price_equation import equation_of, solve_price
from quoting.core.price.sale import Sale
from quoting.core.workshop.selling import (
    Delivery,
    DeliveryBand,
    Deposit,
    Fee,
    FeeBase,
    Target,
    Tax,
    TaxShown,
)
from tests.core.priced_orders import HUNDRED, PRICING, lines_of, money, quoted


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


def test_a_country_is_the_same_in_small_letters() -> None:
    band = DeliveryBand(to="gb", up_to_g=2000, charged=money("6"), paid=money("5"))
    delivery = Delivery(charged=money("20"), paid=money("18"), bands=(band,))
    price = quoted(delivery=delivery).price
    assert (price.delivery, price.delivery_band_found) == (6, True)


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
    price = solve_price(equation_of(sale, Target(margin=0.0)))
    assert float(price) == pytest.approx(91.2 / 0.88)
