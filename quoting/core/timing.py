"""Sessions at the hook against the clock, and the minutes that other work takes."""

from __future__ import annotations

from dataclasses import dataclass, fields

from quoting.core.errors import Checks

LEAST_MINUTES = 0.01
"""Of a timed session; less than a second is no session."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Timing:
    """One session: so many stitches in so many minutes.

    `rows` are the row turns inside the session, taken out at the workshop's turn time. A
    `hands_on` session was stopped at every pause; otherwise its own pauses are inside.
    """

    stitch: str
    stitches: int
    minutes: float
    rows: int = 0
    hands_on: bool = False

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("stitch", self.stitch)
        checks.number("stitches", self.stitches, least=1, most=1_000_000)
        checks.number("minutes", self.minutes, above=0, least=LEAST_MINUTES, most=100_000)
        checks.number("rows", self.rows, least=0, most=100_000)
        checks.done()


Readings = tuple[float, ...]
"""Minutes for one of a thing: one figure set by the maker, or several that were measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Minutes:
    """Minutes for everything but the stitches. `rip_back` is a share of the stitching."""

    turn: Readings = (0.0,)
    change_colour: Readings = (0.0,)
    join: Readings = (0.0,)
    weave_in_end: Readings = (0.0,)
    start_and_finish: Readings = (0.0,)
    wash: Readings = (0.0,)
    photograph: Readings = (0.0,)
    pack: Readings = (0.0,)
    letters: Readings = (0.0,)
    swatch: Readings = (0.0,)
    rip_back: float = 0.0

    def __post_init__(self) -> None:
        checks = Checks()
        for item in fields(self):
            readings = getattr(self, item.name)
            if item.name == "rip_back":
                checks.number("rip_back", readings, least=0, most=1)
                continue
            if not readings:
                checks.add(item.name, "missing")
            for minutes in readings:
                checks.number(item.name, minutes, least=0, most=10_000)
        checks.done()


def mean(readings: Readings) -> float:
    """Return the minutes to reckon with: the mean of what was measured."""
    return sum(readings) / len(readings)
