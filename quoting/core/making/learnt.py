"""What an order that was made teaches the workshop: further timings, swatches and minutes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterable
from dataclasses import dataclass, replace
from typing import TypeVar

from quoting.core.making.hours_left import weaving_readings
from quoting.core.making.log_lines import LogEntry
from quoting.core.making.session_pace import session_timings
from quoting.core.making.swatches_told import swatches_told
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
    """What may be taken into a workshop, beside what it has; all of it, or what was chosen."""

    timings: tuple[Timing, ...] = ()
    swatches: tuple[Swatch, ...] = ()
    weave_in_end: Readings = ()

    @property
    def is_nothing(self) -> bool:
        """Whether there is nothing to take in."""
        return not (self.timings or self.swatches or self.weave_in_end)


def learnt_from(quote: Quote, entries: tuple[LogEntry, ...], workshop: Workshop) -> Learnt:
    """Return what the order tells a workshop that it does not have yet.

    Timings are those of each session that told its rows, a mixed one's stitches each by itself; a
    stitch or a yarn that the workshop no longer has is left out. A swatch tells the yarn of a
    stitch that was really used, by the ratio of all that was told of its yarn; its gauge stays that
    of the earlier swatches, for nobody measured the blanket. Minutes of weaving in an end are those
    of each day that told both.
    """
    timings = (
        replace(timing, minutes=round(timing.minutes, MINUTE_DIGITS))
        for timing in session_timings(quote, entries, workshop)
        if _has(workshop, timing)
    )
    readings = (round(minutes, MINUTE_DIGITS) for minutes in weaving_readings(entries))
    return Learnt(
        timings=_further(timings, workshop.timings),
        swatches=tuple(swatches_told(quote, entries, workshop)),
        weave_in_end=_further(readings, workshop.minutes.weave_in_end or ()),
    )


def with_learnt(workshop: Workshop, learnt: Learnt) -> Workshop:
    """Return the workshop with what was learnt beside all that it had. Errors: as its own."""
    woven = (*(workshop.minutes.weave_in_end or ()), *learnt.weave_in_end)
    return replace(
        workshop,
        timings=(*workshop.timings, *learnt.timings),
        swatches=(*workshop.swatches, *learnt.swatches),
        minutes=replace(workshop.minutes, weave_in_end=woven or None),
    )


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
