"""The stitches on the sheet of hours: how many, on what timing each rests, how long together."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.hours.hour_ground import HourGround
from exports.costing_workbook.hours.pace_formulas import sureness_of
from exports.sheets.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    Span,
    counted,
    heads,
    reckoned,
    summed,
    words,
)
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, FINE, HOURS, count_shape, is_part
from quoting.core.estimate.hours import Hours, Task
from quoting.core.estimate.in_motifs import share_in_motifs
from quoting.core.estimate.pace_guesses import Guess, Likeness
from quoting.core.ground.money import MINUTES_PER_HOUR
from quoting.core.workshop.timings import TimedStitch
from quoting.wording import sureness_words, timed_words, work_words

IN_PART = "Motifs in part, or with other rounds than were timed, count by a timed one's stitches."


@dataclass(frozen=True, slots=True, kw_only=True)
class StitchRefs:
    """The list of the stitches by its columns, and how many and how long they are together.

    `times` is how many times as long as the timed stitch each takes, `bases` what it rests on,
    `guesses` the marks of what is guessed of it. Motifs that were timed whole are lines of it, too;
    `motif_minutes` is what motifs that are joined take of all.
    """

    parts: Span
    counts: Span
    times: Span
    minutes: Span
    bases: Span
    guesses: Span
    stitching_minutes: Ref
    motif_minutes: Formula


def stitches_block(grid: Grid, ground: HourGround) -> StitchRefs:
    """Write every stitch of the work in its yarn and return the list by its columns."""
    tasks = stitches_of(ground.hours)
    grid.block("The stitches and motifs" if _are_motifs(ground) else "The stitches")
    lines = Lines(
        grid,
        len(tasks),
        [
            *heads("", "part of the work", "how many", "times the timed one", figures_from=2),
            *heads("minutes each", "minutes", "hours", figures_from=0),
            *heads(
                "how sure",
                "rests on the timing of",
                "guesses in it, by marks below",
                figures_from=3,
            ),
        ],
    )
    marks = guess_marks(ground.hours)
    found: list[tuple[Task, Ref]] = []
    for task, base in tasks:
        marked = ", ".join(marks[guess] for guess in task.guesses)
        found.append((task, _stitch(grid, task, base, marked, ground)))
    lines.close()
    return _together(grid, lines, found, ground)


def stitches_rows(hours: Hours) -> int:
    """Return the rows of the block besides its list's lines: three before it, the others after."""
    return 5 + any(is_part(task.count) for task in hours.tasks if task.timed_stitch)


def _are_motifs(ground: HourGround) -> bool:
    named = {motif.timed for motif in ground.workshop.motifs}
    return not named.isdisjoint(ground.hours.bases)


def stitches_of(hours: Hours) -> list[tuple[Task, TimedStitch]]:
    """Return the tasks that are stitches, each with what it rests on."""
    return [(task, task.timed_stitch) for task in hours.tasks if task.timed_stitch is not None]


def guess_marks(hours: Hours) -> dict[Guess, str]:
    """Return a mark for each guess, by which a stitch tells what is guessed of it."""
    return {guess: f"g{number}" for number, guess in enumerate(hours.guesses, 1)}


def _stitch(grid: Grid, task: Task, base: TimedStitch, marked: str, ground: HourGround) -> Ref:
    """Write the line of a stitch and return its minutes."""
    row, pace, speech = grid.next_row, ground.timings.paces[base], ground.speech
    sure = Formula(sureness_of(str(pace.sessions)), sureness_words(task.sureness))
    refs = grid.line(
        words(work_words(task, ground.hours, speech)),
        words(ground.called[task.part]),
        counted(task.count, count_shape(task.count)),
        _times(task.what, base.stitch, ground),
        reckoned(f"D{row}*{pace.each}", task.minutes_each, FINE),
        reckoned(f"C{row}*E{row}", task.minutes, HOURS),
        reckoned(f"F{row}/{MINUTES_PER_HOUR}", task.minutes / MINUTES_PER_HOUR, HOURS),
        words(sureness_words(task.sureness)) if marked else Cell(sure),
        words(timed_words(base, speech)),
        words(marked) if marked else None,
        faults=[ground.unknown_part(row)],
    )
    return refs[5]


def _times(stitch: str, base: str, ground: HourGround) -> Cell:
    """Return how many times as long a stitch, or a motif, takes as the timed one it rests on."""
    if stitch == base:
        return counted(1, FINE)
    likeness, times = Likeness(ground.workshop), ground.taken.times
    mine, timed = likeness.kind(stitch), likeness.kind(base)
    if mine is timed:
        return counted(1, FINE)
    other = f"N({times[timed]})"
    ratio = likeness.ratio(stitch, base)
    return reckoned(f"IF({other}>0,N({times[mine]})/{other},0)", ratio, FINE)


def _in_motifs(found: list[tuple[Task, Ref]], ground: HourGround) -> Formula:
    """Return the minutes of motifs that are joined: of each line as much as is worked in them."""
    parts, sum_of = [], 0.0
    for task, minutes in found:
        share = share_in_motifs(task, ground.in_motifs, ground.workshop)
        if share:
            of_line = ground.in_motifs.get((task.yarn or "", task.what), 0)
            parts.append(str(minutes) if share == 1 else f"{minutes}*{of_line}/{task.count}")
            sum_of += task.minutes * share
    return Formula("+".join(parts) or "0", sum_of)


def _together(
    grid: Grid, lines: Lines, found: list[tuple[Task, Ref]], ground: HourGround
) -> StitchRefs:
    """Write how many stitches there are, and what all takes, under their list.

    Stitches and motifs are not added up.
    """
    tasks = [task for task, _ in found]
    counts, minutes = lines.column("C"), lines.column("F")
    each, motifs = sum(task.minutes for task in tasks), _are_motifs(ground)
    many = summed(f"SUM({counts})", sum(task.count for task in tasks), COUNT)
    *_, stitching, _ = grid.line(
        words("all of them" if motifs else "all stitches"),
        None,
        None if motifs else many,
        None,
        None,
        summed(f"SUM({minutes})", each, HOURS),
        summed(f"SUM({lines.column('G')})", each / MINUTES_PER_HOUR, HOURS),
    )
    if any(is_part(task.count) for task in tasks):
        grid.line(words(IN_PART, Look.NOTE))
    return StitchRefs(
        parts=lines.column("B"),
        counts=counts,
        times=lines.column("D"),
        minutes=minutes,
        bases=lines.column("I"),
        guesses=lines.column("J"),
        stitching_minutes=stitching,
        motif_minutes=_in_motifs(found, ground),
    )
