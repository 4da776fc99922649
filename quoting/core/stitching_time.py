"""How long each stitch of the work takes: at its own pace, or by ratio from a timed one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from quoting.core.errors import refuse
from quoting.core.gauge import ESTIMATED_LIMITS, Sureness
from quoting.core.pace import Pace, Session, pace_of
from quoting.core.place import Place, at
from quoting.core.stitches import TIME_RATIO, Stitch
from quoting.core.timing import Timing, mean
from quoting.core.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class StitchingTime:
    """So many of a stitch, the minutes of one, and how sure that is.

    `basis` is the timed stitch it rests on. All that rests on one timing shares its error:
    together it is as far off as that many stitches of the timed kind, and `shared_min` is this
    stitch's part of that half-width. A ratio adds `guess_min` of its own.
    """

    what: str
    count: float
    minutes_each: float
    sureness: Sureness
    basis: str
    shared_min: float
    guess_min: float


def stitching_times(stitches: Mapping[str, int], workshop: Workshop) -> list[StitchingTime]:
    """Return the time of each stitch of the work, `ch` among them.

    Errors: `turns-take-all` when the row turns of a session take more than all of it.
    """
    paces = paces_of(workshop)
    timed = {stitch: _timed(stitch, paces, workshop) for stitch in stitches}
    ratios = {stitch: _ratio(stitch, timed[stitch], workshop) for stitch in stitches}
    together = dict.fromkeys(timed.values(), 0.0)
    for stitch, count in stitches.items():
        together[timed[stitch]] += count * ratios[stitch]
    wide = {base: paces[base].predict(count).half_width for base, count in together.items()}
    return [
        _time(
            stitch,
            count,
            ratios[stitch],
            base=timed[stitch],
            pace=paces[timed[stitch]],
            half_width_each=wide[timed[stitch]] / together[timed[stitch]],
        )
        for stitch, count in stitches.items()
        if count
    ]


def paces_of(workshop: Workshop) -> dict[str, Pace]:
    """Return the pace of every stitch that was timed; errors as `stitching_times`."""
    return {stitch: pace_of(timed) for stitch, timed in sessions_of(workshop).items()}


def sessions_of(workshop: Workshop) -> dict[str, list[Session]]:
    """Return the sessions of every stitch that was timed; errors as `stitching_times`."""
    sessions: dict[str, list[Session]] = {}
    for number, timing in enumerate(workshop.timings, 1):
        session = basic_session(timing, workshop, at("timings", number, "minutes"))
        sessions.setdefault(timing.stitch, []).append(session)
    return sessions


def basic_session(timing: Timing, workshop: Workshop, place: Place) -> Session:
    """Return a session with its row turns taken out, and rest added if it was hands-on."""
    minutes = timing.minutes - timing.rows * mean(workshop.minutes.turn)
    if minutes <= 0:
        raise refuse(place, "turns-take-all", read=timing.minutes)
    if timing.hands_on:
        minutes *= 1 + workshop.pay.rest_allowance
    return Session(count=timing.stitches, minutes=minutes)


def _timed(stitch: str, paces: Mapping[str, Pace], workshop: Workshop) -> str:
    """Return the timed stitch to reckon from: itself, its kind, else the nearest in time."""
    kind = time_kind(stitch, workshop)

    def distance(name: str) -> tuple[bool, bool, float, float]:
        ratio = TIME_RATIO[time_kind(name, workshop)] / TIME_RATIO[kind]
        return name != stitch, name != kind, max(ratio, 1 / ratio), ratio

    return min(paces, key=distance)


def time_kind(stitch: str, workshop: Workshop) -> Stitch:
    """Return the basic stitch, a chain too, that a stitch takes its time from.

    Errors: `unknown-stitch` at `timings`.
    """
    return Stitch.CH if stitch == Stitch.CH else workshop.basic_stitch(stitch, "timings")


def _ratio(stitch: str, base: str, workshop: Workshop) -> float:
    return TIME_RATIO[time_kind(stitch, workshop)] / TIME_RATIO[time_kind(base, workshop)]


def _time(
    stitch: str, count: int, ratio: float, *, base: str, pace: Pace, half_width_each: float
) -> StitchingTime:
    guessed = ratio != 1.0
    minutes_each = ratio * pace.minutes_each
    return StitchingTime(
        what=stitch,
        count=count,
        minutes_each=minutes_each,
        sureness=Sureness.ESTIMATED if guessed else pace.sureness,
        basis=base,
        shared_min=count * ratio * half_width_each,
        guess_min=count * minutes_each * ESTIMATED_LIMITS if guessed else 0.0,
    )
