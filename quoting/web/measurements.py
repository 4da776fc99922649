"""What was measured, and what follows from it: gauge, yarn per stitch, pace."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from flask import Blueprint, render_template

from quoting.core.errors import Refused
from quoting.core.gauge import Gauge, gauge_of
from quoting.core.pace import Pace, Session, pace_of, timings_wanted
from quoting.core.stitching_time import sessions_of
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
        timed = sessions_of(workshop)
    except Refused:
        return []
    return [
        Paced(stitch=stitch, pace=pace_of(sessions), more=_more(sessions))
        for stitch, sessions in timed.items()
    ]


def _more(sessions: Sequence[Session]) -> int | None:
    if len(sessions) == 1:
        return None
    return timings_wanted([session.minutes / session.count for session in sessions])
