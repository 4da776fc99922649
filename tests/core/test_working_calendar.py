"""When a blanket is with its buyer."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest

from quoting.core.workshop.calendar import WorkingCalendar, ready_by
from tests.examples import sample_quote

TODAY = date(2026, 11, 25)


def days(hours: float, *, a_week: float = 7, bought: bool = False, **changes: Any) -> int:
    """Return the days from today until it is ready."""
    ready = ready_by(
        TODAY,
        calendar=WorkingCalendar(**changes),
        hours=hours,
        hours_per_week=a_week,
        yarn_bought=bought,
    )
    return (ready - TODAY).days


def test_a_weeks_hours_take_a_week() -> None:
    assert days(7) == 7
    assert days(7.1) == 8
    assert days(0) == 0


@pytest.mark.parametrize("a_week", [4.25, 8.5, 12, 13.7, 40])
def test_whole_weeks_are_whole_weeks_at_any_pace(a_week: float) -> None:
    assert [days(a_week * weeks, a_week=a_week) for weeks in (1, 2, 4)] == [7, 14, 28]


def test_work_waits_for_yarn_that_is_bought_and_not_for_stock() -> None:
    assert days(7, bought=True, yarn_arrives_days=5) == 12
    assert days(7, bought=False, yarn_arrives_days=5) == 7


def test_work_waits_for_the_orders_already_agreed_while_the_yarn_travels() -> None:
    assert days(7, hours_promised=14) == 21
    assert days(7, hours_promised=14, bought=True, yarn_arrives_days=5) == 21
    assert days(7, hours_promised=2, bought=True, yarn_arrives_days=5) == 12


def test_days_off_carry_no_work_but_drying_and_post_go_on() -> None:
    off = tuple(TODAY + timedelta(days=n) for n in (1, 2, 9, 30))
    assert days(7, days_off=off) == 10
    assert days(7, days_off=off, drying_days=2, post_days=3) == 15


def test_a_day_off_today_or_after_the_last_working_day_loses_no_time() -> None:
    assert days(7, days_off=(TODAY,)) == 7
    assert days(7, days_off=(TODAY + timedelta(days=7),)) == 8
    assert days(7, days_off=(TODAY + timedelta(days=8),)) == 7


def test_a_year_of_days_off_ends() -> None:
    off = tuple(TODAY + timedelta(days=n) for n in range(1, 366))
    assert days(1, days_off=off) == 366


def test_an_endless_queue_ends_at_the_last_day_there_is() -> None:
    ready = ready_by(
        TODAY,
        calendar=WorkingCalendar(hours_promised=1_000_000),
        hours=1,
        hours_per_week=0.001,
        yarn_bought=False,
    )
    assert ready == date(2999, 12, 31)


def test_the_cot_blanket_is_ready_by_hand() -> None:
    """By hand: 5 days of post, 15.90 h at the most in days of 12/7 h (9.28: ten), 2 and 3 more."""
    assert sample_quote().ready_by == date(2026, 11, 25) + timedelta(days=5 + 10 + 2 + 3)
