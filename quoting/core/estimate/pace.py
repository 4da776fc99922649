"""How long a known number of stitches takes, from timed sessions, and how sure that is.

Sources: Hahn & Meeker, prediction of a total; the time-study texts, the number of timings to
take by Student's t of the readings there are.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from quoting.core.ground.student_t import two_sided_t
from quoting.core.plan.gauge import Sureness

CONFIDENCE = 0.95
ONE_TIMING_LIMITS = 0.30
"""How far a figure that the maker timed once, or set, may be off."""

FEW_SESSIONS = 5
"""Of fewer than these nothing is promised: their spread says too little of the next one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Session:
    """A counted number of stitches, or of any one thing, and the basic minutes they took."""

    count: float
    minutes: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """Minutes expected, and the half-width of their 95 % range."""

    minutes: float
    half_width: float

    @property
    def low(self) -> float:
        """The low end, never under nothing."""
        return max(0.0, self.minutes - self.half_width)

    @property
    def high(self) -> float:
        """The high end."""
        return self.minutes + self.half_width


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """Minutes for one, from sessions: `deviation` is σ, for one, None with a single session."""

    minutes_each: float
    counted: float
    sessions: int
    deviation: float | None

    @property
    def sureness(self) -> Sureness:
        """What the pace rests on."""
        return Sureness.ONE_TIMING if self.deviation is None else Sureness.MEASURED

    def predict(self, count: float) -> Span:
        """Return the time of so many: count·β ± t·σ·√(count + count²/counted)."""
        minutes = count * self.minutes_each
        widest = minutes * ONE_TIMING_LIMITS
        if self.deviation is None:
            return Span(minutes=minutes, half_width=widest)
        t = two_sided_t(CONFIDENCE, self.sessions - 1)
        half_width = t * self.deviation * math.sqrt(count + count**2 / self.counted)
        if self.sessions < FEW_SESSIONS:
            half_width = min(half_width, widest)
        return Span(minutes=minutes, half_width=half_width)


def pace_of(sessions: Sequence[Session]) -> Pace:
    """Return the pace of one or more sessions: β = Σb/Σa, σ² = Σ(b − βa)²/a/(n − 1)."""
    counted = math.fsum(session.count for session in sessions)
    each = math.fsum(session.minutes for session in sessions) / counted
    deviation = None
    if len(sessions) > 1:
        squares = ((s.minutes - each * s.count) ** 2 / s.count for s in sessions)
        deviation = math.sqrt(math.fsum(squares) / (len(sessions) - 1))
    return Pace(minutes_each=each, counted=counted, sessions=len(sessions), deviation=deviation)


def pace_of_readings(readings: Sequence[float]) -> Pace:
    """Return the pace of one thing that was timed by itself, once or several times."""
    return pace_of([Session(count=1, minutes=minutes) for minutes in readings])


WANTED_LIMITS = 0.05
"""How near to the true pace timings are wanted to bring it, at 95 %."""


def readings_needed(deviation: float, mean: float, *, t: float, limits: float) -> float:
    """Return the readings that bring a mean within its limits: (t·s/(limits·mean))².

    Source: the time-study texts. The ILO's 40·√(n'Σx² − (Σx)²)/Σx, squared, is the same with
    t = 2, limits of 5 %, and the deviation of the n' readings themselves.
    """
    return (t * deviation / (limits * mean)) ** 2


def timings_wanted(minutes_each: Sequence[float]) -> int:
    """Return the further timings wanted for ±5 %, from two readings up, by Student's t of them."""
    n = len(minutes_each)
    needed = readings_needed(
        statistics.stdev(minutes_each),
        statistics.fmean(minutes_each),
        t=two_sided_t(CONFIDENCE, n - 1),
        limits=WANTED_LIMITS,
    )
    return max(0, math.ceil(round(needed, 9)) - n)
