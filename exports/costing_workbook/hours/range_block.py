"""How far off the hours may be: linear within one timing or one guess, in squares between them."""

from __future__ import annotations

from exports.costing_workbook.hours.hour_ground import HourGround
from exports.costing_workbook.hours.pace_formulas import promise
from exports.costing_workbook.hours.stitches_block import StitchRefs, guess_marks
from exports.costing_workbook.hours.tasks_block import TaskRefs
from exports.costing_workbook.hours.timings_block import PaceRefs
from exports.sheets.cells import Cell, Ref, heads, reckoned, span_of, summed, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import HOURS, SHARE, count_shape
from quoting.core.estimate.hours import Hours
from quoting.core.estimate.pace_guesses import Guess
from quoting.core.workshop.timings import TimedStitch
from quoting.wording import guess_words, timed_words

FIRST_LINE, CLOSING = 3, 1
"""The rows of the block before its first line, and after its last."""


def range_rows(hours: Hours) -> int:
    """Return how many rows the block takes."""
    return FIRST_LINE + len(hours.bases) + len(hours.guesses) + CLOSING


def range_block(grid: Grid, ground: HourGround, stitches: StitchRefs, tasks: TaskRefs) -> Ref:
    """Write the half-width of the range of all minutes and return its cell."""
    hours = ground.hours
    grid.block("How far off the hours may be")
    grid.line(*heads("", "mark", "as so many stitches", *[""] * 5, "± share", "± minutes"))
    timed = [
        _basis(grid, base, pace, ground, stitches) for base, pace in ground.timings.paces.items()
    ]
    guessed = [
        _guess(grid, guess, mark, ground, stitches) for guess, mark in guess_marks(hours).items()
    ]
    everything = f"SUMSQ({span_of([*timed, *guessed])},{tasks.off})"
    said = promise("All minutes, ", " within", hours, ground.timings.sessions, ground.taken)
    widened = f"SQRT({everything})*N({ground.taken.widened})"
    half_width = summed(widened, hours.span.half_width, HOURS)
    return grid.line(Cell(said), *[None] * 8, half_width)[1]


def _basis(
    grid: Grid, base: TimedStitch, pace: PaceRefs, ground: HourGround, stitches: StitchRefs
) -> Ref:
    """Write the half-width of all that rests on one timed stitch."""
    count = ground.hours.timed(base) / pace.pace.minutes_each
    mine = f"--EXACT({stitches.bases},{pace.called})"
    return grid.line(
        words(f"all that rests on the timing of {timed_words(base, ground.speech)}"),
        None,
        reckoned(
            f"SUMPRODUCT({mine},{stitches.counts},{stitches.times})", count, count_shape(count)
        ),
        *[None] * 6,
        reckoned(
            pace.half_width(f"C{grid.next_row}", ground.taken),
            pace.pace.predict(count).half_width,
            HOURS,
        ),
    )[2]


def _guess(grid: Grid, guess: Guess, mark: str, ground: HourGround, stitches: StitchRefs) -> Ref:
    """Write the half-width of all that one guess concerns: the stitches that bear its mark."""
    row = grid.next_row
    marked = f'--ISNUMBER(FIND(", "&B{row}&",",", "&{stitches.guesses}&","))'
    together = f"SUMPRODUCT({marked},{stitches.minutes})"
    return grid.line(
        words(f"guessed: {guess_words(guess, ground.speech)}"),
        words(mark),
        *[None] * 6,
        reckoned(f"N({ground.taken.guesses[guess.unknown]})", guess.limits, SHARE),
        reckoned(f"I{row}*{together}", guess.limits * ground.hours.guessed(guess), HOURS),
    )[3]
