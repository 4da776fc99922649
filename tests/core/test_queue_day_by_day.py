"""The queue held against a calendar that is gone through day by day, whatever is in it."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.workshop.calendar import LAST_DAY
from quoting.core.workshop.queue import AgreedOrder, Turn, queue_orders
from quoting.core.workshop.weeks import days_worked, monday_of, weeks_ahead
from quoting.core.workshop.workshop import Workshop
from tests.core.agreed_orders import TODAY, agreed, working

near_days = st.integers(-20, 90).map(lambda n: TODAY + timedelta(days=n))
quarters = st.integers(1, 200).map(lambda n: n / 4)
orders = st.builds(
    agreed,
    st.integers(1, 10**6),
    quarters,
    on_the_hook=st.booleans(),
    agreed_on=near_days,
    yarn_bought=st.booleans(),
)
queues = st.lists(orders, max_size=6)
workshops = st.builds(
    working,
    st.sampled_from([0.5, 1, 2, 3.25]),
    yarn_arrives_days=st.integers(0, 15),
    drying_days=st.integers(0, 4),
    post_days=st.integers(0, 6),
    hours_promised=st.integers(0, 60).map(lambda n: n / 4),
    days_off=st.lists(near_days, max_size=30).map(tuple),
)


def gone_through(
    orders: Sequence[AgreedOrder], workshop: Workshop
) -> list[tuple[date, date, date]]:
    """Return when each order is begun, made and ready, by living one day after another.

    Written from the words of the rule and from nothing of the program: hours are exact fractions.
    """
    calendar, found = workshop.calendar, []
    a_day = Fraction(workshop.hours_per_week) / 7
    hooked = [order for order in orders if order.on_the_hook]
    work: list[tuple[Fraction, date, AgreedOrder | None]] = [
        (Fraction(calendar.hours_promised), TODAY, None)
    ]
    for order in [*hooked, *(order for order in orders if not order.on_the_hook)]:
        travels = calendar.yarn_arrives_days * (order.yarn_bought and not order.on_the_hook)
        there = order.agreed_on + timedelta(days=travels)
        work.append((Fraction(order.hours), there, order))
    today = TODAY
    for hours, there, order in work:
        begun, left = None, hours
        while left > 0:
            today += timedelta(days=1)
            if today in calendar.days_off or today <= there:
                continue
            begun = begun or today
            left -= a_day
        if order is not None and begun is not None:
            after = timedelta(days=calendar.drying_days + calendar.post_days)
            found.append((begun, today, today + after))
    return found


def days_of(turn: Turn) -> tuple[date, date, date]:
    return turn.starts_on, turn.made_by, turn.ready_by


@given(queues, workshops)
def test_every_turn_is_as_if_each_day_were_lived_through(
    orders: list[AgreedOrder], workshop: Workshop
) -> None:
    turns = queue_orders(orders, workshop, today=TODAY).turns
    assert sorted(turn.order.order_id for turn in turns) == sorted(o.order_id for o in orders)
    assert [days_of(turn) for turn in turns] == gone_through(orders, workshop)


@given(queues, orders, st.integers(0, 6), workshops)
def test_a_further_order_makes_no_other_earlier(
    orders: list[AgreedOrder], further: AgreedOrder, at: int, workshop: Workshop
) -> None:
    longer = [*orders[:at], replace(further, order_id=0), *orders[at:]]
    after = iter(
        turn for turn in queue_orders(longer, workshop, today=TODAY).turns if turn.order.order_id
    )
    for turn in queue_orders(orders, workshop, today=TODAY).turns:
        assert days_of(turn) <= days_of(next(after))


@given(queues, near_days, workshops)
def test_a_further_day_off_makes_nothing_earlier(
    orders: list[AgreedOrder], day: date, workshop: Workshop
) -> None:
    days_off = (*workshop.calendar.days_off, day)
    idler = replace(workshop, calendar=replace(workshop.calendar, days_off=days_off))
    before, after = (queue_orders(orders, shop, today=TODAY).turns for shop in (workshop, idler))
    assert all(days_of(one) <= days_of(two) for one, two in zip(before, after, strict=True))


@given(queues, workshops)
def test_the_hours_laid_into_days_are_the_hours_of_the_order(
    orders: list[AgreedOrder], workshop: Workshop
) -> None:
    taken: Counter[date] = Counter()
    for turn in queue_orders(orders, workshop, today=TODAY).turns:
        days = list(days_worked(turn.starts_on, turn.order.hours, workshop, until=LAST_DAY))
        assert math.fsum(hours for _, hours in days) == pytest.approx(turn.order.hours)
        assert (days[0][0], days[-1][0]) == (turn.starts_on, turn.made_by)
        taken.update(day for day, _ in days)
    assert set(taken.values()) <= {1}, "no day is worked on for two"
    assert not set(taken) & set(workshop.calendar.days_off)


@given(queues, workshops)
def test_no_week_has_more_taken_than_it_has_hours(
    orders: list[AgreedOrder], workshop: Workshop
) -> None:
    queue = queue_orders(orders, workshop, today=TODAY)
    weeks = weeks_ahead(queue, workshop, today=TODAY)
    assert all(-1e-9 <= week.taken <= week.hours + 1e-9 for week in weeks)
    assert [week.begins_on for week in weeks] == [
        monday_of(TODAY) + timedelta(weeks=number) for number in range(12)
    ]
    if all(turn.made_by < weeks[-1].begins_on for turn in queue.turns):
        promised = workshop.calendar.hours_promised
        whole = math.fsum([promised, *(order.hours for order in orders)])
        assert math.fsum(week.taken for week in weeks) == pytest.approx(whole)


def test_the_weeks_by_hand() -> None:
    """Of 2 h a day, from Thursday 26 November; 7 h take four days, up to Sunday the 29th.

    The first week has four days left, one of them off: 6 h. The order then ends on Monday.
    """
    shop = working(days_off=(date(2026, 11, 27), date(2026, 12, 1), date(2026, 12, 2)))
    queue = queue_orders([agreed(1, 7)], shop, today=TODAY)
    first, second, third, *_ = weeks_ahead(queue, shop, today=TODAY)
    assert (first.begins_on, first.days_off, first.hours, first.taken) == (
        date(2026, 11, 23), 1, 6, 6
    )  # fmt: skip
    assert (second.days_off, second.hours, second.taken, second.free) == (2, 10, 1, 9)
    assert (third.hours, third.taken, third.free) == (14, 0, 14)


def test_a_week_begins_on_its_monday() -> None:
    """ISO 8601: week 1 of 2027 begins on Monday 4 January; 1 January is of week 53 of 2026."""
    assert monday_of(date(2027, 1, 1)) == date(2026, 12, 28)
    assert monday_of(date(2027, 1, 4)) == date(2027, 1, 4)
