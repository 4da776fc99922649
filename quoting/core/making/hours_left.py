"""The hours that are left of an order being made, at the pace that it and the workshop tell."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from typing import Any

from quoting.core.estimate.chores import ENDS_CHORES
from quoting.core.estimate.hours import Hours, Task, work_hours
from quoting.core.ground.money import MINUTES_PER_HOUR
from quoting.core.making.log_lines import Doing, EndsWoven, LogEntry, Session
from quoting.core.making.progress import Progress, progress_of
from quoting.core.making.rows_work import rows_work
from quoting.core.making.session_motifs import session_motifs, with_motifs_told
from quoting.core.making.session_pace import session_timings
from quoting.core.making.told import told
from quoting.core.order.design import EndsBecome
from quoting.core.quote.fate_of_ends import main_fate
from quoting.core.quote.quote import Quote
from quoting.core.workshop.calendar import ready_by
from quoting.core.workshop.timings import Minutes, Readings
from quoting.core.workshop.workshop import Workshop

BY_THE_MINUTE = (Doing.FINISHING, Doing.OFFICE)
"""What is told in minutes alone: nobody counts how much of it is done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursLeft:
    """What is left to do: `hours` has its parts, their total and its range.

    `workshop` is the quote's, with what the order itself told of the pace. `spent` is what was
    told, in minutes.
    """

    hours: Hours
    workshop: Workshop
    spent: Mapping[Doing, float]

    def of(self, doing: Doing) -> Decimal:
        """Return the hours left of one kind of work."""
        return sum((self.hours.of(part) for part in doing.parts), Decimal(0))

    @property
    def spent_minutes(self) -> float:
        """All the minutes that were told."""
        return math.fsum(self.spent.values())

    def ready_by(
        self, today: date, *, after: date | None = None, yarn_to_come: bool = False
    ) -> date:
        """Return the day the order is with its buyer, if its high hours are worked from tomorrow.

        Or from the day after `after`, where it has to wait for its turn: the hours that the
        calendar has promised are not counted. `yarn_to_come` says that the work waits for new yarn.
        """
        return ready_by(
            today,
            calendar=replace(self.workshop.calendar, hours_promised=0),
            hours=self.hours.span.high / MINUTES_PER_HOUR,
            hours_per_week=self.workshop.hours_per_week,
            yarn_bought=yarn_to_come,
            after=after,
        )


def hours_left(quote: Quote, entries: tuple[LogEntry, ...]) -> HoursLeft:
    """Return the hours left of an order.

    Stitches, turns, changes and joins are those of the rows to come, ends those that were not
    woven in. Of finishing and the office what was told is taken off what they were to take. The
    pace is pooled from the timings of the quote's workshop and those of the order's sessions, each
    by its stitches; that of ends from the workshop's minutes and each day that told both
    minutes and ends. Minutes that tell no rows or ends are spent, and tell no pace.
    """
    progress, work = progress_of(quote, entries), rows_work(quote)
    workshop = pooled_workshop(quote, entries)
    load = work.of(progress.rows_done + 1, progress.rows, ends=progress.ends_left)
    hours = _less_told(work_hours(load, workshop), progress)
    return HoursLeft(hours=hours, workshop=workshop, spent=progress.minutes)


def pooled_workshop(quote: Quote, entries: tuple[LogEntry, ...]) -> Workshop:
    """Return the quote's workshop with what the order's own sessions tell of the pace."""
    workshop = quote.workshop
    further = session_motifs(quote, entries)
    timed = {motif.name for motif in workshop.motifs if motif.timings}
    workshop = with_motifs_told(workshop, tuple(t for t in further if t.motif in timed))
    timings = (*workshop.timings, *session_timings(quote, entries))
    ends = main_fate(quote)
    minutes = with_end_minutes(workshop.minutes, ends, end_readings(entries))
    return replace(workshop, timings=timings, minutes=minutes)


def with_end_minutes(minutes: Minutes, ends: EndsBecome, readings: Readings) -> Minutes:
    """Return minutes with what further ends took, by what became of them."""
    if not readings:
        return minutes
    key = ENDS_CHORES[ends]
    further: dict[str, Any] = {key: (*(getattr(minutes, key) or ()), *readings)}
    return replace(minutes, **further)


def end_readings(entries: tuple[LogEntry, ...]) -> Readings:
    """Return the minutes that an end took, of each day that told minutes of ends, and how many."""
    minutes: dict[date, float] = {}
    ends: dict[date, int] = {}
    for session in told(entries, Session):
        if session.doing is Doing.WEAVING_IN:
            minutes[session.day] = minutes.get(session.day, 0.0) + session.minutes
    for woven in told(entries, EndsWoven):
        ends[woven.day] = ends.get(woven.day, 0) + woven.ends
    return tuple(minutes[day] / ends[day] for day in minutes if day in ends)


def _less_told(hours: Hours, progress: Progress) -> Hours:
    """Take off what was told of the work that is told by its minutes alone."""
    left = {
        part: _share_left(hours, doing, progress.minutes.get(doing, 0.0))
        for doing in BY_THE_MINUTE
        for part in doing.parts
    }
    tasks = (_part_of(task, left.get(task.part, 1.0)) for task in hours.tasks)
    return replace(hours, tasks=tuple(task for task in tasks if task.minutes))


def _share_left(hours: Hours, doing: Doing, told_min: float) -> float:
    planned = math.fsum(task.minutes for task in hours.tasks if task.part in doing.parts)
    return max(0.0, 1 - told_min / planned) if planned else 1.0


def _part_of(task: Task, share: float) -> Task:
    return replace(task, count=task.count * share, shared_min=task.shared_min * share)
