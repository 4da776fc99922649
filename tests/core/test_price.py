"""The price that covers the costs and meets its target: case by case."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.order.order import Terms
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price import ADJUSTMENTS, MOVES, Price
from quoting.core.price.price_equation import equation_of, solve_price
from quoting.core.price.sale import sell
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Delivery, Deposit, Fee, Pricing, Target
from quoting.core.workshop.workshop import Workshop
from tests.core.priced_orders import HUNDRED, PRICING, lines_of, money, quoted
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop


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


def test_deposit_and_balance_in_her_own_currency_add_up_to_her_total() -> None:
    """By hand: of 7.00 each half is 3.50, which would be 4 twice; so 4 now and 3 of 7 are left."""
    rate = ExchangeRate(currency="JPY", rate=money("1"), day=TODAY)
    order = sample_order(terms=Terms(target=Target(given=money("2.00"))), pays_in="JPY")
    pricing = replace(PRICING, deposit=Deposit(share=0.5))
    price = sample_quote(order, sample_workshop(exchange={"JPY": rate}, pricing=pricing)).price
    assert (price.deposit, price.balance) == (money("3.50"), money("3.50"))
    abroad = price.parts.exchanged(rate)
    assert (price.buyer_total, abroad.deposit, abroad.balance) == (7, 4, 3)
    assert (abroad.at_half, abroad.rest) == (0, 3)


@pytest.mark.parametrize("terms", [Terms(), HUNDRED, Terms(rush=0.2, discount=0.05)])
def test_a_price_keeps_the_sale_that_it_is_and_the_equation_that_it_solves(terms: Terms) -> None:
    pricing = replace(PRICING, deposit=Deposit(share=0.3), round_up_to=money("0.50"))
    price = quoted(terms=terms, pricing=pricing, quantity=2).price
    assert price.sold_at(price.each) == price.sold == sell(price.sale, price.price)
    assert price.equation == equation_of(price.sale, price.target)
    assert (price.sale.payments, price.as_paid.at_once.sold.sale.payments) == (2, 1)
    assert price.as_paid.at_once.asked <= price.asking.asked
    if price.target.given is None:
        assert price.asking.asked == solve_price(price.equation) / 2
    after = [price.each_after(kind) for kind in MOVES]
    assert after[-1] == price.each
    assert after[0] - price.listed_each == price.change_each(LineKind.RUSH)


def test_a_rush_and_a_discount_multiply_out_also_for_several_blankets() -> None:
    terms = Terms(target=Target(given=money("512.34")), rush=0.15, discount=0.05)
    price = quoted(terms=terms, quantity=3).price
    moves = [line for line in price.lines if line.kind in ADJUSTMENTS]
    assert [(line.quantity, line.rate, line.amount) for line in moves] == [
        (3, money("76.85"), money("230.55")),
        (3, money("-29.46"), money("-88.38")),
    ]
    assert price.each == money("512.34") + money("76.85") - money("29.46")
