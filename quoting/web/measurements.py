"""What was measured, and what follows from it: gauge, yarn per stitch, pace."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template

from quoting.core.errors import Refused
from quoting.core.gauge import Gauge, gauge_of
from quoting.core.pace import Pace, timings_wanted
from quoting.core.stitching_time import basic_session, paces_of
from quoting.core.swatch import Swatch
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
    """A timed stitch: its pace, and how many more timings would bring it within 5 %.

    `more` is None where a single session says nothing of its spread.
    """

    stitch: str
    pace: Pace
    more: int | None

    @property
    def a_minute(self) -> float:
        """Stitches in a minute."""
        return 1 / self.pace.minutes_each


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
        paces = paces_of(workshop)
    except Refused:
        return []
    return [
        Paced(stitch=stitch, pace=pace, more=_more(stitch, pace, workshop))
        for stitch, pace in paces.items()
    ]


def _more(stitch: str, pace: Pace, workshop: Workshop) -> int | None:
    if pace.deviation is None:
        return None
    timed = [timing for timing in workshop.timings if timing.stitch == stitch]
    sessions = [basic_session(timing, workshop, "") for timing in timed]
    return timings_wanted([session.minutes / session.count for session in sessions])
