"""A budget: what it buys at each size, and the largest size that pays the hour."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order, Terms
from quoting.core.order.resizing import Size
from quoting.core.quote.quote import quote_order
from quoting.core.weighing.budget import BudgetAnswer, each_for_total, within_budget
from quoting.core.weighing.comparison import price_at
from quoting.core.workshop.selling import (
    MOST_MONEY,
    Delivery,
    Fee,
    FeeBase,
    Pricing,
    Target,
    Tax,
    TaxShown,
)
from quoting.core.workshop.workshop import Workshop
from tests.core.compared_sizes import BED, COT, PRAM
from tests.examples import TODAY, sample_design, sample_order, sample_quote, sample_workshop

SIZES = (COT, PRAM, BED)


def answer(
    budget: str, *, order: Order | None = None, workshop: Workshop | None = None
) -> BudgetAnswer:
    return within_budget(
        order or sample_order(),
        workshop or sample_workshop(),
        SIZES,
        budget=Decimal(budget),
        today=TODAY,
    )


taxes = st.builds(
    Tax,
    registered=st.booleans(),
    rate=st.sampled_from([0.05, 0.081, 0.2, 0.255]),
    shown=st.sampled_from(TaxShown),
    on_delivery=st.booleans(),
)
fees = st.lists(
    st.builds(
        Fee,
        name=st.just("Card payment"),
        rate=st.sampled_from([0.015, 0.3]),
        fixed=st.sampled_from([Decimal(0), Decimal(2)]),
        on=st.sampled_from(FeeBase),
    ),
    max_size=1,
).map(tuple)
workshops = st.builds(
    lambda currency, tax, fees, charged: sample_workshop(
        currency=currency,
        tax=tax,
        fees=fees,
        delivery=Delivery(charged=charged, paid=Decimal(4)),
        pricing=Pricing(target=Target(margin=0.15)),
    ),
    st.sampled_from(["GBP", "JPY", "KWD"]),
    taxes,
    fees,
    st.sampled_from([Decimal(0), Decimal(5), Decimal("7.5")]),
)
budgets = st.decimals("0.001", "2000", places=3)
small = sample_design(width_cm=20, height_cm=20)


@settings(max_examples=150)
@given(workshops, budgets, st.integers(1, 4))
def test_the_most_that_a_budget_buys_never_costs_more_than_the_budget(
    workshop: Workshop, budget: Decimal, quantity: int
) -> None:
    order = sample_order(design=small, extras=(), quantity=quantity, terms=Terms(rush=0.2))
    quote = quote_order(order, workshop, today=TODAY)
    each = each_for_total(quote, budget)
    penny = Decimal(1).scaleb(-minor_digits(workshop.currency))
    if each is not None:
        assert price_at(quote, each).total <= budget
    more = price_at(quote, (each or 0) + penny)
    assert more.total > budget - penny


@settings(max_examples=25)
@given(workshops, st.decimals("20", "600", places=2), st.integers(1, 3))
def test_every_size_is_judged_by_its_total_and_by_the_hour(
    workshop: Workshop, budget: Decimal, quantity: int
) -> None:
    found = within_budget(
        sample_order(quantity=quantity), workshop, SIZES, budget=budget, today=TODAY
    )
    for fit in found.fits:
        assert fit.fits == (fit.compared.quote.price.total <= budget)
        bought = fit.at_budget
        assert bought is None or bought.total <= budget
        assert fit.pays_the_hour == (bought is not None and bought.profit >= 0)
    paying = [fit.compared.area_cm2 for fit in found.fits if fit.pays_the_hour]
    assert (found.largest is None) == (not paying)
    if found.largest is not None:
        assert found.fits[found.largest].compared.area_cm2 == max(paying)


def test_the_largest_that_pays_the_hour_need_not_fit_at_the_target() -> None:
    """285 is short of what the cot blanket must cost at the target, and still pays its hour."""
    found = answer("285")
    by_size = {str(fit.compared.size): fit for fit in found.fits}
    cot = by_size["80x100cm"]
    assert not cot.fits
    assert cot.pays_the_hour
    assert by_size["60x75cm"].fits
    assert not by_size["90x120cm"].pays_the_hour
    assert found.largest is not None
    assert found.fits[found.largest] is cot


def test_a_total_that_is_just_the_budget_fits() -> None:
    total = sample_quote().price.total
    assert answer(str(total)).fits[0].fits
    assert not answer(str(total - Decimal("0.01"))).fits[0].fits


def test_a_budget_that_delivery_takes_whole_buys_nothing() -> None:
    found = answer("5.00")
    assert [fit.at_budget for fit in found.fits] == [None] * 3
    assert found.largest is None


def test_a_budget_pays_for_all_of_several_alike() -> None:
    pair = answer("500", order=sample_order(quantity=2)).fits[0].at_budget
    assert pair is not None
    assert (pair.quantity, pair.total) == (2, Decimal("499.99") + Decimal("0.01"))
    assert pair.each == Decimal("247.50")


@pytest.mark.parametrize(
    ("budget", "code"),
    [
        (Decimal(0), "not-above"),
        (Decimal(-1), "not-above"),
        (Decimal("NaN"), "not-above"),
        (Decimal("Infinity"), "not-above"),
        (Decimal(MOST_MONEY) + 1, "too-large"),
    ],
)
def test_a_budget_that_is_none_is_refused(budget: Decimal, code: str) -> None:
    with pytest.raises(Refused) as caught:
        answer(str(budget))
    (mistake,) = caught.value.mistakes
    assert (mistake.path, mistake.code) == ("budget", code)


def test_the_smallest_budget_there_is_buys_nothing_and_is_no_mistake() -> None:
    found = answer("0.01")
    assert (found.largest, len(found.fits)) == (None, 3)
    assert not any(fit.fits or fit.pays_the_hour for fit in found.fits)


def test_the_largest_budget_buys_everything() -> None:
    found = answer(str(MOST_MONEY))
    assert all(fit.fits and fit.pays_the_hour for fit in found.fits)


def test_a_size_that_cannot_be_made_is_listed_and_the_rest_are_judged() -> None:
    tiny = Size(width_cm=2, height_cm=2)
    found = within_budget(
        sample_order(), sample_workshop(), (tiny, COT), budget=Decimal(300), today=TODAY
    )
    assert [fit.compared.size for fit in found.fits] == [COT]
    assert [refusal.size for refusal in found.comparison.refused] == [tiny]


def test_a_price_that_the_order_gives_fits_a_budget_at_its_own_size_only() -> None:
    given_price = sample_order(terms=Terms(target=Target(given=Decimal(10))))
    plain = answer("250")
    found = answer("250", order=given_price)
    for kept, asked in zip(found.fits, plain.fits, strict=True):
        assert kept.fits == (asked.fits or kept.compared.size == COT)
        assert kept.at_budget == asked.at_budget
    assert [s.saved for s in found.savings] == [s.saved for s in plain.savings]
