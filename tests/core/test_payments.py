"""How a total is split into payments, and that its price is solved for as many."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.errors import Refused
from quoting.core.price.asking_price import PricedAsPaid, asking_price_as_paid
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.payments import Payments, PaymentTerms
from quoting.core.price.sale import Sale
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit, Fee, Pricing, Target, Tax
from tests.core.priced_orders import PRICING, money, quoted
from tests.examples import sample_order

CARD = Fee(name="Card", rate=0.01, fixed=money("0.30"))
NOTHING = money("0")

thousandths = st.integers(1, 1000).map(lambda n: n / 1000)
deposits = st.one_of(
    st.none(),
    st.builds(Deposit, share=thousandths),
    st.just(Deposit(yarn=True)),
    st.builds(Deposit, share=thousandths, yarn=st.just(value=True)),
)
cents = st.integers(0, 60_000).map(lambda n: Decimal(n) / 100)
ways_to_pay = st.builds(
    PaymentTerms, deposit=deposits, at_half=st.one_of(st.none(), thousandths), yarn=cents
)


def parts(payments: Payments) -> tuple[str, str, str]:
    return str(payments.deposit), str(payments.at_half), str(payments.rest)


@pytest.mark.parametrize(
    ("deposit", "at_half", "total", "split"),
    [
        (None, None, "205.00", ("0.00", "0.00", "205.00")),
        (Deposit(share=0.3), None, "205.00", ("61.50", "0.00", "143.50")),
        (Deposit(yarn=True), None, "205.00", ("32.20", "0.00", "172.80")),
        # 32.20 + 0.3 × 172.80 = 84.04; a quarter of 205 is 51.25
        (Deposit(yarn=True, share=0.3), 0.25, "205.00", ("84.04", "51.25", "69.71")),
        (None, 0.25, "205.00", ("0.00", "51.25", "153.75")),
        # two thirds and a half are more than the whole: the second takes what is left
        (Deposit(share=0.667), 0.5, "205.00", ("136.74", "68.26", "0.00")),
        (Deposit(yarn=True, share=0.3), 0.25, "30.00", ("30.00", "0.00", "0.00")),
        (Deposit(share=1.0), 0.25, "205.00", ("205.00", "0.00", "0.00")),
        (None, 1.0, "205.00", ("0.00", "205.00", "0.00")),
        # halves of a penny go up, so that the last is the lesser: 0.125 is 0.13
        (Deposit(share=0.25), 0.25, "0.50", ("0.13", "0.13", "0.24")),
        # of a penny, two halves would be two: the first is all of it
        (Deposit(share=0.5), 0.5, "0.01", ("0.01", "0.00", "0.00")),
    ],
)
def test_payments_by_hand(
    deposit: Deposit | None, at_half: float | None, total: str, split: tuple[str, str, str]
) -> None:
    terms = PaymentTerms(deposit=deposit, at_half=at_half, yarn=money("32.20"))
    payments = terms.split(money(total), "GBP")
    assert parts(payments) == split
    assert payments.count == sum(Decimal(part) > 0 for part in split)
    assert payments.balance == Decimal(split[1]) + Decimal(split[2])


def test_a_total_of_nothing_is_one_payment() -> None:
    terms = PaymentTerms(deposit=Deposit(share=0.5), at_half=0.25)
    assert terms.split(NOTHING, "GBP").count == 1


@given(
    ways_to_pay,
    cents,
    st.sampled_from(["JPY", "EUR", "KWD"]),
    st.integers(1, 300_000),
    st.integers(0, 100),
)
def test_payments_add_up_to_the_total_in_both_currencies(
    terms: PaymentTerms, total: Decimal, currency: str, rate: int, cushion: int
) -> None:
    """To the smallest coin; none is less than nothing, and each but the last is rounded once."""
    abroad = ExchangeRate(
        currency=currency,
        rate=Decimal(rate) / 1000,
        day=date(2026, 11, 20),
        cushion=cushion / 1000,
    )
    home = terms.split(total, "GBP")
    there = home.exchanged(abroad)
    for paid, whole, code in (
        (home, total, "GBP"),
        (there, abroad.convert(total), currency),
    ):
        amounts = (paid.deposit, paid.at_half, paid.rest)
        assert sum(amounts) == whole == paid.total
        assert min(amounts) >= 0
        assert all(amount == round(amount, minor_digits(code)) for amount in amounts)
    assert there.deposit == abroad.convert(home.deposit)
    if there.rest:
        assert there.at_half == abroad.convert(home.at_half)
    assert there.count <= home.count


def test_three_payments_bear_the_fixed_fees_three_times() -> None:
    pricing = replace(PRICING, deposit=Deposit(share=0.3), at_half=0.25)
    price = quoted(pricing=pricing, fees=(CARD,)).price
    fixed = [line for line in price.lines if line.kind is LineKind.FEE][-1]
    assert (price.payments, fixed.quantity, fixed.amount) == (3, 3, money("0.90"))
    assert price.margin >= Decimal("0.15")


@given(ways_to_pay, cents, st.integers(-900, 500), st.integers(0, 500), st.integers(0, 5000))
def test_a_price_is_solved_for_no_fewer_payments_than_it_comes_to(
    terms: PaymentTerms, cost: Decimal, margin: int, fixed: int, step: int
) -> None:
    """So no target is missed. A third that rounding takes away again is at most a penny or two."""
    priced = solved(terms, cost, margin / 1000, fixed, step)
    sold = priced.asking.sold
    solved_for = priced.asking.equation.sale.payments
    assert sold.payments.count <= solved_for <= 3
    if sold.payments.count < solved_for:
        assert (sold.payments.count, solved_for) == (2, 3)
        assert priced.in_two.sold.payments.rest <= money("0.02")
    assert sold.fee_parts[1].quantity == sold.payments.count
    revenue = sold.total - sold.tax
    assert sold.profit - Decimal(margin) / 1000 * revenue >= -money("0.01")


def solved(
    terms: PaymentTerms, cost: Decimal, margin: float, fixed: int, step: int
) -> PricedAsPaid:
    """Return the price of a cost at a margin, each payment bearing a fee; one of ours has one."""
    fee = Fee(name="Card", rate=0.01, fixed=Decimal(fixed) / 100)
    sale = Sale(
        cost=cost,
        delivery=NOTHING,
        tax=Tax(),
        fees=(fee,),
        payments=1,
        currency="GBP",
        paid=terms,
    )
    pricing = Pricing(
        target=Target(margin=margin), round_up_to=Decimal(step) / 100 if step else None
    )
    try:
        return asking_price_as_paid(sale, pricing.target, sample_order(), pricing)
    except Refused:
        assume(False)  # noqa: FBT003 - its own way of asking
        raise


def test_a_third_payment_that_only_two_payments_fees_bring_is_paid_for() -> None:
    """By hand: a cost of 199.60 is 199.90 at once, of which 100 and the 99.90 left are two.

    In two it is 200.20: 100, half of it, and 0.10 are three. Three fees make it 200.50.
    """
    terms = PaymentTerms(deposit=Deposit(yarn=True), at_half=0.5, yarn=Decimal(100))
    fixed = Fee(name="Card", fixed=money("0.30"))
    sale = Sale(
        cost=money("199.60"),
        delivery=NOTHING,
        tax=Tax(),
        fees=(fixed,),
        payments=1,
        currency="GBP",
        paid=terms,
    )
    target = Target(margin=0.0)
    priced = asking_price_as_paid(sale, target, sample_order(), Pricing(target=target))
    assert [each.sold.total for each in (priced.at_once, priced.in_two, priced.asking)] == [
        money("199.90"),
        money("200.20"),
        money("200.50"),
    ]
    assert parts(priced.asking.sold.payments) == ("100.00", "100.25", "0.25")
    assert priced.asking.sold.profit == 0
