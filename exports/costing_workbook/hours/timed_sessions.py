"""The sessions of one timed stitch, or of one motif that was timed whole, as they were given."""

from __future__ import annotations

from dataclasses import dataclass

from exports.sheets.cells import Ref
from quoting.core.estimate.pace import Session
from quoting.core.estimate.stitching_time import sessions_of
from quoting.core.workshop.motifs import MotifTiming
from quoting.core.workshop.timings import TimedStitch, Timing
from quoting.core.workshop.workshop import Workshop

STITCH, MOTIF = "stitch", "motif"
_MANY = {STITCH: "stitches", MOTIF: "motifs"}


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedSession:
    """One session as it was timed, and the `basic` one that is left of it without turns."""

    minutes: float
    rows: int
    hands_on: bool
    basic: Session

    def squared(self, each: Ref) -> float:
        """Return how far it is off the pace in a cell, squared, for one."""
        off = self.basic.minutes - float(each.value) * self.basic.count
        return off**2 / self.basic.count


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedSessions:
    """All of one stitch, or of one motif, which is timed `whole`."""

    sessions: tuple[TimedSession, ...]
    whole: bool

    @property
    def one(self) -> str:
        """What one of the things is that were timed."""
        return MOTIF if self.whole else STITCH


def timed_sessions(base: TimedStitch, workshop: Workshop) -> TimedSessions:
    """Return the sessions that a timed stitch or motif has, in the workshop's order."""
    motif = next((motif for motif in workshop.motifs if motif.timed == base), None)
    timings: tuple[Timing | MotifTiming, ...] = (
        tuple(timing for timing in workshop.timings if timing.timed == base)
        if motif is None
        else motif.timings
    )
    return TimedSessions(
        sessions=tuple(
            TimedSession(
                minutes=timing.minutes,
                rows=timing.rows if isinstance(timing, Timing) else 0,
                hands_on=timing.hands_on,
                basic=basic,
            )
            for timing, basic in zip(timings, sessions_of(workshop)[base], strict=True)
        ),
        whole=motif is not None,
    )


def plural_of(one: str) -> str:
    """Return what several of the things are that were timed."""
    return _MANY[one]
