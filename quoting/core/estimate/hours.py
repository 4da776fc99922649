"""Hours: the stitches at the maker's own pace, and everything round them."""

from __future__ import annotations

import math
from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from quoting.core.estimate.chores import Chore, Part, Workload, chores_of
from quoting.core.estimate.motif_time import MotifTime, motif_times
from quoting.core.estimate.pace import FEW_SESSIONS, Span, pace_of_readings
from quoting.core.estimate.pace_guesses import Guess, limits_of
from quoting.core.estimate.stitching_time import StitchingTime, stitching_times
from quoting.core.ground.money import MINUTES_PER_HOUR, round_hours
from quoting.core.plan.gauge import Sureness
from quoting.core.workshop.timings import Minutes, Readings, TimedStitch
from quoting.core.workshop.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One kind of work: so many of it, each taking so long. `what` is a stitch or a code.

    `timed_stitch` is what stitching was timed in, and rests on; it and the `yarn` that it is
    worked in are None for all other work. `shared_min` is its part of the half-width of all that
    rests on the same `readings`; `guesses` is what was never timed.
    """

    part: Part
    what: str
    count: float
    minutes_each: float
    sureness: Sureness
    shared_min: float
    readings: int = 1
    guesses: tuple[Guess, ...] = ()
    yarn: str | None = None
    timed_stitch: TimedStitch | None = None

    @property
    def minutes(self) -> float:
        """The minutes expected."""
        return self.count * self.minutes_each

    @property
    def basis(self) -> Hashable:
        """What it shares its error with: a timed stitch, or tasks of its own kind."""
        return self.timed_stitch or self.what

    @property
    def half_width_min(self) -> float:
        """The half-width of its own 95 % range."""
        return math.hypot(self.shared_min, self.minutes * limits_of(self.guesses))


@dataclass(frozen=True, slots=True, kw_only=True)
class Hours:
    """The tasks, and their hours by part, to two decimals; totals add the rounded parts.

    `not_given` names the work that there is to do and that no minutes are given for, `as_usual`
    what is reckoned by the minutes that are usual until the maker gives hers; `idle` is all work
    that there is to do and that takes no minutes, given or not. `widened_by` is the workshop's own
    factor of the range of all hours; tasks have theirs without it.
    """

    tasks: tuple[Task, ...]
    not_given: tuple[str, ...] = ()
    idle: tuple[Task, ...] = ()
    widened_by: float = 1.0
    as_usual: tuple[str, ...] = ()

    def of(self, part: Part) -> Decimal:
        """Return the hours of one part."""
        return round_hours(sum(t.minutes for t in self.tasks if t.part is part))

    @property
    def every_task(self) -> tuple[Task, ...]:
        """All there is to do by parts, in each what takes no minutes last."""
        return tuple(t for part in Part for t in (*self.tasks, *self.idle) if t.part is part)

    @property
    def making(self) -> Decimal:
        """All hours but those in the office."""
        return sum((self.of(part) for part in Part if part is not Part.OFFICE), Decimal(0))

    @property
    def office(self) -> Decimal:
        """The office hours."""
        return self.of(Part.OFFICE)

    @property
    def total(self) -> Decimal:
        """All hours."""
        return self.making + self.office

    @property
    def span(self) -> Span:
        """All hours, in minutes, with their range, widened as the workshop has it.

        Errors of one basis, or of one guess, add linearly; those between them in squares.
        """
        wide: dict[Hashable, float] = {}
        for task in self.tasks:
            wide[task.basis] = wide.get(task.basis, 0.0) + task.shared_min
            for guess in task.guesses:
                wide[guess] = wide.get(guess, 0.0) + guess.limits * task.minutes
        return Span(
            minutes=float(self.total) * MINUTES_PER_HOUR,
            half_width=math.hypot(*wide.values()) * self.widened_by,
        )

    @property
    def bases(self) -> tuple[TimedStitch, ...]:
        """What was timed and the stitching rests on, each once."""
        return tuple(dict.fromkeys(t.timed_stitch for t in self.tasks if t.timed_stitch))

    @property
    def guesses(self) -> tuple[Guess, ...]:
        """What was never timed, each once."""
        return tuple(dict.fromkeys(guess for task in self.tasks for guess in task.guesses))

    def timed(self, base: TimedStitch) -> float:
        """Return the minutes of all that rests on one timed stitch."""
        return sum(task.minutes for task in self.tasks if task.timed_stitch == base)

    def guessed(self, guess: Guess) -> float:
        """Return the minutes of all that one guess concerns."""
        return sum(task.minutes for task in self.tasks if guess in task.guesses)

    @property
    def yarns(self) -> tuple[str, ...]:
        """The yarns that are worked, each once."""
        return tuple(dict.fromkeys(task.yarn for task in self.tasks if task.yarn))

    @property
    def timed_enough(self) -> bool:
        """Whether all stitching rests on as many timings as a range can be promised of."""
        return all(t.readings >= FEW_SESSIONS for t in self.tasks if t.timed_stitch)

    @property
    def low(self) -> Decimal:
        """The low end of all hours."""
        return round_hours(self.span.low)

    @property
    def high(self) -> Decimal:
        """The high end of all hours."""
        return round_hours(self.span.high)


NOTHING: Readings = (0.0,)
"""What is reckoned with where no minutes are given."""


def work_hours(work: Workload, workshop: Workshop) -> Hours:
    """Return the hours of the work; errors as `stitching_times`."""
    stitching = [_stitching(time) for time in stitching_times(work.stitches, workshop)]
    stitching += [_motifs(time) for time in motif_times(work.motifs, workshop)]
    chores = [_ripping_back(stitching, workshop.minutes), *chores_of(work, workshop.minutes)]
    others = [_task(chore) for chore in chores if chore.count]
    return Hours(
        tasks=tuple(task for task in (*stitching, *others) if task.minutes),
        not_given=tuple(c.what for c in chores if c.count and c.readings is None),
        idle=tuple(task for task in others if not task.minutes),
        widened_by=workshop.ranges.hours,
        as_usual=tuple(c.what for c in chores if c.count and c.as_usual),
    )


def _motifs(time: MotifTime) -> Task:
    return Task(
        part=Part.STITCHING,
        what=time.motif,
        count=time.count,
        minutes_each=time.pace.minutes_each,
        sureness=Sureness.ESTIMATED if time.guesses else time.pace.sureness,
        shared_min=time.shared_min,
        readings=time.pace.sessions,
        guesses=time.guesses,
        yarn=time.yarn,
        timed_stitch=time.basis,
    )


def _stitching(time: StitchingTime) -> Task:
    return Task(
        part=Part.STITCHING,
        what=time.what,
        count=time.count,
        minutes_each=time.minutes_each,
        sureness=time.sureness,
        shared_min=time.shared_min,
        readings=time.pace.sessions,
        guesses=time.guesses,
        yarn=time.yarn,
        timed_stitch=time.basis,
    )


def _ripping_back(stitching: Sequence[Task], minutes: Minutes) -> Chore:
    """Return the time lost to ripping back: a share of the stitching."""
    share, lost = minutes.rip_back, math.fsum(task.minutes for task in stitching)
    readings = None if share is None else (share * lost,)
    return Chore(Part.STITCHING, "rip_back", 1 if stitching else 0, readings)


def _task(chore: Chore) -> Task:
    """Return a task with its range: ±30 % of one figure, a prediction from several."""
    readings = chore.readings or NOTHING
    pace = pace_of_readings(readings)
    return Task(
        part=chore.part,
        what=chore.what,
        count=chore.count,
        minutes_each=pace.minutes_each,
        sureness=Sureness.ESTIMATED if chore.as_usual else pace.sureness,
        shared_min=pace.predict(chore.count).half_width,
        readings=len(readings),
    )
