"""What an order that was made teaches the workshop: further timings, swatches and minutes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterable
from dataclasses import dataclass, replace
from typing import TypeVar

from quoting.core.estimate.chores import ENDS_CHORES
from quoting.core.making.hours_left import end_readings, with_end_minutes
from quoting.core.making.log_lines import LogEntry
from quoting.core.making.session_motifs import MotifTold, session_motifs, with_motifs_told
from quoting.core.making.session_pace import session_timings
from quoting.core.making.swatches_told import swatches_told
from quoting.core.making.weighings_told import (
    WeighingTold,
    weighings_told,
    with_weighings_told,
)
from quoting.core.order.design import EndsBecome
from quoting.core.quote.fate_of_ends import main_fate
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import WORKED
from quoting.core.workshop.swatches import Swatch
from quoting.core.workshop.timings import Readings, Timing
from quoting.core.workshop.workshop import Workshop

MINUTE_DIGITS = 2
"""Decimals of minutes that are taken in."""

Item = TypeVar("Item", bound=Hashable)


@dataclass(frozen=True, slots=True, kw_only=True)
class Learnt:
    """What may be taken into a workshop, beside what it has; all of it, or what was chosen.

    `end_minutes` are what an end took, of which became what `ends` says.
    """

    timings: tuple[Timing, ...] = ()
    motifs: tuple[MotifTold, ...] = ()
    swatches: tuple[Swatch, ...] = ()
    weighings: tuple[WeighingTold, ...] = ()
    end_minutes: Readings = ()
    ends: EndsBecome = EndsBecome.WOVEN_IN

    @property
    def is_nothing(self) -> bool:
        """Whether there is nothing to take in."""
        told = (self.timings, self.motifs, self.swatches, self.weighings, self.end_minutes)
        return not any(told)


def learnt_from(quote: Quote, entries: tuple[LogEntry, ...], workshop: Workshop) -> Learnt:
    """Return what the order tells a workshop that it does not have yet.

    Timings are those of each session that told its rows, a mixed one's stitches each by itself; a
    stitch or a yarn that the workshop no longer has is left out. A swatch tells the yarn of a
    stitch that was really used, by the ratio of all that was told of its yarn; its gauge stays that
    of the earlier swatches, for nobody measured the blanket. Motifs are told as `session_motifs`
    has them, their weight as `weighings_told`. Minutes of an end are those of each day that told
    both.
    """
    timings = (
        replace(timing, minutes=_rounded(timing.minutes))
        for timing in session_timings(quote, entries, workshop)
        if _has(workshop, timing)
    )
    readings = (_rounded(minutes) for minutes in end_readings(entries))
    ends = main_fate(quote)
    return Learnt(
        timings=_further(timings, workshop.timings),
        motifs=_motifs(quote, entries, workshop),
        swatches=tuple(swatches_told(quote, entries, workshop)),
        weighings=tuple(weighings_told(quote, entries, workshop)),
        end_minutes=_further(readings, getattr(workshop.minutes, ENDS_CHORES[ends]) or ()),
        ends=ends,
    )


def _motifs(
    quote: Quote, entries: tuple[LogEntry, ...], workshop: Workshop
) -> tuple[MotifTold, ...]:
    """Return further timings of the motifs that a workshop has."""
    there = {motif.name for motif in workshop.motifs}
    offered = (
        replace(each, timing=replace(each.timing, minutes=_rounded(each.timing.minutes)))
        for each in session_motifs(quote, entries)
        if each.motif in there
    )
    known = (MotifTold(motif=m.name, timing=t) for m in workshop.motifs for t in m.timings)
    return _further(offered, known)


def with_learnt(workshop: Workshop, learnt: Learnt) -> Workshop:
    """Return the workshop with what was learnt beside all that it had. Errors: as its own."""
    motifs = with_weighings_told(workshop, learnt.weighings)
    return replace(
        with_motifs_told(motifs, learnt.motifs),
        timings=(*workshop.timings, *learnt.timings),
        swatches=(*workshop.swatches, *learnt.swatches),
        minutes=with_end_minutes(workshop.minutes, learnt.ends, learnt.end_minutes),
    )


def _rounded(minutes: float) -> float:
    return round(minutes, MINUTE_DIGITS)


def _further(offered: Iterable[Item], there: Iterable[Item]) -> tuple[Item, ...]:
    """Return what is offered and not there yet: of two alike, one may be there already."""
    known = Counter(there)
    further = []
    for item in offered:
        if known[item]:
            known[item] -= 1
        else:
            further.append(item)
    return tuple(further)


def _has(workshop: Workshop, timing: Timing) -> bool:
    stitches = {*WORKED, *(pattern.name for pattern in workshop.patterns)}
    yarns = {None, *(yarn.name for yarn in workshop.yarns)}
    return timing.stitch in stitches and timing.yarn in yarns
