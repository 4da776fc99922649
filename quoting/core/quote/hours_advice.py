"""What the maker is told beside the hours: what they rest on, and what is not in them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from quoting.core.estimate.hours import Hours, Task
from quoting.core.estimate.pace import FEW_SESSIONS, Session, pace_of, timings_wanted
from quoting.core.estimate.pace_guesses import Unknown
from quoting.core.estimate.stitching_time import sessions_of
from quoting.core.ground.cautions import Caution, for_maker
from quoting.core.ground.codes import CautionCode
from quoting.core.plan.gauge import Sureness
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.timings import TimedStitch
from quoting.core.workshop.workshop import Workshop

SLOWEST_A_MINUTE = 5
FASTEST_A_MINUTE = 35
"""Stitches a minute past which a timing is questioned: the program's own bounds."""


def hours_cautions(hours: Hours, workshop: Workshop) -> Iterator[Caution]:
    """Yield what an order's hours leave open; of timings, only those that they rest on."""
    if hours.not_given:
        yield for_maker(CautionCode.MINUTES_NOT_GIVEN, tasks=hours.not_given)
    yield from _sureness_cautions(hours)
    yield from _yarn_cautions(hours)
    if hours.as_usual:
        yield for_maker(CautionCode.USUAL_MINUTES, tasks=hours.as_usual)
    timed = sessions_of(workshop)
    motifs = {motif.timed for motif in workshop.motifs}
    for base in hours.bases:
        if base not in motifs:
            yield from _odd_pace(base, timed[base])
        yield from _timing_cautions(base, timed[base])


def _sureness_cautions(hours: Hours) -> Iterator[Caution]:
    def stitches(holds: Callable[[Task], bool]) -> tuple[str, ...]:
        worked = (t for t in hours.tasks if t.timed_stitch and t.what != Stitch.CH)
        return tuple(dict.fromkeys(task.what for task in worked if holds(task)))

    if once := stitches(lambda task: task.sureness is Sureness.ONE_TIMING):
        yield for_maker(CautionCode.ONE_TIMING, stitches=once)
    if textured := stitches(lambda task: Unknown.TEXTURE in _unknowns(task)):
        yield for_maker(CautionCode.PATTERN_PACE, stitches=textured)
    if by_ratio := stitches(lambda t: Unknown.RATIO in _unknowns(t) and t.what not in textured):
        yield for_maker(CautionCode.ESTIMATED_PACE, stitches=by_ratio)


def _unknowns(task: Task) -> set[Unknown]:
    return {guess.unknown for guess in task.guesses}


def _yarn_cautions(hours: Hours) -> Iterator[Caution]:
    for guess in hours.guesses:
        if guess.unknown is Unknown.YARN:
            yield for_maker(CautionCode.OTHER_YARN_PACE, yarn=guess.what, timed_in=guess.like)
        if guess.unknown is Unknown.THICKNESS:
            yield for_maker(CautionCode.OTHER_THICKNESS_PACE, yarn=guess.what, timed_in=guess.like)


def _odd_pace(base: TimedStitch, sessions: Sequence[Session]) -> Iterator[Caution]:
    a_minute = 1 / pace_of(sessions).minutes_each
    if not SLOWEST_A_MINUTE <= a_minute <= FASTEST_A_MINUTE:
        yield for_maker(CautionCode.ODD_PACE, stitch=base.stitch, yarn=base.yarn, a_minute=a_minute)


def _timing_cautions(base: TimedStitch, sessions: Sequence[Session]) -> Iterator[Caution]:
    stitch, yarn = base.stitch, base.yarn
    each = [session.minutes / session.count for session in sessions]
    more = timings_wanted(each) if len(each) > 1 else 0
    if more and len(each) < FEW_SESSIONS:
        yield for_maker(
            CautionCode.FEW_TIMINGS, stitch=stitch, yarn=yarn, timed=len(each), more=more
        )
    elif more:
        yield for_maker(CautionCode.MORE_TIMINGS, stitch=stitch, yarn=yarn, more=more)
