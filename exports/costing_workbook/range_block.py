"""How far off the hours may be: linear within one timing or one guess, in squares between them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from exports.costing_workbook.tasks_block import TaskRow
from exports.costing_workbook.timings_block import PaceRefs
from exports.sheets.cells import Ref, counted, heads, reckoned, span_of, summed, total_of, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, HOURS, SHARE
from quoting.core.estimate.hours import Hours
from quoting.core.estimate.pace_guesses import Guess
from quoting.core.workshop.timings import TimedStitch
from quoting.wording import Speech, guess_words, timed_words


def range_block(
    grid: Grid,
    hours: Hours,
    rows: Sequence[TaskRow],
    paces: Mapping[TimedStitch, PaceRefs],
    speech: Speech,
) -> Ref:
    """Write the half-width of the 95 % range of all minutes and return its cell."""
    grid.block("How far off the hours may be")
    grid.line(*heads("", "", "as so many stitches", "", "", "", "", "± share", "± minutes"))
    timed = [_basis(grid, base, hours, rows, pace, speech) for base, pace in paces.items()]
    guessed = [_guess(grid, guess, hours, rows, speech) for guess in hours.guesses]
    own = [row.off for row in rows if row.off is not None]
    everything = span_of([*timed, *guessed, *own])
    return grid.line(
        words(f"All minutes, {'19 times in 20' if hours.timed_enough else 'roughly'} within"),
        *[None] * 7,
        summed(f"SQRT(SUMSQ({everything}))", hours.span.half_width, HOURS),
    )[1]


def _basis(
    grid: Grid,
    base: TimedStitch,
    hours: Hours,
    rows: Sequence[TaskRow],
    pace: PaceRefs,
    speech: Speech,
) -> Ref:
    """Write the half-width of all that rests on one timed stitch."""
    mine = [row for row in rows if row.task.timed_stitch == base]
    equivalent = "+".join(
        f"{row.count}*{row.minutes.sheet}!D{row.minutes.row}/{pace.each}" for row in mine
    )
    count = hours.timed(base) / pace.pace.minutes_each
    at = Ref(grid.title, "C", grid.next_row, count)
    return grid.line(
        words(f"all that rests on the timing of {timed_words(base, speech)}"),
        None,
        reckoned(equivalent, count, COUNT),
        *[None] * 5,
        reckoned(pace.half_width(at), pace.pace.predict(count).half_width, HOURS),
    )[2]


def _guess(grid: Grid, guess: Guess, hours: Hours, rows: Sequence[TaskRow], speech: Speech) -> Ref:
    """Write the half-width of all that one guess concerns."""
    mine = [row for row in rows if guess in row.task.guesses]
    row = grid.next_row
    return grid.line(
        words(f"guessed: {guess_words(guess, speech)}"),
        *[None] * 6,
        counted(guess.limits, SHARE),
        reckoned(
            f"{grid.title}!H{row}*{total_of([row.minutes for row in mine])}",
            guess.limits * hours.guessed(guess),
            HOURS,
        ),
    )[2]
