"""The maker's timings on the sheet of hours, and the pace of each timed stitch."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from exports.costing_workbook.hours.habits_rows import HabitRefs, habits_rows
from exports.costing_workbook.hours.hour_assumptions_block import HourAssumptions
from exports.costing_workbook.hours.pace_formulas import PaceCells, student_t
from exports.costing_workbook.hours.timed_sessions import (
    TimedSession,
    TimedSessions,
    plural_of,
    timed_sessions,
)
from exports.sheets.cells import Cell, Formula, Look, Ref, Span, heads, reckoned, words, yours
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT as WHOLE
from exports.sheets.number_formats import FINE
from exports.sheets.rules import COUNT, SOME, SOME_WHOLE, one_of
from quoting.core.estimate.pace import CONFIDENCE, Pace
from quoting.core.estimate.stitching_time import paces_of
from quoting.core.ground.student_t import two_sided_t
from quoting.core.workshop.timings import TimedStitch
from quoting.core.workshop.workshop import Workshop
from quoting.wording import Speech, timed_words

SPARE = 2
"""Free lines under the sessions of each stitch."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceRefs(PaceCells):
    """The cells of one timed stitch; `called` is what it is called."""

    pace: Pace
    called: Ref


@dataclass(frozen=True, slots=True, kw_only=True)
class TimingRefs:
    """The pace of each timed stitch, and what else the maker always does: see `HabitRefs`."""

    paces: Mapping[TimedStitch, PaceRefs]
    habits: HabitRefs

    @property
    def sessions(self) -> list[Ref]:
        """How many sessions there are of each."""
        return [pace.sessions for pace in self.paces.values()]


def timings_block(
    grid: Grid,
    workshop: Workshop,
    bases: Sequence[TimedStitch],
    taken: HourAssumptions,
    speech: Speech,
) -> TimingRefs:
    """Write the timings that the hours rest on and return each stitch's pace."""
    grid.block("Your timings")
    habits, paces = habits_rows(grid, workshop), paces_of(workshop)
    return TimingRefs(
        paces={
            base: _pace(grid, base, paces[base], workshop, habits, taken, speech) for base in bases
        },
        habits=habits,
    )


def _pace(
    grid: Grid,
    base: TimedStitch,
    pace: Pace,
    workshop: Workshop,
    habits: HabitRefs,
    taken: HourAssumptions,
    speech: Speech,
) -> PaceRefs:
    """Write the sessions of one stitch, or of one motif, and under them its pace."""
    called, timed = timed_words(base, speech), timed_sessions(base, workshop)
    grid.gap()
    lines = Lines(grid, len(timed.sessions) + SPARE, _heads(called, timed))
    each = Ref(grid.title, "F", lines.closing_row + 3, pace.minutes_each)
    for session in (*timed.sessions, *[None] * SPARE):
        _session(grid, called, timed, session, habits, each)
    lines.close()
    return _together(grid, pace, lines, taken, timed.one)


def _heads(called: str, timed: TimedSessions) -> list[Cell]:
    """Return the headings: a motif has no turns that are taken out."""
    turned, basic = (
        ("", "minutes, rest in") if timed.whole else ("rows turned", "minutes, turns out")
    )
    return [
        *heads(called, "stopped at every pause", plural_of(timed.one)),
        *heads("minutes", turned, basic, f"off the pace, squared, a {timed.one}", figures_from=0),
    ]


def _session(
    grid: Grid,
    called: str,
    timed: TimedSessions,
    session: TimedSession | None,
    habits: HabitRefs,
    each: Ref,
) -> None:
    """Write one session, or a spare line for one."""
    row, minutes = grid.next_row, SOME.or_empty().called("minutes")
    turned = f"N(E{row})*N({habits.turn})"
    rest = f'IF(B{row}="yes",1+N({habits.rest}),1)'
    basic = f"IF(AND(N(C{row})>0,N(D{row})>{turned}),(N(D{row})-{turned})*{rest},0)"
    off = f"IF(F{row}>0,(F{row}-{each}*C{row})^2/C{row},0)"
    count = SOME_WHOLE.or_empty().called("motifs" if timed.whole else "stitches")
    rows = yours(session.rows if session else "", WHOLE, COUNT.or_empty().called("rows turned"))
    grid.line(
        words(f"{'timing' if session else 'further timing'} of {called}"),
        yours("yes" if session and session.hands_on else "no", rule=one_of("yes", "no")),
        yours(session.basic.count if session else "", WHOLE, count),
        yours(session.minutes if session else "", FINE, minutes),
        None if timed.whole else rows,
        reckoned(basic, session.basic.minutes if session else 0, _shown(FINE)),
        reckoned(off, session.squared(each) if session else 0, _shown(FINE)),
        faults=_session_faults(row, timed.one),
    )


def _shown(shape: str) -> str:
    """Return a format that leaves a nought out: a spare line has none of anything."""
    return f"{shape};-{shape};"


def _session_faults(row: int, one: str) -> tuple[Fault, ...]:
    half = f'AND(LEN(C{row}&D{row}&E{row})>0,OR(C{row}="",D{row}=""))'
    taken = f"AND(N(C{row})>0,N(D{row})>0,F{row}=0)"
    many = plural_of(one)
    return (
        Fault(half, f'"a timing wants both its {many} and its minutes: it is not counted"'),
        Fault(taken, '"turning the rows takes all of these minutes: it is not counted"'),
    )


def _together(grid: Grid, pace: Pace, lines: Lines, taken: HourAssumptions, one: str) -> PaceRefs:
    """Write the pace of all sessions: σ² = Σ(b - βa)²/a/(n - 1)."""
    counts, basics, squares = (lines.column(letter) for letter in "CFG")
    sessions = _sessions(grid, basics, pace, one)
    counted = _figure(
        grid, f"their {plural_of(one)}", f'SUMIF({basics},">0",{counts})', int(pace.counted), WHOLE
    )
    each = _figure(
        grid,
        f"minutes of one {one}",
        f"IF({counted}>0,SUM({basics})/{counted},0)",
        pace.minutes_each,
        FINE,
    )
    spread = f"IF({sessions}>1,SQRT(SUM({squares})/({sessions}-1)),0)"
    t = two_sided_t(CONFIDENCE, pace.sessions - 1) if pace.sessions > 1 else 0
    return PaceRefs(
        pace=pace,
        called=Ref(grid.title, "A", lines.heads_row, ""),
        sessions=sessions,
        counted=counted,
        each=each,
        scatter=_figure(grid, f"scatter of one {one}", spread, pace.deviation or 0, _shown(FINE)),
        t=_figure(grid, "Student's t", student_t(str(sessions), taken), t, _shown(FINE)),
    )


def _sessions(grid: Grid, basics: Span, pace: Pace, one: str) -> Ref:
    """Write how many sessions count, and say so where none is left."""
    at = f"F{grid.next_row}"
    none = Fault(f"{at}=0", f'"no timing of this {one} is left: its hours are missing"')
    cell = Cell(Formula(f'COUNTIF({basics},">0")', pace.sessions), Look.PLAIN, WHOLE)
    return grid.line(words("timings that count"), *[None] * 4, cell, faults=[none])[1]


def _figure(grid: Grid, label: str, expression: str, value: float, shape: str) -> Ref:
    return grid.line(words(label), *[None] * 4, reckoned(expression, value, shape))[1]
