"""What the hours take for granted: each figure once, with where it comes from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from exports.sheets.cells import Cell, Look, Ref, words, yours
from exports.sheets.grid import Fault, Grid
from exports.sheets.number_formats import COUNT, FINE, SHARE, is_part
from exports.sheets.rules import FACTOR, SOME, SOME_WHOLE, Rule
from exports.sheets.rules import SHARE as A_SHARE
from quoting.core.estimate.hours import Hours
from quoting.core.estimate.pace import CONFIDENCE, FEW_SESSIONS, ONE_TIMING_LIMITS
from quoting.core.estimate.pace_guesses import GUESS_LIMITS, Likeness, Unknown
from quoting.core.workshop.stitches import TIME_RATIO, Stitch
from quoting.core.workshop.workshop import Workshop
from quoting.wording import Speech

OFTEN = Rule(kind="decimal", wanted="a share from 50% to 99.9%", least=0.5, most=0.999)
"""How often a range may be wanted to hold: none holds always."""

WIDENED = "The range of all hours, times as wide as measured"
PRACTICE = "common practice, no source"
LIMITS = {
    Unknown.RATIO: "A stitch by another's yarn-overs, off by",
    Unknown.YARN: "A yarn as another of its category, off by",
    Unknown.TEXTURE: "A pattern as the stitch it is like, off by",
    Unknown.THICKNESS: "A yarn as one of another category, off by",
    Unknown.ROUNDS: "A motif with other rounds than were timed, off by",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class HourAssumptions:
    """The cells of what is taken for granted. `times` and `guesses` are those that are used.

    `limits` is how far off one figure may be, as a share; `few` is of how many timings a range
    is promised; `widened` is the workshop's own factor of the range; `times` are against a chain.
    """

    limits: Ref
    confidence: Ref
    few: Ref
    widened: Ref
    times: Mapping[Stitch, Ref]
    guesses: Mapping[Unknown, Ref]


def hour_assumptions_block(
    grid: Grid, hours: Hours, workshop: Workshop, speech: Speech
) -> HourAssumptions:
    """Write what the hours take for granted and return its cells."""
    grid.block("What the hours take for granted")
    chosen = len({timing.timed for timing in workshop.timings}) > 1
    return HourAssumptions(
        limits=_limits(grid),
        confidence=_line(
            grid,
            "A range should hold",
            yours(CONFIDENCE, SHARE, OFTEN),
            "of the time, by Student's t; Hahn and Meeker, prediction of a total",
            "hours_confidence",
        ),
        few=_line(
            grid,
            "Timings of which a range is promised",
            yours(FEW_SESSIONS, COUNT, SOME_WHOLE),
            "of fewer the narrower of both ranges is taken; the program's own choice",
            "timings_promised_of",
        ),
        widened=_line(
            grid,
            WIDENED,
            yours(workshop.ranges.hours, FINE, FACTOR),
            "your workshop, from what finished orders really took",
            "hours_widened",
        ),
        times=_times(grid, hours, workshop, speech, chosen=chosen),
        guesses=_guesses(grid, hours, chosen=chosen),
    )


def _limits(grid: Grid) -> Ref:
    return _line(
        grid,
        "A figure timed once, or set, off by",
        yours(ONE_TIMING_LIMITS, SHARE, A_SHARE),
        f"either way, at 95%; {PRACTICE}",
        "one_timing_limits",
    )


def kinds_compared(hours: Hours, likeness: Likeness) -> list[Stitch]:
    """Return the basic stitches whose times are compared, the quickest first."""
    pairs = [
        (likeness.kind(task.what), likeness.kind(task.timed_stitch.stitch))
        for task in hours.tasks
        if task.timed_stitch is not None and task.what != task.timed_stitch.stitch
    ]
    found = {kind for mine, timed in pairs if mine is not timed for kind in (mine, timed)}
    return [stitch for stitch in Stitch if stitch in found]


def _counted_by(hours: Hours, workshop: Workshop) -> set[Stitch]:
    """Return the basic stitches by whose times motifs with other rounds were counted."""
    made = {task.timed_stitch for task in hours.tasks if task.timed_stitch and is_part(task.count)}
    motifs = [motif for motif in workshop.motifs if motif.timed in made]
    stitches = {workshop.basic_stitch(motif.stitch, "stitch") for motif in motifs}
    return stitches | {Stitch.CH} if motifs else stitches


def _times(
    grid: Grid, hours: Hours, workshop: Workshop, speech: Speech, *, chosen: bool
) -> dict[Stitch, Ref]:
    kinds = kinds_compared(hours, Likeness(workshop))
    counted_by = _counted_by(hours, workshop)
    said = f"against a chain, by its yarn-overs; {PRACTICE}"
    return {
        kind: _line(
            grid,
            f"Time of {speech.stitch(kind.value)}",
            yours(TIME_RATIO[kind], FINE, SOME),
            said,
            f"time_of_{kind.value}",
            faults=[
                *(_choice(grid, TIME_RATIO[kind]) if chosen else ()),
                *(_counting(grid, TIME_RATIO[kind]) if kind in counted_by else ()),
            ],
        )
        for kind in kinds
    }


def _guesses(grid: Grid, hours: Hours, *, chosen: bool) -> dict[Unknown, Ref]:
    used = {guess.unknown for guess in hours.guesses}
    return {
        unknown: _line(
            grid,
            LIMITS[unknown],
            yours(limits, SHARE, A_SHARE),
            f"either way, at 95%; {PRACTICE}",
            f"{unknown.value}_limits",
            faults=_choice(grid, limits) if chosen and unknown is not Unknown.ROUNDS else (),
        )
        for unknown, limits in GUESS_LIMITS.items()
        if unknown in used
    }


def _choice(grid: Grid, figure: float) -> tuple[Fault]:
    """Return what is wrong where the program may have to choose another timing to rest on."""
    said = '"the program may let a stitch rest on another timing now"'
    return (Fault(_moved(grid, figure), said),)


def _counting(grid: Grid, figure: float) -> tuple[Fault]:
    """Return what is wrong where motifs were counted by a figure that was changed."""
    said = '"motifs with other rounds were counted by it: the program counts anew"'
    return (Fault(_moved(grid, figure), said),)


def _moved(grid: Grid, figure: float) -> str:
    return f"ROUND(N(C{grid.next_row})-{figure!r},9)<>0"


def _line(
    grid: Grid, label: str, cell: Cell, note: str, name: str, *, faults: Sequence[Fault] = ()
) -> Ref:
    """Write one figure with its note, and name it."""
    ref = grid.line(words(label), None, cell, None, words(note, Look.NOTE), faults=faults)[1]
    return grid.name(name, ref)
