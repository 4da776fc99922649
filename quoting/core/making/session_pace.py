"""What the sessions of an order tell of the pace of its stitches: further timings."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from quoting.core.estimate.chores import Part
from quoting.core.estimate.hours import Hours, Task, work_hours
from quoting.core.estimate.stitching_time import YarnAndStitch
from quoting.core.making.log_lines import Doing, LogEntry, Session
from quoting.core.making.rows_work import RowsWork, rows_work
from quoting.core.making.told import told
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.timings import LEAST_MINUTES, MOST_STITCHES, TimedStitch, Timing
from quoting.core.workshop.workshop import Workshop

CHORES = (Part.TURNING, Part.CHANGING, Part.JOINING, Part.ASSEMBLING)
"""What is done at the hook besides the stitches."""


def session_timings(
    quote: Quote, entries: tuple[LogEntry, ...], workshop: Workshop | None = None
) -> tuple[Timing, ...]:
    """Return what the sessions of an order tell, as timings of a workshop: by default the quote's.

    Of a session at the hook that tells its rows: its minutes, less what turns, changes of colour
    and joins take in them, are shared among the stitches, the chains and what is ripped back as
    each was expected to take its part of them. One that is all turns tells nothing. Of a mixed
    session each stitch is a timing; chains are none. Minutes are as the clock had them, so that no
    rest is added.
    """
    target, work = workshop or quote.workshop, rows_work(quote)
    return tuple(
        timing
        for session in sessions_of_rows(entries)
        for timing in _timings(session, work, target)
    )


def sessions_of_rows(entries: tuple[LogEntry, ...]) -> Iterator[Session]:
    """Yield the sessions at the hook that tell their rows, a motif being one of them."""
    for session in told(entries, Session):
        if session.doing is Doing.AT_THE_HOOK and session.first_row and session.last_row:
            yield session


def hours_of(session: Session, work: RowsWork) -> Hours:
    """Return the hours that what was worked in a session was expected to take."""
    last = min(session.last_row or 0, work.rows.all)
    return work_hours(work.of(session.first_row or 1, last), work.quote.workshop)


def stitched_in(session: Session, work: RowsWork) -> Iterator[Task]:
    """Yield what a session stitched, each in its part of the minutes that the clock had."""
    hours = hours_of(session, work)
    stitching = minutes_of(hours, Part.STITCHING)
    pace = (session.minutes - minutes_of(hours, *CHORES)) / stitching if stitching else 0.0
    for task in hours.tasks:
        if task.yarn is not None and task.what != Stitch.CH:
            yield replace(task, minutes_each=task.minutes_each * pace)


def _timings(session: Session, work: RowsWork, target: Workshop) -> Iterator[Timing]:
    counts, minutes = dict[TimedStitch, int](), dict[TimedStitch, float]()
    motifs = {motif.name for motif in work.quote.workshop.motifs}
    for task in stitched_in(session, work):
        if task.yarn is None or task.what in motifs:
            continue
        named = named_as_timed((task.yarn, task.what), target)
        counts[named] = counts.get(named, 0) + round(task.count)
        minutes[named] = minutes.get(named, 0.0) + task.minutes
    for named, count in counts.items():
        if count <= MOST_STITCHES and minutes[named] >= LEAST_MINUTES:
            yield Timing(
                stitch=named.stitch,
                yarn=named.yarn,
                stitches=count,
                minutes=minutes[named],
                day=session.day,
            )


def named_as_timed(work: YarnAndStitch, workshop: Workshop) -> TimedStitch:
    """Return what a timing of a stitch in a yarn is to be of, to be weighed with earlier ones.

    Where the workshop timed the stitch in that yarn it is the yarn's; where it has a timing that
    serves for all yarns it is one of these; else it is the first in that yarn.
    """
    yarn, stitch = work
    timed = {timing.timed for timing in workshop.timings}
    own = TimedStitch(stitch=stitch, yarn=yarn)
    for_all = TimedStitch(stitch=stitch)
    return for_all if own not in timed and for_all in timed else own


def minutes_of(hours: Hours, *parts: Part) -> float:
    """Return the minutes of some parts of the work."""
    return math.fsum(task.minutes for task in hours.tasks if task.part in parts)
