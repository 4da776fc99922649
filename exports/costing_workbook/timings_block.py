"""The maker's timings on the sheet of hours, and the pace of each timed stitch."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from exports.sheets.cells import (
    Ref,
    heads,
    reckoned,
    total_of,
    words,
    yours,
)
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, FINE, SHARE
from exports.sheets.rules import one_of
from quoting.core.estimate.pace import FEW_SESSIONS, ONE_TIMING_LIMITS, Pace
from quoting.core.estimate.stitching_time import basic_session, paces_of
from quoting.core.ground.place import NOWHERE
from quoting.core.workshop.timings import TimedStitch, Timing, mean
from quoting.core.workshop.workshop import Workshop
from quoting.wording import Speech, timed_words


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceRefs:
    """The cells of one timed stitch: its stitches and minutes in all, and the minutes of one."""

    pace: Pace
    counted: Ref
    each: Ref
    scatter: Ref | None

    def half_width(self, count: Ref) -> str:
        """Return the half-width of the minutes of `count` stitches, as `Pace.predict` has it."""
        widest = f"{ONE_TIMING_LIMITS}*{count}*{self.each}"
        if self.scatter is None:
            return widest
        freedom = self.pace.sessions - 1
        spread = f"{self.scatter}*SQRT({count}+{count}^2/{self.counted})"
        predicted = f"TINV(0.05,{freedom})*{spread}"
        return f"MIN({predicted},{widest})" if self.pace.sessions < FEW_SESSIONS else predicted


@dataclass(frozen=True, slots=True, kw_only=True)
class TimingRefs:
    """The pace of each timed stitch, and the share of the stitching that is ripped back."""

    paces: Mapping[TimedStitch, PaceRefs]
    rip_back: Ref


def timings_block(
    grid: Grid, workshop: Workshop, bases: Sequence[TimedStitch], turn: Ref | None, speech: Speech
) -> TimingRefs:
    """Write the timings that the hours rest on and return each stitch's pace.

    `turn` is the cell of the minutes that turning a row takes, where the work has any.
    """
    grid.block("Your timings")
    label = "Rest, added to minutes stopped at every pause"
    rest = _share(grid, "rest_allowance", label, workshop.pay.rest_allowance)
    lost = workshop.minutes.rip_back or 0.0
    rip_back = _share(grid, "rip_back", "Ripping back, of the stitching", lost)
    paces, habits = paces_of(workshop), _Habits(rest, turn or _turn(grid, workshop))
    return TimingRefs(
        paces={base: _pace(grid, base, paces[base], workshop, habits, speech) for base in bases},
        rip_back=rip_back,
    )


def _share(grid: Grid, name: str, label: str, share: float) -> Ref:
    return grid.name(name, grid.line(words(label), *[None] * 4, yours(share, SHARE))[1])


def _turn(grid: Grid, workshop: Workshop) -> Ref | None:
    """Write what turning a row takes, where the work has no turn but the sessions may have."""
    minutes = mean(workshop.minutes.turn)
    if not minutes:
        return None
    return grid.line(words("Turning a row, minutes"), *[None] * 4, yours(minutes, FINE))[1]


@dataclass(frozen=True, slots=True)
class _Habits:
    rest: Ref
    turn: Ref | None


def _pace(
    grid: Grid, base: TimedStitch, pace: Pace, workshop: Workshop, habits: _Habits, speech: Speech
) -> PaceRefs:
    timings = [timing for timing in workshop.timings if timing.timed == base]
    grid.gap()
    grid.line(
        *heads(timed_words(base, speech), "stopped at every pause", "stitches"),
        *heads("minutes", "rows turned", "minutes, turns out", figures_from=0),
    )
    lines = [_session(grid, timing, workshop, habits) for timing in timings]
    counts, basics = [line[0] for line in lines], [line[1] for line in lines]
    together, minutes = total_of(counts), total_of(basics)
    basic = sum(float(ref.value) for ref in basics)
    _, stitches, _, each = grid.line(
        words("together, and one stitch"),
        None,
        reckoned(together, int(pace.counted), COUNT),
        reckoned(minutes, basic, FINE),
        None,
        reckoned(f"{minutes}/{together}", pace.minutes_each, FINE),
    )
    scatter = _scatter(grid, pace, counts, basics, each)
    return PaceRefs(pace=pace, counted=stitches, each=each, scatter=scatter)


def _session(grid: Grid, timing: Timing, workshop: Workshop, habits: _Habits) -> tuple[Ref, Ref]:
    """Write one session and return its stitches and its basic minutes."""
    row = grid.next_row
    turns = f"-Hours!E{row}*{habits.turn}" if habits.turn is not None else ""
    basic = f'(Hours!D{row}{turns})*IF(Hours!B{row}="yes",1+{habits.rest},1)'
    _, stitches, _, _, minutes = grid.line(
        None,
        yours("yes" if timing.hands_on else "no", rule=one_of("yes", "no")),
        yours(timing.stitches, COUNT),
        yours(timing.minutes, FINE),
        yours(timing.rows, COUNT),
        reckoned(basic, basic_session(timing, workshop, NOWHERE).minutes, FINE),
    )
    return stitches, minutes


def _scatter(grid: Grid, pace: Pace, counts: list[Ref], basics: list[Ref], each: Ref) -> Ref | None:
    """Write σ of one stitch's minutes: σ² = Σ(b − βa)²/a/(n − 1)."""
    if pace.deviation is None:
        return None
    terms = "+".join(f"({b}-{each}*{a})^2/{a}" for a, b in zip(counts, basics, strict=True))
    return grid.line(
        words("scatter of one stitch"),
        None,
        None,
        None,
        None,
        reckoned(f"SQRT(({terms})/{pace.sessions - 1})", pace.deviation, FINE),
    )[1]
