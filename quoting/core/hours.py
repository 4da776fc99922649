"""Hours: the stitches at the maker's own pace, and everything round them."""

from __future__ import annotations

import math
from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from quoting.core.gauge import Sureness
from quoting.core.money import MINUTES_PER_HOUR, round_hours
from quoting.core.pace import Session, Span, pace_of
from quoting.core.stitching_time import StitchingTime, stitching_times
from quoting.core.timing import Readings
from quoting.core.workshop import Workshop


class Part(StrEnum):
    """The parts of the work that are told apart. Office work is paid at its own rate."""

    STITCHING = "stitching"
    TURNING = "turning"
    CHANGING = "changing"
    JOINING = "joining"
    WEAVING_IN = "weaving_in"
    FINISHING = "finishing"
    OFFICE = "office"


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One kind of work: so many of it, each taking so long. `what` is a stitch or a code.

    `timed_stitch` is the stitch whose timings stitching rests on, None for all other work;
    `shared_min` is its part of the half-width of all that rests on them, `guess_min` the
    half-width of its own ratio.
    """

    part: Part
    what: str
    count: float
    minutes_each: float
    sureness: Sureness
    shared_min: float
    guess_min: float = 0.0
    timed_stitch: str | None = None

    @property
    def minutes(self) -> float:
        """The minutes expected."""
        return self.count * self.minutes_each

    @property
    def basis(self) -> tuple[str | None, str | None]:
        """What it shares its error with: a timed stitch, or tasks of its own kind."""
        return self.timed_stitch, None if self.timed_stitch else self.what

    @property
    def half_width_min(self) -> float:
        """The half-width of its own 95 % range."""
        return math.hypot(self.shared_min, self.guess_min)


@dataclass(frozen=True, slots=True, kw_only=True)
class Workload:
    """What there is to do, counted. Everything is over all pieces."""

    stitches: Mapping[str, int]
    turns: int
    colour_changes: int
    joins: int
    ends: int
    pieces: int
    extras_minutes: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Hours:
    """The tasks, and their hours by part, to two decimals; totals add the rounded parts."""

    tasks: tuple[Task, ...]

    def of(self, part: Part) -> Decimal:
        """Return the hours of one part."""
        return round_hours(sum(t.minutes for t in self.tasks if t.part is part))

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
        """All hours, in minutes, with their range: linear within a basis, in squares between."""
        by_basis: dict[Hashable, float] = {}
        for task in self.tasks:
            by_basis[task.basis] = by_basis.get(task.basis, 0.0) + task.shared_min
        guesses = (task.guess_min for task in self.tasks)
        return Span(
            minutes=float(self.total) * MINUTES_PER_HOUR,
            half_width=math.hypot(*by_basis.values(), *guesses),
        )

    @property
    def low(self) -> Decimal:
        """The low end of all hours."""
        return round_hours(self.span.low)

    @property
    def high(self) -> Decimal:
        """The high end of all hours."""
        return round_hours(self.span.high)


def work_hours(work: Workload, workshop: Workshop) -> Hours:
    """Return the hours of the work; errors as `stitching_times`."""
    stitching = [_stitching(time) for time in stitching_times(work.stitches, workshop)]
    tasks = [*stitching, _ripping_back(stitching, workshop), *_other_tasks(work, workshop)]
    return Hours(tasks=tuple(task for task in tasks if task.minutes))


def _stitching(time: StitchingTime) -> Task:
    return Task(
        part=Part.STITCHING,
        what=time.what,
        count=time.count,
        minutes_each=time.minutes_each,
        sureness=time.sureness,
        shared_min=time.shared_min,
        guess_min=time.guess_min,
        timed_stitch=time.basis,
    )


def _ripping_back(stitching: Sequence[Task], workshop: Workshop) -> Task:
    """Return the time lost to ripping back: a share of the stitching."""
    share = workshop.minutes.rip_back
    minutes = share * math.fsum(task.minutes for task in stitching)
    return _task(Part.STITCHING, "rip_back", 1, (minutes,))


def _other_tasks(work: Workload, workshop: Workshop) -> list[Task]:
    minutes = workshop.minutes
    return [
        _task(Part.TURNING, "turn", work.turns, minutes.turn),
        _task(Part.CHANGING, "change_colour", work.colour_changes, minutes.change_colour),
        _task(Part.JOINING, "join", work.joins, minutes.join),
        _task(Part.WEAVING_IN, "weave_in_end", work.ends, minutes.weave_in_end),
        _task(Part.FINISHING, "start_and_finish", work.pieces, minutes.start_and_finish),
        _task(Part.FINISHING, "wash", work.pieces, minutes.wash),
        _task(Part.FINISHING, "swatch", 1, minutes.swatch),
        _task(Part.FINISHING, "extras", 1, (work.extras_minutes,)),
        _task(Part.OFFICE, "photograph", 1, minutes.photograph),
        _task(Part.OFFICE, "pack", work.pieces, minutes.pack),
        _task(Part.OFFICE, "letters", 1, minutes.letters),
    ]


def _task(part: Part, what: str, count: float, readings: Readings) -> Task:
    """Return a task with its range: ±30 % of one figure, a prediction from several."""
    pace = pace_of([Session(count=1, minutes=minutes) for minutes in readings])
    return Task(
        part=part,
        what=what,
        count=count,
        minutes_each=pace.minutes_each,
        sureness=pace.sureness,
        shared_min=pace.predict(count).half_width,
    )
