"""Sessions at the hook against the clock, and the minutes that other work takes."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, fields
from datetime import date
from types import MappingProxyType

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks

LEAST_MINUTES = 0.01
"""Of a timed session; less than a second is no session."""

MOST_STITCHES = 1_000_000
"""Of a timed session."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedStitch:
    """What the sessions of one pace have in common: a stitch, and its yarn where one is named."""

    stitch: str
    yarn: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Timing:
    """One session: so many stitches in so many minutes.

    `rows` are the row turns inside the session, taken out at the workshop's turn time. A
    `hands_on` session was stopped at every pause; otherwise its own pauses are inside. One that
    names no `yarn` serves for all of them.
    """

    stitch: str
    stitches: int
    minutes: float
    rows: int = 0
    hands_on: bool = False
    yarn: str | None = None
    hook_mm: float | None = None
    day: date | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("stitch", self.stitch)
        checks.number("stitches", self.stitches, least=1, most=MOST_STITCHES)
        checks.number("minutes", self.minutes, above=0, least=LEAST_MINUTES, most=100_000)
        checks.number("rows", self.rows, least=0, most=100_000)
        if self.yarn is not None:
            checks.name("yarn", self.yarn)
        checks.number("hook_mm", self.hook_mm, above=0, most=100)
        checks.done()

    @property
    def timed(self) -> TimedStitch:
        """The stitch, in the yarn, that its minutes are of."""
        return TimedStitch(stitch=self.stitch, yarn=self.yarn)


Readings = tuple[float, ...]
"""Minutes for one of a thing: one figure set by the maker, or several that were measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Minutes:
    """Minutes for everything but the stitches. `rip_back` is a share of the stitching.

    None is what was not given yet: it is reckoned as is usual, where `USUAL_MINUTES` has it, and
    said so; else as nothing, and said not to be counted. Joins worked into a round are of an edge
    of 15 cm, those of a braid of an edge, sewn ones of a centimetre.
    """

    turn: Readings | None = None
    change_colour: Readings | None = None
    join: Readings | None = None
    weave_in_end: Readings | None = None
    start_and_finish: Readings | None = None
    wash: Readings | None = None
    photograph: Readings | None = None
    pack: Readings | None = None
    letters: Readings | None = None
    swatch: Readings | None = None
    begin_round: Readings | None = None
    work_over_end: Readings | None = None
    enclose_end: Readings | None = None
    fringe_end: Readings | None = None
    join_as_you_go: Readings | None = None
    join_continuous: Readings | None = None
    join_braid: Readings | None = None
    sew_whipstitch: Readings | None = None
    sew_mattress: Readings | None = None
    lay_out: Readings | None = None
    lay_out_motif: Readings | None = None
    block_motif: Readings | None = None
    rip_back: float | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        for item in fields(self):
            readings = getattr(self, item.name)
            if readings is None:
                continue
            if item.name == "rip_back":
                checks.number("rip_back", readings, least=0, most=1)
                continue
            if not readings:
                checks.add(item.name, MistakeCode.MISSING)
            for minutes in readings:
                checks.number(item.name, minutes, least=0, most=10_000)
        checks.done()


USUAL_MINUTES: Mapping[str, Readings] = MappingProxyType(
    {
        "begin_round": (0.5,),
        "work_over_end": (0.4,),
        "enclose_end": (0.1,),
        "fringe_end": (0.3,),
        "join_as_you_go": (1.0,),
        "join_continuous": (0.8,),
        "join_braid": (0.5,),
        "sew_whipstitch": (0.12,),
        "sew_mattress": (0.18,),
        "lay_out": (15.0,),
        "lay_out_motif": (0.3,),
        "block_motif": (1.2,),
    }
)
"""What is reckoned with until the maker gives her own: common practice, no source."""


def mean(readings: Readings | None) -> float:
    """Return the minutes to reckon with: the mean of what was measured, 0 where nothing was."""
    return math.fsum(readings) / len(readings) if readings else 0.0
