"""The weeks ahead: the hours in each that can be worked, and those that are taken already."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from quoting.core.ground.sameness import NEAR
from quoting.core.workshop.calendar import DAYS_A_WEEK, later
from quoting.core.workshop.queue import Queue
from quoting.core.workshop.workshop import Workshop

WEEKS_AHEAD = 12

DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Week:
    """A week from Monday to Sunday (ISO 8601); of this one the days after today count."""

    begins_on: date
    days_off: int
    hours: float
    taken: float

    @property
    def free(self) -> float:
        """The hours that no order takes yet."""
        return max(0.0, self.hours - self.taken)


def monday_of(day: date) -> date:
    """Return the Monday of the week of a day."""
    return day - timedelta(days=day.weekday())


def weeks_ahead(queue: Queue, workshop: Workshop, *, today: date) -> tuple[Week, ...]:
    """Return this week and those after it, with the hours that the queue takes of each."""
    mondays = [monday_of(today) + timedelta(weeks=number) for number in range(WEEKS_AHEAD)]
    last = mondays[-1] + timedelta(days=DAYS_A_WEEK - 1)
    taken: defaultdict[date, float] = defaultdict(float)
    for first, hours in _work(queue, workshop, today):
        for day, worked in days_worked(first, hours, workshop, until=last):
            taken[monday_of(day)] += worked
    return tuple(_week(monday, taken[monday], workshop, today) for monday in mondays)


def days_worked(
    first: date, hours: float, workshop: Workshop, *, until: date
) -> Iterator[tuple[date, float]]:
    """Yield each day that so many hours are worked on from the first, and how many of them."""
    daily, off = workshop.hours_per_week / DAYS_A_WEEK, frozenset(workshop.calendar.days_off)
    left, day = hours, first
    while left > NEAR * daily and day <= until:
        if day not in off:
            yield day, min(daily, left)
            left -= daily
        day += DAY


def _work(queue: Queue, workshop: Workshop, today: date) -> Iterator[tuple[date, float]]:
    """Yield the first day and the hours of all that is promised."""
    yield later(today, 1), workshop.calendar.hours_promised
    for turn in queue.turns:
        yield turn.starts_on, turn.order.hours


def _week(monday: date, taken: float, workshop: Workshop, today: date) -> Week:
    days = [monday + timedelta(days=number) for number in range(DAYS_A_WEEK)]
    to_come = [day for day in days if day > today]
    off = len(set(to_come) & set(workshop.calendar.days_off))
    daily = workshop.hours_per_week / DAYS_A_WEEK
    return Week(begins_on=monday, days_off=off, hours=(len(to_come) - off) * daily, taken=taken)
