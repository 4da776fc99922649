"""The size that earns most an hour at given prices, and why it is the best."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.estimate.chores import Part
from quoting.core.order.order import Terms
from quoting.core.price.price import price_estimate
from quoting.core.quote.quote import Quote
from quoting.core.weighing.best_size import Reason, best_of, why_best
from quoting.core.workshop.selling import Target
from tests.core.compared_sizes import COT, SIZES, at, compared
from tests.examples import LARGE, SMALL, sample_order, sample_quote, sample_workshop, sample_yarn


def test_of_sizes_that_earn_the_same_the_first_is_best() -> None:
    assert best_of([Decimal(3), Decimal(7), Decimal(7)]) == 1


@given(st.lists(st.decimals(-100, 100, places=2), min_size=1))
def test_nothing_earns_more_than_the_best(earned: list[Decimal]) -> None:
    assert earned[best_of(earned)] == max(earned)


def with_more(part: Part, quote: Quote, times: float = 4) -> Quote:
    """Return a quote whose work of one part takes several times as long, at the same price."""
    hours = quote.estimate.hours
    tasks = tuple(
        replace(task, minutes_each=times * task.minutes_each) if task.part is part else task
        for task in hours.tasks
    )
    estimate = replace(quote.estimate, hours=replace(hours, tasks=tasks))
    price = price_estimate(quote.order, estimate, quote.workshop)
    return replace(quote, estimate=estimate, price=price)


def sold_at(each: str) -> Quote:
    return sample_quote(sample_order(terms=Terms(target=Target(given=Decimal(each)))))


@pytest.mark.parametrize(
    ("part", "reason"),
    [
        (Part.WEAVING_IN, Reason.ENDS),
        (Part.FINISHING, Reason.FIXED_HOURS),
        (Part.OFFICE, Reason.FIXED_HOURS),
    ],
)
def test_the_best_is_the_best_for_the_hours_that_the_others_lose(
    part: Part, reason: Reason
) -> None:
    best = sold_at("300")
    worse = with_more(part, best)
    assert best.price.earned_per_hour > worse.price.earned_per_hour
    assert why_best([worse, best, worse], 1) is reason


def test_the_best_is_the_best_for_the_skeins_where_the_others_leave_most_of_theirs() -> None:
    terms = Terms(target=Target(given=Decimal(300)))
    best, worse = (
        sample_quote(
            sample_order(terms=terms),
            sample_workshop(yarns=(sample_yarn(put_ups=(put_up,), stock=()),)),
        )
        for put_up in (SMALL, replace(LARGE, price=4 * SMALL.price))
    )
    assert best.price.earned_per_hour > worse.price.earned_per_hour
    assert why_best([best, worse], 0) is Reason.SKEIN_STEPS


def test_of_two_alike_the_dearer_is_the_best_for_its_price_alone() -> None:
    assert why_best([sold_at("300"), sold_at("200")], 0) is Reason.PRICE


def test_a_dear_size_is_not_praised_for_the_few_ends_that_it_also_has() -> None:
    cheap = with_more(Part.WEAVING_IN, sold_at("200"), 1.2)
    assert why_best([cheap, sold_at("900")], 1) is Reason.PRICE
    assert why_best([cheap, sold_at("200")], 1) is Reason.ENDS


def test_where_a_price_goes_by_the_area_the_largest_is_the_best_for_its_fixed_hours() -> None:
    by_area = {size: Decimal(round(size.width_cm * size.height_cm / 30)) for size in SIZES}
    found = compared(prices=by_area)
    assert found.best == 3
    assert found.reason is Reason.FIXED_HOURS


def test_a_size_alone_is_the_best_for_its_price() -> None:
    found = compared(COT, prices=at("250", COT))
    assert (found.best, found.reason) == (0, Reason.PRICE)


def test_no_hours_at_the_stitches_are_no_reason_to_stumble() -> None:
    quote = sold_at("300")
    office = replace(
        quote.estimate.hours,
        tasks=tuple(task for task in quote.estimate.hours.tasks if task.part is Part.OFFICE),
    )
    idle = replace(quote, estimate=replace(quote.estimate, hours=office))
    assert why_best([idle, quote], 0) is Reason.PRICE
    assert why_best([idle, quote], 1) is Reason.PRICE
