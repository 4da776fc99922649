"""What the sessions of an order tell of its motifs: further timings of each, and the first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from quoting.core.estimate.chores import Part
from quoting.core.making.log_lines import LogEntry, Session
from quoting.core.making.rows_work import RowsWork, rows_work
from quoting.core.making.session_pace import (
    hours_of,
    minutes_of,
    sessions_of_rows,
    stitched_in,
)
from quoting.core.plan.parts import PartKind
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import Motif, MotifTiming
from quoting.core.workshop.timings import LEAST_MINUTES
from quoting.core.workshop.workshop import Workshop

APART = (Part.JOINING, Part.ASSEMBLING)
"""What is done beside a motif, and is not in its timings: from its first loop to its last."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MotifTold:
    """A further timing of the motif that has this name in the workshop."""

    motif: str
    timing: MotifTiming


def session_motifs(quote: Quote, entries: tuple[LogEntry, ...]) -> tuple[MotifTold, ...]:
    """Return what the sessions of an order tell of its motifs.

    Of a session in which motifs were made that were timed before, its minutes are shared as of any
    other. Where other rounds of one are worked than were timed, as many whole ones are told as they
    come to, and at least one. Of a motif that was never timed only a session tells in which nothing
    else was made, and where it is worked as it was measured.
    """
    work = rows_work(quote)
    return tuple(
        told_of
        for session in sessions_of_rows(entries)
        for told_of in (*_further(session, work), *_first(session, work))
    )


def with_motifs_told(workshop: Workshop, told: tuple[MotifTold, ...]) -> Workshop:
    """Return a workshop with further timings of its motifs; those it does not have are left out."""

    def timed(motif: Motif) -> Motif:
        more = tuple(each.timing for each in told if each.motif == motif.name)
        return replace(motif, timings=(*motif.timings, *more)) if more else motif

    return replace(workshop, motifs=tuple(timed(motif) for motif in workshop.motifs))


def _further(session: Session, work: RowsWork) -> Iterator[MotifTold]:
    names = {motif.name for motif in work.quote.workshop.motifs}
    counts, minutes = dict[str, float](), dict[str, float]()
    for task in stitched_in(session, work):
        if task.what in names:
            counts[task.what] = counts.get(task.what, 0.0) + task.count
            minutes[task.what] = minutes.get(task.what, 0.0) + task.minutes
    for motif, count in counts.items():
        whole = max(1, round(count))
        yield from _told(session, motif, whole, minutes[motif] * whole / count)


def _first(session: Session, work: RowsWork) -> Iterator[MotifTold]:
    """Yield what a session tells of a motif that was never timed."""
    rows, plan = work.rows, work.quote.plan
    first, last = session.first_row or 1, min(session.last_row or 0, work.rows.all)
    places = list(rows.places(first, last))
    passes = [rows.passes[place.pass_index] for place in places]
    named = {worked.fabric.motif for worked in passes}
    if len(named) != 1 or any(plan.part_of(w).kind is not PartKind.MOTIF for w in passes):
        return
    motif = work.quote.workshop.motif(named.pop())
    if motif.timings or len(passes) != motif.rounds * (last - first + 1):
        return
    apart = minutes_of(hours_of(session, work), *APART)
    yield from _told(session, motif.name, last - first + 1, session.minutes - apart)


def _told(session: Session, motif: str, count: int, minutes: float) -> Iterator[MotifTold]:
    if minutes >= LEAST_MINUTES:
        timing = MotifTiming(motifs=count, minutes=minutes, day=session.day)
        yield MotifTold(motif=motif, timing=timing)
