"""How long each stitch of the work takes: at its own pace, or reckoned from a timed one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from quoting.core.estimate.pace import Pace, Session, pace_of
from quoting.core.estimate.pace_guesses import Guess, Likeness
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.place import Place, at
from quoting.core.plan.gauge import Sureness
from quoting.core.workshop.timings import TimedStitch, Timing, mean
from quoting.core.workshop.workshop import Workshop

YarnAndStitch = tuple[str, str]
"""A yarn of the workshop, and a stitch that is worked in it, `ch` too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StitchingTime:
    """So many of a stitch in a yarn, the minutes of one, and how sure that is.

    `basis` is what its time rests on. All that rests on one timing shares its error: together it
    is as far off as that many stitches of the timed kind, and `shared_min` is this stitch's part
    of that half-width. What was never timed adds the `guesses`.
    """

    what: str
    yarn: str
    count: float
    minutes_each: float
    basis: TimedStitch
    pace: Pace
    shared_min: float
    guesses: tuple[Guess, ...]

    @property
    def sureness(self) -> Sureness:
        """What the time rests on."""
        return Sureness.ESTIMATED if self.guesses else self.pace.sureness


def stitching_times(
    stitches: Mapping[YarnAndStitch, int], workshop: Workshop
) -> list[StitchingTime]:
    """Return the time of each stitch of the work in its yarn.

    Errors: `turns-take-all` when the row turns of a session take more than all of it.
    """
    motifs = {motif.timed for motif in workshop.motifs}
    paces = {base: pace for base, pace in paces_of(workshop).items() if base not in motifs}
    likeness = Likeness(workshop)
    counts = {work: count for work, count in stitches.items() if count}
    bases = {(yarn, stitch): likeness.nearest(stitch, yarn, paces) for yarn, stitch in counts}
    ratios = {work: likeness.ratio(work[1], base.stitch) for work, base in bases.items()}
    together = dict.fromkeys(bases.values(), 0.0)
    for work, count in counts.items():
        together[bases[work]] += count * ratios[work]
    wide_each = {
        base: paces[base].predict(count).half_width / count for base, count in together.items()
    }
    return [
        StitchingTime(
            what=stitch,
            yarn=yarn,
            count=counts[yarn, stitch],
            minutes_each=ratios[yarn, stitch] * paces[base].minutes_each,
            basis=base,
            pace=paces[base],
            shared_min=counts[yarn, stitch] * ratios[yarn, stitch] * wide_each[base],
            guesses=likeness.guesses(stitch, yarn, base),
        )
        for (yarn, stitch), base in bases.items()
    ]


def paces_of(workshop: Workshop) -> dict[TimedStitch, Pace]:
    """Return the pace of all that was timed; errors as `stitching_times`."""
    return {timed: pace_of(sessions) for timed, sessions in sessions_of(workshop).items()}


def sessions_of(workshop: Workshop) -> dict[TimedStitch, list[Session]]:
    """Return the sessions of each stitch, or whole motif, that was timed in a yarn.

    Errors: as `stitching_times`.
    """
    sessions: dict[TimedStitch, list[Session]] = {}
    for number, timing in enumerate(workshop.timings, 1):
        session = basic_session(timing, workshop, at("timings", number, "minutes"))
        sessions.setdefault(timing.timed, []).append(session)
    rest = 1 + workshop.pay.rest_allowance
    for motif in workshop.motifs:
        for made in motif.timings:
            minutes = made.minutes * (rest if made.hands_on else 1)
            session = Session(count=made.motifs, minutes=minutes)
            sessions.setdefault(motif.timed, []).append(session)
    return sessions


def basic_session(timing: Timing, workshop: Workshop, place: Place) -> Session:
    """Return a session with its row turns taken out, and rest added if it was hands-on."""
    minutes = timing.minutes - timing.rows * mean(workshop.minutes.turn)
    if minutes <= 0:
        raise refuse(place, MistakeCode.TURNS_TAKE_ALL, read=timing.minutes)
    if timing.hands_on:
        minutes *= 1 + workshop.pay.rest_allowance
    return Session(count=timing.stitches, minutes=minutes)
