"""How a price comes to whole steps, and in how many payments it is paid."""

from __future__ import annotations

import math
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.core.order.order import Terms
from quoting.core.price.asking_price import AskingPrice, asking_price, asking_price_as_paid
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.payments import PaymentTerms
from quoting.core.price.price import ADJUSTMENTS
from quoting.core.price.sale import Sale
from quoting.core.workshop.selling import Deposit, Fee, Pricing, Target, Tax
from tests.core.priced_orders import PRICING, lines_of, money, quoted
from tests.examples import sample_order

POUNDS = replace(PRICING, round_up_to=Decimal(1))
CARD = (Fee(name="Card", rate=0.015, fixed=money("0.20")),)


def test_a_rush_and_a_discount_move_the_price_before_it_is_rounded_up() -> None:
    """By hand: 291.26 is wanted for one; 291.26 x 1.1 = 320.38; 320.38 x 0.95 = 304.36."""
    quote = quoted(pricing=POUNDS, terms=Terms(rush=0.1, discount=0.05), fees=CARD, delivery=POST)
    price = quote.price
    assert (price.listed, price.price) == (money("292"), money("305"))
    moves = [(line.kind, line.amount) for line in price.lines if line.kind in ADJUSTMENTS]
    assert moves == [(LineKind.RUSH, 29), (LineKind.DISCOUNT, -16)]


POST = quoted().workshop.delivery


@given(
    st.integers(100, 90_000),
    st.integers(0, 300),
    st.integers(0, 900),
    st.sampled_from(["0.01", "0.05", "1", "5", "12.50"]),
    st.integers(1, 4),
    st.one_of(st.none(), st.integers(1, 90_000)),
)
def test_the_price_of_one_is_the_first_whole_step_that_all_its_moves_leave(
    pence: int, rush: int, discount: int, step: str, quantity: int, least: int | None
) -> None:
    """Reckoned a second time in fractions; a sale at cost without fees, tax or delivery."""
    cost, size = Decimal(pence * quantity) / 100, Fraction(step)
    order = sample_order(quantity=quantity, terms=Terms(rush=rush / 1000, discount=discount / 1000))
    minimum = None if least is None else Decimal(least) / 100
    pricing = Pricing(target=Target(margin=0.0), round_up_to=Decimal(step), minimum=minimum)
    shown = asking_price(sale(cost), pricing.target, order, pricing)
    moved = Fraction(pence, 100) * (1 + Fraction(rush, 1000)) * (1 - Fraction(discount, 1000))
    wanted = max(moved, Fraction(least or 0, 100))
    assert Fraction(shown.sold.price) == quantity * size * math.ceil(round(wanted / size, 6))
    assert shown.sold.price == shown.listed + sum(line.amount for line in shown.moves)
    assert all(Fraction(line.rate) % size == 0 for line in shown.moves)


def sale(cost: Decimal, *fees: Fee) -> Sale:
    """Return the sale of what costs so much, with nothing to send."""
    return Sale(cost=cost, delivery=Decimal(0), tax=Tax(), fees=fees, payments=1, currency="GBP")


def test_the_least_price_is_asked_in_whole_steps_too() -> None:
    low = Pricing(target=Target(markup=-0.9), round_up_to=Decimal(5), minimum=money("62.50"))
    quote = quoted(pricing=low)
    assert quote.price.price == 65
    assert lines_of(quote, LineKind.MINIMUM)[0].amount == 65 - quote.price.listed


@pytest.mark.parametrize(
    ("deposit", "payments"),
    [
        (None, 1),
        (Deposit(share=0.5), 2),
        (Deposit(share=1.0), 1),
        (Deposit(yarn=True), 2),
    ],
)
def test_only_a_deposit_of_a_part_makes_two_payments(
    deposit: Deposit | None, payments: int
) -> None:
    price = quoted(pricing=replace(POUNDS, deposit=deposit), fees=CARD).price
    fixed = [line for line in price.lines if line.kind is LineKind.FEE][-1]
    assert (price.payments, fixed.amount) == (payments, payments * money("0.20"))


def test_yarn_that_costs_as_much_as_the_total_is_paid_at_once() -> None:
    """The seven balls are 32.20: at 27.20 and 5.00 to send they are all of it, a penny more not."""
    for given_price, payments in (("20.00", 1), ("27.20", 1), ("27.21", 2)):
        terms = Terms(target=Target(given=money(given_price)))
        pricing = replace(PRICING, deposit=Deposit(yarn=True))
        price = quoted(terms=terms, pricing=pricing, fees=CARD).price
        assert (price.payments, price.balance > 0) == (payments, payments == 2)


@given(
    st.integers(1, 50_000),
    st.integers(0, 60_000),
    st.integers(-900, 500),
    st.one_of(
        st.just(Deposit(yarn=True)), st.integers(1, 1000).map(lambda n: Deposit(share=n / 1000))
    ),
    st.integers(0, 500),
)
def test_the_payments_agree_with_the_deposit_that_they_lead_to(
    pence: int, yarn: int, margin: int, deposit: Deposit, fixed: int
) -> None:
    sold = paid(pence, yarn, margin / 1000, deposit, fixed).sold
    parts = sold.payments
    assert sold.sale.payments == parts.count == (2 if 0 < parts.deposit < sold.total else 1)
    assert 0 <= parts.deposit <= sold.total == parts.total


def paid(pence: int, yarn: int, margin: float, deposit: Deposit, fixed: int) -> AskingPrice:
    """Return the price of a cost at a margin, each payment bearing a fee."""
    fee = Fee(name="Card", rate=0.01, fixed=Decimal(fixed) / 100)
    pricing, order = Pricing(target=Target(margin=margin), deposit=deposit), sample_order()
    terms = PaymentTerms(deposit=deposit, yarn=Decimal(yarn) / 100)
    sold = replace(sale(Decimal(pence) / 100, fee), paid=terms)
    try:
        return asking_price_as_paid(sold, pricing.target, order, pricing).asking
    except Refused:
        assume(False)  # noqa: FBT003 - its own way of asking
        raise
