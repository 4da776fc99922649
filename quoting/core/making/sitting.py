"""All that is written down of one sitting at once, and the lines of the log that it comes to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, time

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks, refuse
from quoting.core.ground.place import NOWHERE
from quoting.core.making.line_checks import minutes_between
from quoting.core.making.log_lines import (
    MOST_GRAMS,
    MOST_MINUTES,
    MOST_ROWS,
    Doing,
    EndsWoven,
    LogLine,
    RowsReached,
    Session,
    YarnUsed,
)

MOST_BALLS, MOST_BALL_G = 100, 10_000
"""Balls that are used up in a sitting, and what one weighs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Consumed:
    """Yarn of a colour that was used up: so many balls of `ball_g` each, or without it grams."""

    colour: str
    amount: float | None = None
    ball_g: float | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("amount", self.amount, least=0, most=MOST_GRAMS)
        checks.number("ball_g", self.ball_g, above=0, most=MOST_BALL_G)
        if self.ball_g is not None:
            checks.number("amount", self.amount, most=MOST_BALLS)
        checks.done()

    def line(self, day: date, rows: int) -> YarnUsed | None:
        """Return the line of the log, a part of a ball as grams; None where nothing was used."""
        if not self.amount:
            return None
        if self.ball_g is None:
            return YarnUsed(day=day, colour=self.colour, rows=rows, grams=self.amount)
        if self.amount == int(self.amount):
            balls = int(self.amount)
            return YarnUsed(day=day, colour=self.colour, rows=rows, balls=balls, ball_g=self.ball_g)
        grams = self.amount * self.ball_g
        return YarnUsed(day=day, colour=self.colour, rows=rows, grams=grams)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sitting:
    """What a maker tells of a sitting: how far she is, how long it took, what it used up.

    Its time is told by its `minutes`, or by when it `begun` and `ended` on its day, or by both
    where there were pauses. `rows` are those done by then, fewer than before only where some were
    `pulled_back`; what is None or 0 was not told.
    """

    day: date
    rows: int | None = None
    doing: Doing = Doing.AT_THE_HOOK
    minutes: float | None = None
    begun: time | None = None
    ended: time | None = None
    ends: int | None = None
    used: tuple[Consumed, ...] = ()
    pulled_back: bool = False

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("rows", self.rows, least=0, most=MOST_ROWS)
        checks.number("minutes", self.minutes, above=0, most=MOST_MINUTES)
        checks.number("ends", self.ends, least=0, most=MOST_ROWS)
        self._check_times(checks)
        checks.done()

    def _check_times(self, checks: Checks) -> None:
        if self.begun is None:
            if self.ended is not None:
                checks.add("begun", MistakeCode.MISSING)
        elif self.ended is None:
            if self.minutes is None:
                checks.add("ended", MistakeCode.MISSING)
        else:
            with checks.under(NOWHERE):
                most = minutes_between(self._at(self.begun), self._at(self.ended))
                checks.number("minutes", self.minutes, most=most)

    def _at(self, told: time) -> datetime:
        return datetime.combine(self.day, told)

    @property
    def time_spent(self) -> float | None:
        """The minutes that it took, None where they were not told."""
        if self.minutes is None and self.begun is not None and self.ended is not None:
            return minutes_between(self._at(self.begun), self._at(self.ended))
        return self.minutes


def sitting_lines(
    sitting: Sitting, *, done: int, started: datetime | None = None
) -> tuple[LogLine, ...]:
    """Return the lines of a sitting, before which so many rows were done.

    `started` is the moment at which it began, where that is known. Errors: `rows-go-back` where
    fewer rows are told than before and none were pulled back; `nothing-written`.
    """
    rows = done if sitting.rows is None else sitting.rows
    if rows < done and not sitting.pulled_back:
        raise refuse("rows", MistakeCode.ROWS_GO_BACK, read=rows, limit=done)
    lines = tuple(_lines(sitting, done, rows, started))
    if not lines:
        raise refuse("rows", MistakeCode.NOTHING_WRITTEN)
    return lines


def _lines(sitting: Sitting, done: int, rows: int, started: datetime | None) -> Iterator[LogLine]:
    minutes, day = sitting.time_spent, sitting.day
    worked = rows > done and minutes is not None and sitting.doing is Doing.AT_THE_HOOK
    if minutes is not None:
        yield Session(
            day=day,
            doing=sitting.doing,
            minutes=minutes,
            started=started,
            first_row=done + 1 if worked else None,
            last_row=rows if worked else None,
        )
    if rows != done and not worked:
        yield RowsReached(day=day, rows=rows)
    used = (consumed.line(day, rows) for consumed in sitting.used)
    yield from (line for line in used if line is not None)
    if sitting.ends:
        yield EndsWoven(day=day, ends=sitting.ends)
