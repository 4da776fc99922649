"""Calmer stripes: when some are offered, when none are, and what is left alone."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.order.design import Design
from quoting.core.order.in_rows import Section, Stripe
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.weighing.alternatives import OFFERED
from quoting.core.weighing.calmer_stripes import calmer_stripes
from quoting.core.weighing.stripe_search import Repeat
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import PutUp
from tests.core.striped_orders import endless, ends_counted, offered, striped
from tests.examples import (
    COLOURS,
    TODAY,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

pytestmark = pytest.mark.slow


def test_where_the_ends_are_few_nothing_is_offered() -> None:
    order = striped(section("oat", "teal", "rust"))
    assert sample_quote(order).estimate.ends < MANY_ENDS
    assert offered(order) == ()


def test_where_nothing_near_leaves_half_the_ends_nothing_is_offered() -> None:
    """Six colours of four rows each wait too long to be carried, in whatever order."""
    order = striped(section(*COLOURS, rows=4))
    assert sample_quote(order).estimate.ends >= MANY_ENDS
    assert offered(order) == ()


def test_where_half_of_the_ends_are_joins_of_short_balls_no_stripes_can_spare_them() -> None:
    """Both balls are joined within the rows; of the shorter, more joins remain than half."""
    order = striped(section("teal", "rust"))

    def short(length_m: float) -> Workshop:
        ball = PutUp(weight_g=length_m / 2, length_m=length_m, price=Decimal(1))
        return sample_workshop(yarns=(sample_yarn(put_ups=(ball,), stock=()),))

    assert len(offered(order, short(20))) == OFFERED
    assert offered(order, short(8)) == ()


def test_a_maker_who_never_carries_is_not_told_to() -> None:
    never = endless(habits=Habits(carry_rows=0))
    found = offered(striped(section("oat", "teal"), first_rows=(), border=()), never)
    assert found
    assert all(one.quote.estimate.carries == 0 for one in found)


def test_a_carry_goes_no_higher_than_the_maker_lets_it() -> None:
    """Single rows of tr, thrice as high as sc: two rows between are too high, and none is tried."""
    low = endless(habits=Habits(carry_rows=4, carry_height_cm=2.0))
    quote = sample_quote(striped(section("oat", "teal", "rust", "plum"), stitch="tr"), low)
    assert quote.estimate.carries == 0
    found = calmer_stripes(quote, today=TODAY)
    assert found
    assert all(one.quote.estimate.carries == 0 for one in found)


def test_a_section_of_several_stitches_keeps_its_stripes() -> None:
    mixed = Section(
        stripes=(
            Stripe(colour="oat", stitch="sc"),
            Stripe(colour="teal", stitch="dc"),
            Stripe(colour="rust", stitch="dc"),
            Stripe(colour="plum", stitch="sc"),
        ),
        repeats=3,
    )
    found = offered(striped(section("oat", "teal", "rust", "plum", repeats=20), mixed))
    assert found
    assert all(one.design.body.sections[1] == mixed for one in found)


@pytest.mark.parametrize("repeats", [22, 26, 28])
def test_a_longer_repeat_is_left_out_where_whole_ones_miss_the_height(repeats: int) -> None:
    """Of repeats of two rows as many as asked; six or eight rows at a time miss by four of them."""
    order = striped(section("oat", "teal", repeats=repeats), first_rows=(), border=())
    asked_cm = sample_quote(order, endless()).plan.height_cm
    found = offered(order, endless())
    assert len(found) == OFFERED
    assert all(abs(one.quote.plan.height_cm - asked_cm) < 2 * 0.95 + 1e-6 for one in found)


def test_of_two_alike_the_ends_of_both_are_halved() -> None:
    pair = replace(striped(section("oat", "teal", "rust", "plum")), quantity=2)
    quote = sample_quote(pair, endless())
    assert quote.estimate.ends == ends_counted(quote)
    found = calmer_stripes(quote, today=TODAY)
    assert found
    assert all(one.quote.order.quantity == 2 for one in found)
    assert all(2 * one.quote.estimate.ends <= quote.estimate.ends for one in found)


def test_what_is_offered_costs_less_to_weave_in() -> None:
    order = striped(section("oat", "teal", "rust", "plum"))
    total = sample_quote(order).price.total
    found = offered(order)
    assert found
    assert all(one.quote.price.total < total for one in found)


def test_stripes_that_differ_only_in_where_they_begin_are_offered_once() -> None:
    found = offered(striped(section("oat", "teal")))
    rings = [Repeat(tuple(_rows(alternative.design)), 0).ring for alternative in found]
    assert rings
    assert len(set(rings)) == len(rings)


def _rows(design: Design) -> list[str]:
    return [stripe.colour for stripe in design.body.sections[0].stripes for _ in range(stripe.rows)]
