"""The price, as laws: whatever the currency, tax and fees, these hold."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from quoting.core.estimate.chores import Part
from quoting.core.estimate.estimate import Estimate
from quoting.core.estimate.hours import Hours, Task
from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.errors import Refused
from quoting.core.order.order import Extra, Order, Terms
from quoting.core.plan.gauge import Sureness
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price import ADJUSTMENTS, Price, price_estimate
from quoting.core.price.price_equation import equation_of, solve_price
from quoting.core.price.sale import Sale
from quoting.core.workshop.selling import (
    Delivery,
    Deposit,
    Fee,
    FeeBase,
    Pay,
    Pricing,
    Target,
    Tax,
    TaxShown,
)
from quoting.core.workshop.workshop import Workshop
from tests.examples import sample_order, sample_workshop

currencies = st.sampled_from(["JPY", "GBP", "EUR", "KWD"])
thousandths = st.integers(0, 900_000).map(lambda n: Decimal(n) / 1000)
rates = st.integers(0, 150).map(lambda n: n / 1000)
some_fees = st.lists(
    st.builds(
        Fee,
        name=st.just("Shop"),
        rate=rates,
        fixed=st.integers(0, 3000).map(lambda n: Decimal(n) / 1000),
        on=st.sampled_from(FeeBase),
    ),
    max_size=3,
).map(tuple)
taxes = st.builds(
    Tax,
    registered=st.booleans(),
    rate=st.sampled_from([0.0, 0.05, 0.2, 0.08875, 0.27]),
    shown=st.sampled_from(TaxShown),
    on_delivery=st.booleans(),
)
targets = st.one_of(
    st.integers(-50, 500).map(lambda n: Target(margin=n / 1000)),
    st.integers(-200, 2000).map(lambda n: Target(markup=n / 1000)),
)


@st.composite
def sales(draw: st.DrawFn) -> tuple[Order, Estimate, Workshop]:
    """Draw an order of some cost and hours, and the terms it is sold on."""
    currency = draw(currencies)
    minor = Decimal(1).scaleb(-minor_digits(currency))
    step = draw(st.one_of(st.none(), st.integers(1, 1000).map(lambda n: n * minor)))
    deposit = draw(
        st.sampled_from([None, Deposit(share=0.37), Deposit(share=1.0), Deposit(yarn=True)])
    )
    at_half = draw(st.sampled_from([None, 0.25]))
    task = Task(
        part=Part.STITCHING,
        what="hdc",
        count=1,
        minutes_each=draw(st.floats(0, 3000)),
        sureness=Sureness.MEASURED,
        timed_stitch="hdc",
        shared_min=0,
    )
    charged, paid, packaging = draw(thousandths) / 20, draw(thousandths) / 20, draw(thousandths)
    workshop = sample_workshop(
        currency=currency,
        fees=draw(some_fees),
        tax=draw(taxes),
        delivery=Delivery(charged=charged, paid=paid, packaging=packaging),
        pay=Pay(making_per_hour=draw(thousandths) / 10, office_per_hour=Decimal(0)),
        pricing=Pricing(target=draw(targets), round_up_to=step, deposit=deposit, at_half=at_half),
    )
    order = sample_order(
        quantity=draw(st.integers(1, 4)), extras=(Extra(what="Wool", cost=draw(thousandths)),)
    )
    return order, Estimate(colours=(), strands=(), hours=Hours(tasks=(task,))), workshop


def priced(order: Order, estimate: Estimate, workshop: Workshop) -> Price:
    """Return the price; a case that has none is none of ours."""
    try:
        return price_estimate(order, estimate, workshop)
    except Refused:
        assume(False)  # noqa: FBT003 - its own way of asking
        raise


def over_target(price: Price, target: Target) -> Decimal:
    """Return how far the profit lies over what a target asks."""
    if target.margin is not None:
        return price.profit - Decimal(str(target.margin)) * (price.total - price.tax)
    return price.profit - Decimal(str(target.markup)) * price.cost


def tolerance(price: Price, step: Decimal) -> Decimal:
    """Half a minor unit for the tax and for each fee, and a millionth of a step."""
    minor = Decimal(1).scaleb(-minor_digits(price.currency))
    rounded = 1 + sum(line.kind is LineKind.FEE for line in price.lines)
    return minor / 2 * rounded + price.quantity * step / 1_000_000


@given(sales(), st.integers(0, 500), st.integers(0, 990))
def test_the_total_is_cost_and_fees_and_tax_and_profit(
    sale: tuple[Order, Estimate, Workshop], rush: int, discount: int
) -> None:
    order, estimate, workshop = sale
    order = replace(order, terms=Terms(rush=rush / 1000, discount=discount / 1000))
    price = priced(order, estimate, workshop)
    fees = price.amount(LineKind.FEE)
    moves = sum((price.amount(kind) for kind in ADJUSTMENTS), Decimal(0))
    costs = sum((line.amount for line in price.lines), Decimal(0)) - fees - moves
    assert price.total == costs + fees + price.tax + price.profit
    assert (price.cost, price.fees) == (costs, fees)
    assert price.price == price.listed + moves
    assert price.total == price.deposit + price.balance
    step = workshop.pricing.round_up_to or Decimal(1).scaleb(-minor_digits(price.currency))
    assert price.each % step == 0
    added = price.tax if workshop.tax.shown is TaxShown.ADDED else 0
    assert price.total == price.price + price.delivery + added
    digits = minor_digits(price.currency)
    for amount in (price.total, price.tax, price.fees, price.cost, price.deposit, price.price):
        assert amount == round(amount, digits)


@settings(max_examples=300)
@given(sales())
def test_the_price_meets_its_target_and_one_step_less_would_not(
    sale: tuple[Order, Estimate, Workshop],
) -> None:
    order, estimate, workshop = sale
    price = priced(order, estimate, workshop)
    step = workshop.pricing.round_up_to or Decimal(1).scaleb(-minor_digits(price.currency))
    slack = tolerance(price, step)
    assert price.each % step == 0
    assert over_target(price, price.target) >= -slack
    lower = price.each - step
    if lower > 0:
        terms = Terms(target=Target(given=lower))
        cheaper = price_estimate(replace(order, terms=terms), estimate, workshop)
        assert over_target(cheaper, price.target) < slack


@given(sales(), st.integers(1, 3000))
def test_margin_and_markup_agree_where_no_fee_is_taken(
    sale: tuple[Order, Estimate, Workshop], thousandths_markup: int
) -> None:
    """Textbook: m = k / (1 + k), whatever the tax and delivery."""
    order, estimate, workshop = sale
    price = priced(order, estimate, workshop)
    markup = thousandths_markup / 1000
    plain = Sale(
        cost=price.cost,
        delivery=price.delivery,
        tax=workshop.tax,
        fees=(),
        payments=1,
        currency=price.currency,
    )
    try:
        by_markup = solve_price(equation_of(plain, Target(markup=markup)))
    except Refused:
        assume(False)  # noqa: FBT003 - its own way of asking
    margin = Target(margin=markup / (1 + markup))
    by_margin = solve_price(equation_of(plain, margin))
    assert abs(by_markup - by_margin) <= abs(by_markup) * Decimal("1e-9") + Decimal("1e-9")
