"""What was measured, and what follows from it: gauge, yarn per stitch, pace."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from flask import Blueprint, render_template

from quoting.core.errors import Refused
from quoting.core.gauge import Gauge, gauge_of
from quoting.core.pace import FEW_SESSIONS, Pace, Session, pace_of, timings_wanted
from quoting.core.stitching_time import sessions_of
from quoting.core.swatch import Swatch
from quoting.core.timing import TimedStitch
from quoting.core.workshop import Workshop
from quoting.web.shop import shop_now

blueprint = Blueprint("measurements", __name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """A swatch, and the gauge of its stitch in its yarn."""

    swatch: Swatch
    gauge: Gauge


@dataclass(frozen=True, slots=True, kw_only=True)
class Paced:
    """A stitch timed in a yarn: its hooks, its pace, and how many more timings are wanted.

    `more` would bring its pace within 5 %; `for_a_start` are missing of the fewest that tell.
    """

    timed: TimedStitch
    hooks_mm: tuple[float, ...]
    pace: Pace
    more: int

    @property
    def a_minute(self) -> float:
        """Stitches in a minute."""
        return 1 / self.pace.minutes_each

    @property
    def for_a_start(self) -> int:
        """Timings without which nothing is promised of the pace."""
        return max(0, FEW_SESSIONS - self.pace.sessions)


@blueprint.get("/measurements")
def show() -> str:
    """Show swatches, timings and minutes with what follows from them."""
    workshop = shop_now().workshop
    return render_template(
        "measurements/show.html",
        measured=[_measured(swatch, workshop) for swatch in workshop.swatches],
        paced=_paced(workshop),
    )


def _measured(swatch: Swatch, workshop: Workshop) -> Measured:
    return Measured(swatch=swatch, gauge=gauge_of(workshop, swatch.yarn, swatch.stitch))


def _paced(workshop: Workshop) -> list[Paced]:
    try:
        timed = sessions_of(workshop)
    except Refused:
        return []
    hooks: dict[TimedStitch, set[float]] = {stitch: set() for stitch in timed}
    for timing in workshop.timings:
        if timing.hook_mm is not None:
            hooks[timing.timed].add(timing.hook_mm)
    return [
        Paced(
            timed=stitch,
            hooks_mm=tuple(sorted(hooks[stitch])),
            pace=pace_of(sessions),
            more=_more(sessions),
        )
        for stitch, sessions in timed.items()
    ]


def _more(sessions: Sequence[Session]) -> int:
    """Return the timings wanted; of a single session, whose spread nobody knows, none yet."""
    if len(sessions) == 1:
        return 0
    return timings_wanted([session.minutes / session.count for session in sessions])
