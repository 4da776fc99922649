"""The work that is not stitching: how many of each chore there are, and what one takes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType

from quoting.core.estimate.stitching_time import YarnAndStitch
from quoting.core.estimate.work_counted import MotifMade
from quoting.core.order.design import EndsBecome
from quoting.core.workshop.timings import USUAL_MINUTES, Minutes, Readings


class Part(StrEnum):
    """The parts of the work that are told apart. Office work is paid at its own rate."""

    STITCHING = "stitching"
    TURNING = "turning"
    CHANGING = "changing"
    JOINING = "joining"
    ASSEMBLING = "assembling"
    WEAVING_IN = "weaving_in"
    FINISHING = "finishing"
    OFFICE = "office"


@dataclass(frozen=True, slots=True, kw_only=True)
class Workload:
    """What there is to do, counted. Everything is over all blankets.

    `motifs` are those that were timed whole, `chores` what else a construction brings, by the
    name of its minutes. Of the ends, those `ends_within` are woven in, whatever becomes of others.
    """

    stitches: Mapping[YarnAndStitch, int]
    turns: int
    colour_changes: int
    joins: int
    ends: int
    blankets: int
    extras_minutes: float
    motifs: Mapping[MotifMade, float] = field(default_factory=lambda: MappingProxyType({}))
    chores: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}))
    ends_become: EndsBecome = EndsBecome.WOVEN_IN
    ends_within: int = 0


@dataclass(frozen=True, slots=True)
class Chore:
    """Work that is not stitching: how many of it, and the minutes of one; None if not given.

    `as_usual` says that they are those that are usual, not the maker's.
    """

    part: Part
    what: str
    count: float
    readings: Readings | None
    as_usual: bool = False


ENDS_CHORES = {
    EndsBecome.WOVEN_IN: "weave_in_end",
    EndsBecome.WORKED_OVER: "work_over_end",
    EndsBecome.ENCLOSED: "enclose_end",
    EndsBecome.FRINGE: "fringe_end",
}
"""Whose minutes an end takes, by what becomes of it."""

CHORE_PARTS = {
    "begin_round": Part.TURNING,
    "block_motif": Part.FINISHING,
}
"""The part of the work that a construction's chores belong to; all others are assembling."""


def chores_of(work: Workload, minutes: Minutes) -> list[Chore]:
    """Return every chore of the work, those that there are none of too."""
    return [
        _chore(Part.TURNING, "turn", work.turns, minutes),
        *(
            _chore(CHORE_PARTS.get(what, Part.ASSEMBLING), what, count, minutes)
            for what, count in work.chores.items()
        ),
        _chore(Part.CHANGING, "change_colour", work.colour_changes, minutes),
        _chore(Part.JOINING, "join", work.joins, minutes),
        *(_chore(Part.WEAVING_IN, what, n, minutes) for what, n in _ends(work).items()),
        _chore(Part.FINISHING, "start_and_finish", work.blankets, minutes),
        _chore(Part.FINISHING, "wash", work.blankets, minutes),
        _chore(Part.FINISHING, "swatch", 1, minutes),
        Chore(Part.FINISHING, "extras", 1, (work.extras_minutes,)),
        _chore(Part.OFFICE, "photograph", 1, minutes),
        _chore(Part.OFFICE, "pack", work.blankets, minutes),
        _chore(Part.OFFICE, "letters", 1, minutes),
    ]


def _ends(work: Workload) -> dict[str, int]:
    """Return how many ends there are of each chore: those that lie within are woven in."""
    chores = {}
    if work.ends_within < work.ends or not work.ends:
        chores[ENDS_CHORES[work.ends_become]] = work.ends - work.ends_within
    if work.ends_within:
        chores[ENDS_CHORES[EndsBecome.WOVEN_IN]] = work.ends_within
    return chores


def _chore(part: Part, what: str, count: float, minutes: Minutes) -> Chore:
    own: Readings | None = getattr(minutes, what)
    usual = USUAL_MINUTES.get(what)
    as_usual = own is None and usual is not None
    return Chore(part, what, count, usual if own is None else own, as_usual)
