"""How long one of each timed stitch, or motif, takes, and how much of that is turning rows."""

from __future__ import annotations

from dataclasses import dataclass

from exports.comparison_workbook.works import TURN, Works
from exports.sheets.cells import (
    Ref,
    Span,
    beside,
    count_where,
    counted,
    heads,
    reckoned,
    total_where,
    words,
    yours,
)
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, FINE
from exports.sheets.rules import MEASURE, SOME
from exports.sheets.sheet_rows import number_text
from quoting.core.estimate.stitching_time import paces_of
from quoting.core.workshop.timings import TimedStitch, Timing, mean
from quoting.core.workshop.workshop import Workshop
from quoting.wording import Speech, task_words, timed_words

NOTHING_LEFT = '"turning rows takes all of it"'
SPREAD_ANEW = '"the range has these turns taken out of the timings: the program counts anew"'


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceList:
    """The timed stitches and the minutes of one, and the cell of the minutes of a turn."""

    stitches: Span
    minutes: Span
    turn: Ref

    def of(self, timed: str) -> str:
        """Return the minutes of one of the timed stitch that a cell names."""
        return total_where(self.minutes, (self.stitches, timed))

    def known(self, timed: str) -> str:
        """Return how many lines of the list have the words of a cell."""
        return count_where((self.stitches, timed))


def pace_list(grid: Grid, workshop: Workshop, works: Works, speech: Speech) -> PaceList:
    """Write the pace of every stitch that the work rests on; return the columns."""
    bases = list(dict.fromkeys(t.timed_stitch for t in works.tasks if t.timed_stitch))
    grid.block("Your pace, for all sizes")
    turn = _turn(grid, workshop, bases, speech)
    listed = Lines(
        grid,
        len(bases),
        [
            *heads(_timed_heading(workshop, bases), "timings"),
            *heads("minutes of one, as timed", "row turns in it", figures_from=0),
            *heads("without turns", figures_from=0),
        ],
    )
    for base in bases:
        _pace(grid, base, workshop, turn, speech)
    listed.close()
    return PaceList(stitches=listed.column("A"), minutes=listed.column("E"), turn=turn)


def _timed_heading(workshop: Workshop, bases: list[TimedStitch]) -> str:
    motifs = any(motif.timed in bases for motif in workshop.motifs)
    return "stitch or motif" if motifs else "stitch"


def _turn(grid: Grid, workshop: Workshop, bases: list[TimedStitch], speech: Speech) -> Ref:
    """Write what turning a row takes, which is taken out of the timings that have turns."""
    minutes, row = mean(workshop.minutes.turn), grid.next_row
    several = any(len(_sessions(base, workshop)) > 1 and _turns(base, workshop) for base in bases)
    moved = f"ROUND({beside('C', row)}-{number_text(minutes)},9)<>0"
    _, cell, _ = grid.line(
        words(f"{task_words(TURN, speech)}, minutes"),
        None,
        yours(minutes, FINE, MEASURE),
        words("taken out of the timings too"),
        faults=[Fault(moved, SPREAD_ANEW)] if several else [],
    )
    return grid.name("turn", cell)


def _pace(grid: Grid, base: TimedStitch, workshop: Workshop, turn: Ref, speech: Speech) -> None:
    row, pace, turns = grid.next_row, paces_of(workshop)[base], _turns(base, workshop)
    timed = pace.minutes_each + turns * mean(workshop.minutes.turn)
    without = f"{beside('C', row)}-{beside('D', row)}*{turn}"
    grid.line(
        words(timed_words(base, speech)),
        counted(pace.sessions, COUNT),
        yours(timed, FINE, SOME),
        counted(turns, FINE),
        reckoned(without, pace.minutes_each, FINE),
        faults=[Fault(f"{beside('E', row)}<=0", NOTHING_LEFT)],
    )


def _sessions(base: TimedStitch, workshop: Workshop) -> list[Timing]:
    return [timing for timing in workshop.timings if timing.timed == base]


def _turns(base: TimedStitch, workshop: Workshop) -> float:
    """Return the row turns for one stitch in its sessions, with the rest that is added to them.

    A motif that was timed whole has none.
    """
    sessions, rest = _sessions(base, workshop), workshop.pay.rest_allowance
    turns = sum(each.rows * (1 + rest * each.hands_on) for each in sessions)
    return turns / sum(each.stitches for each in sessions) if sessions else 0.0
