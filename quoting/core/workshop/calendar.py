"""When a blanket can be ready: yarn, hours a week, days off, drying, post."""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, timedelta

from quoting.core.ground.errors import Checks
from quoting.core.ground.sameness import NEAR

DAYS_A_WEEK = 7
HOURS_A_WEEK = 168
LEAST_HOURS = 0.1
"""Of work in a week."""

LAST_DAY = date(2999, 12, 31)


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingCalendar:
    """The maker's time: `hours_promised` belong to orders that were agreed outside of the book."""

    yarn_arrives_days: int = 0
    drying_days: int = 0
    post_days: int = 0
    hours_promised: float = 0.0
    days_off: tuple[date, ...] = ()

    def __post_init__(self) -> None:
        checks = Checks()
        for place in ("yarn_arrives_days", "drying_days", "post_days"):
            checks.number(place, getattr(self, place), least=0, most=3650)
        checks.number("hours_promised", self.hours_promised, least=0, most=1_000_000)
        checks.done()

    @property
    def days_after_making(self) -> int:
        """Days from the last stitch until the blanket is with its buyer."""
        return self.drying_days + self.post_days


def ready_by(
    today: date,
    *,
    calendar: WorkingCalendar,
    hours: float,
    hours_per_week: float,
    yarn_bought: bool,
    after: date | None = None,
) -> date:
    """Return the day the blanket is with its buyer.

    Work starts the day after today, when the yarn is there and the orders agreed before are
    made: those promised outside of the book, and those whose last day is `after`. A week's hours
    are spread over its seven days, and days off carry none.
    """
    daily, off = hours_per_week / DAYS_A_WEEK, calendar.days_off
    free = work_through(today, calendar.hours_promised / daily, off)
    arrival = later(today, calendar.yarn_arrives_days if yarn_bought else 0)
    made = work_through(max(free, arrival, after or free), hours / daily, off)
    return later(made, calendar.days_after_making)


def work_through(day: date, days_of_work: float, off: Collection[date]) -> date:
    """Return the day on which the last of so many working days after `day` ends.

    Of a part of a day it takes the whole: what comes after begins on a day of its own.
    """
    left = max(0, math.ceil(days_of_work - NEAR))
    end = later(day, left)
    for rest in sorted(set(off)):
        if day < rest <= end:
            end = later(end, 1)
    return end


def later(day: date, days: int) -> date:
    """Return the day so many days on, and none after the last; the same day where it is past."""
    return day + timedelta(days=max(0, min(days, (LAST_DAY - day).days)))
