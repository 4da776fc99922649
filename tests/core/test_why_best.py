"""Why the best size pays best, against what it would earn were it as the others, reckoned anew."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from statistics import fmean
from typing import NamedTuple

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from quoting.core.estimate.chores import Part
from quoting.core.order.order import Terms
from quoting.core.price.cost_lines import LineKind
from quoting.core.price.price import price_estimate
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.best_size import Reason, best_of, why_best
from quoting.core.workshop.selling import Target
from tests.examples import (
    LARGE,
    SMALL,
    TODAY,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
)
from tests.motif_examples import motif_workshop, sample_squares, squares_order

SHOPS = [
    sample_workshop(yarns=(sample_yarn(put_ups=(put_up,), stock=()),)) for put_up in (SMALL, LARGE)
]
SOLD = [
    sample_quote(sample_order(terms=Terms(target=Target(given=Decimal(300)))), shop)
    for shop in SHOPS
]


def made(bought: int, each: int, ends: float, fixed: float) -> Quote:
    """Return the cot blanket sold at a price, with ends and fixed work of so many times as long."""
    times = {Part.WEAVING_IN: ends, Part.FINISHING: fixed, Part.OFFICE: fixed}
    quote = SOLD[bought]
    tasks = tuple(
        replace(task, minutes_each=times.get(task.part, 1.0) * task.minutes_each)
        for task in quote.estimate.hours.tasks
    )
    estimate = replace(quote.estimate, hours=replace(quote.estimate.hours, tasks=tasks))
    order = replace(quote.order, terms=Terms(target=Target(given=Decimal(each))))
    price = price_estimate(order, estimate, quote.workshop)
    return replace(quote, order=order, estimate=estimate, price=price)


class Hour(NamedTuple):
    """What belongs to an hour at the stitches: money before the yarn left over, that, and hours."""

    money: float
    unused: float
    ends: float
    fixed: float

    def earned(self) -> float:
        return (self.money - self.unused) / (1 + self.ends + self.fixed)


def hour_of(quote: Quote) -> Hour:
    hours, price = quote.estimate.hours, quote.price
    ends = float(hours.of(Part.WEAVING_IN))
    fixed = float(hours.of(Part.FINISHING) + hours.of(Part.OFFICE))
    stitching = float(hours.total) - ends - fixed
    bought_m = sum(sum(colour.balls_m) for colour in quote.estimate.colours)
    unused = quote.estimate.metres_left / bought_m * float(price.amount(LineKind.YARN))
    kept = float(price.profit + price.own_pay)
    return Hour(*(amount / stitching for amount in (kept + unused, unused, ends, fixed)))


quotes = st.builds(
    made,
    st.integers(0, 1),
    st.integers(200, 340),
    st.floats(0.2, 6),
    st.floats(0.2, 6),
)


@given(st.lists(quotes, min_size=2, max_size=4))
def test_the_reason_is_what_would_cost_the_best_most_were_it_as_the_others_are(
    found: list[Quote],
) -> None:
    best = best_of([quote.price.earned_per_hour for quote in found])
    own = hour_of(found[best])
    others = [hour_of(quote) for number, quote in enumerate(found) if number != best]
    usual = Hour(*map(fmean, zip(*others, strict=True)))
    lost = {
        reason: own.earned() - own._replace(**{field: getattr(usual, field)}).earned()
        for reason, field in (
            (Reason.ENDS, "ends"),
            (Reason.SKEIN_STEPS, "unused"),
            (Reason.FIXED_HOURS, "fixed"),
            (Reason.PRICE, "money"),
        )
    }
    by_price = lost.pop(Reason.PRICE)
    most, next_most = sorted(lost.values(), reverse=True)[:2]
    assume(min(abs(most - next_most), abs(most), abs(sum(lost.values()) - by_price)) > 1e-6)
    wins = most > 0 and sum(lost.values()) > by_price
    assert why_best(found, best) is (max(lost, key=lambda r: lost[r]) if wins else Reason.PRICE)


def test_each_of_the_reasons_is_found_among_such_quotes() -> None:
    plain = made(0, 300, 1, 1)
    assert why_best([plain, made(0, 300, 4, 1)], 0) is Reason.ENDS
    assert why_best([plain, made(0, 300, 1, 4)], 0) is Reason.FIXED_HOURS
    assert why_best([plain, made(0, 220, 1, 1)], 0) is Reason.PRICE


def test_an_hour_reckoned_here_earns_what_the_price_says() -> None:
    quote = made(1, 300, 2, 3)
    assert hour_of(quote).earned() == pytest.approx(float(quote.price.earned_per_hour), abs=0.006)


def test_of_two_that_are_the_same_in_everything_nothing_but_the_price_is_a_reason() -> None:
    assert why_best([made(0, 300, 1, 1)] * 2, 0) is Reason.PRICE


def test_blocking_each_motif_is_no_work_that_every_size_takes_alike() -> None:
    """The same squares once blocked and once not, where nothing else takes hours of its own."""
    none = sample_minutes(
        start_and_finish=(0.0,),
        wash=(0.0,),
        photograph=(0.0,),
        pack=(0.0,),
        letters=(0.0,),
        block_motif=(30.0,),
    )
    order = replace(squares_order(), terms=Terms(target=Target(given=Decimal(900))))
    blocked = squares_order(body=replace(sample_squares(), blocked=True)).design
    quotes = [
        quote_order(each, motif_workshop(minutes=none), today=TODAY)
        for each in (order, replace(order, design=blocked))
    ]
    assert best_of([quote.price.earned_per_hour for quote in quotes]) == 0
    assert why_best(quotes, 0) is not Reason.FIXED_HOURS
