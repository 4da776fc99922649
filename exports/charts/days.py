"""Days across a chart: where each lies, and which follow on one another."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from exports.charts.ground import SIDE, VIEW_WIDTH

DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class DayScale:
    """Where days lie across a chart, from the morning of the first to that of the last."""

    first: date
    last: date

    def x(self, day: date) -> float:
        """Return how far right a day begins; one outside of the chart lies at its side."""
        day = min(max(day, self.first), self.last)
        share = (day - self.first) / (self.last - self.first)
        return SIDE + share * (VIEW_WIDTH - 2 * SIDE)

    def evening(self, day: date) -> float:
        """Return how far right a day ends."""
        return self.x(day + DAY)

    def holds(self, day: date) -> bool:
        """Return whether a day lies within the chart."""
        return self.first <= day < self.last

    @property
    def weeks(self) -> tuple[date, ...]:
        """The first day of each week, from the first day on."""
        count = (self.last - self.first).days // 7
        return tuple(self.first + timedelta(weeks=number) for number in range(count))


def runs(days: Iterable[date]) -> Iterator[tuple[date, date]]:
    """Yield the first and the last day of all that follow on one another."""
    first = last = None
    for day in sorted(set(days)):
        if first is None or last is None or day != last + DAY:
            if first is not None and last is not None:
                yield first, last
            first = day
        last = day
    if first is not None and last is not None:
        yield first, last
