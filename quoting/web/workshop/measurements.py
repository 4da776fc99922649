"""What was measured, and what follows from it: gauge, yarn per stitch, motifs, pace."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields
from datetime import date
from typing import Any

from flask import Blueprint, render_template

from quoting.core.estimate.pace import FEW_SESSIONS, Pace, Session, pace_of, timings_wanted
from quoting.core.estimate.stitching_time import sessions_of
from quoting.core.ground.errors import Refused
from quoting.core.ground.measures import CM_PER, CM_PER_INCH
from quoting.core.plan.gauge import Gauge, gauge_of
from quoting.core.workshop.swatches import Swatch
from quoting.core.workshop.timings import USUAL_MINUTES, Minutes, Readings, TimedStitch, mean
from quoting.core.workshop.workshop import Workshop
from quoting.web.kept import kept_shop
from quoting.web.shop import shop_now
from quoting.web.workshop.clocked import counted_words
from quoting.web.workshop.measured_motifs import measured_motifs
from quoting.web.workshop.own_pages import MEASUREMENTS
from quoting.web.workshop.own_views import page_as_kept

blueprint = Blueprint("measurements", __name__)

TEN_CM, FOUR_INCHES_CM = 10.0, 4 * CM_PER_INCH
"""What a gauge is told over, in centimetres or inches (common practice)."""

TIMED_BY_TASK = tuple(item.name for item in fields(Minutes) if item.name != "rip_back")


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """A swatch, the gauge of its stitch in its yarn, and the span that gauges are told over."""

    swatch: Swatch
    gauge: Gauge
    span_cm: float

    @property
    def yarn_cm(self) -> float:
        """The yarn in one stitch."""
        return self.gauge.yarn_m * CM_PER["m"]

    @property
    def stitches(self) -> float:
        """Stitches in a span."""
        return self.span_cm / self.gauge.width_cm

    @property
    def rows(self) -> float:
        """Rows in a span."""
        return self.span_cm / self.gauge.height_cm


@dataclass(frozen=True, slots=True, kw_only=True)
class Paced:
    """A stitch timed in a yarn: its hooks, its pace, and how many more timings are wanted.

    `more` would bring its pace within 5 %; `for_a_start` are missing of the fewest that tell.
    """

    timed: TimedStitch
    hooks_mm: tuple[float, ...]
    pace: Pace
    more: int
    last_day: date | None

    @property
    def a_minute(self) -> float:
        """Stitches in a minute."""
        return 1 / self.pace.minutes_each

    @property
    def for_a_start(self) -> int:
        """Timings without which nothing is promised of the pace."""
        return max(0, FEW_SESSIONS - self.pace.sessions)


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskMinutes:
    """The readings of one sort of work besides the stitches; none where none were given.

    Some sorts go by what is `usual` until then.
    """

    name: str
    readings: Readings | None

    @property
    def minutes(self) -> float:
        """The minutes that are reckoned with."""
        return mean(self.readings or self.usual)

    @property
    def usual(self) -> Readings | None:
        """What is counted until there are readings."""
        return USUAL_MINUTES.get(self.name)


@blueprint.get("/measurements")
def show() -> str:
    """Show what was measured and what follows from it; with a book, to be changed."""
    follows = measurement_follows()
    if kept_shop() is None:
        return render_template("measurements/show.html", **follows)
    return page_as_kept(MEASUREMENTS, **follows)


def measurement_follows() -> dict[str, Any]:
    """Return what follows from swatches, motifs, timings and minutes."""
    shop = shop_now()
    workshop = shop.workshop
    tasks = [TaskMinutes(name=n, readings=getattr(workshop.minutes, n)) for n in TIMED_BY_TASK]
    span_cm = FOUR_INCHES_CM if shop.speech.inches else TEN_CM
    return {
        "measured": [_measured(swatch, workshop, span_cm) for swatch in workshop.swatches],
        "motifs": [*measured_motifs(workshop)],
        "paced": _paced(workshop),
        "tasks": [task for task in tasks if task.usual is None],
        "motif_tasks": [task for task in tasks if task.usual is not None],
        "clocked_tasks": counted_words(shop.speech.units),
    }


def _measured(swatch: Swatch, workshop: Workshop, span_cm: float) -> Measured:
    gauge = gauge_of(workshop, swatch.yarn, swatch.stitch)
    return Measured(swatch=swatch, gauge=gauge, span_cm=span_cm)


def _paced(workshop: Workshop) -> list[Paced]:
    try:
        timed = sessions_of(workshop)
    except Refused:
        return []
    motifs = {motif.timed for motif in workshop.motifs}
    return [
        Paced(
            timed=stitch,
            hooks_mm=_hooks(workshop, stitch),
            pace=pace_of(sessions),
            more=_more(sessions),
            last_day=_last_day(workshop, stitch),
        )
        for stitch, sessions in timed.items()
        if stitch not in motifs
    ]


def _hooks(workshop: Workshop, timed: TimedStitch) -> tuple[float, ...]:
    hooks = {t.hook_mm for t in workshop.timings if t.timed == timed and t.hook_mm is not None}
    return tuple(sorted(hooks))


def _last_day(workshop: Workshop, timed: TimedStitch) -> date | None:
    """Return the day of the latest timing that has one."""
    days = (timing.day for timing in workshop.timings if timing.timed == timed and timing.day)
    return max(days, default=None)


def _more(sessions: Sequence[Session]) -> int:
    """Return the timings wanted; of a single session, whose spread nobody knows, none yet."""
    if len(sessions) == 1:
        return 0
    return timings_wanted([session.minutes / session.count for session in sessions])
