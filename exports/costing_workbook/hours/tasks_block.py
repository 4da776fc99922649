"""All work but the stitches on the sheet of hours: how many, how long each, how long together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from exports.costing_workbook.hours.hour_assumptions_block import HourAssumptions
from exports.costing_workbook.hours.hour_ground import HourGround
from exports.costing_workbook.hours.pace_formulas import sureness_of
from exports.costing_workbook.hours.readings_block import ReadingRefs
from exports.costing_workbook.hours.stitches_block import StitchRefs
from exports.sheets.cells import Cell, Formula, Span, counted, heads, reckoned, words, yours
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, FINE, HOURS, SHARE, count_shape
from exports.sheets.rules import MEASURE
from exports.sheets.sheet_rows import number_text
from quoting.core.estimate.hours import Hours, Task
from quoting.core.estimate.pace import ONE_TIMING_LIMITS
from quoting.core.ground.money import MINUTES_PER_HOUR
from quoting.core.workshop.timings import USUAL_MINUTES
from quoting.wording import AS_USUAL, sureness_words, task_words

RIP_BACK, TURN, EXTRAS = "rip_back", "turn", "extras"
NOT_GIVEN = "not given"


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskRefs:
    """The list of the tasks by its columns; `sure` says of which no minutes are given."""

    called: Span
    parts: Span
    minutes: Span
    sure: Span
    off: Span


def tasks_of(hours: Hours) -> list[Task]:
    """Return the tasks that are no stitches, those that take no minutes among them."""
    return [task for task in hours.every_task if task.timed_stitch is None]


Several = Mapping[str, ReadingRefs]
"""The readings of what was measured several times, by the task."""


def tasks_block(grid: Grid, ground: HourGround, stitches: StitchRefs, several: Several) -> TaskRefs:
    """Write every task and return the list by its columns."""
    tasks = tasks_of(ground.hours)
    grid.block("The other work")
    lines = Lines(
        grid,
        len(tasks),
        [
            *heads("", "part of the work", "how many", "mean of so many readings", figures_from=2),
            *heads("minutes each", "minutes", "hours", figures_from=0),
            *heads("how sure", "± share", "± minutes"),
        ],
    )
    for task in tasks:
        each = _minutes_each(task, ground, stitches)
        _task(grid, task, each, several.get(task.what), ground)
    lines.close()
    called, parts, minutes, sure, off = (lines.column(letter) for letter in "ABFHJ")
    return TaskRefs(called=called, parts=parts, minutes=minutes, sure=sure, off=off)


def _task(
    grid: Grid, task: Task, each: Cell, readings: ReadingRefs | None, ground: HourGround
) -> None:
    row, is_given = grid.next_row, task.what not in ground.hours.not_given
    habits = ground.timings.habits
    given_at = {RIP_BACK: str(habits.rip_back), TURN: str(habits.turn)}.get(task.what, f"E{row}")
    count = reckoned(_count(given_at, row, readings), task.readings * is_given, COUNT)
    share = task.half_width_min / task.minutes if task.minutes else ONE_TIMING_LIMITS
    grid.line(
        words(task_words(task.what, ground.speech)),
        words(ground.called[task.part]),
        counted(task.count, count_shape(task.count)),
        count,
        each,
        reckoned(f"C{row}*N(E{row})", task.minutes, HOURS),
        reckoned(f"F{row}/{MINUTES_PER_HOUR}", task.minutes / MINUTES_PER_HOUR, HOURS),
        _sureness(row, task, ground),
        reckoned(_share(row, readings, ground.taken), share, SHARE),
        reckoned(f"F{row}*I{row}", task.half_width_min, HOURS),
        faults=[ground.unknown_part(row)],
    )


def _minutes_each(task: Task, ground: HourGround, stitches: StitchRefs) -> Cell:
    """Return the minutes of one: an input, here or where the timings read it too."""
    habits = ground.timings.habits
    if task.what == RIP_BACK:
        share = f"N({habits.rip_back})*SUM({stitches.minutes})"
        return reckoned(share, task.minutes_each, FINE)
    if task.what == TURN:
        return reckoned(f"N({habits.turn})", task.minutes_each, FINE)
    rule = MEASURE.called("minutes each")
    if task.what == EXTRAS:
        return yours(task.minutes_each, FINE, rule)
    if task.what in USUAL_MINUTES:
        return yours(task.minutes_each, FINE, rule)
    given = "" if task.what in ground.hours.not_given else task.minutes_each
    return yours(given, FINE, rule.or_empty())


def _count(given_at: str, row: int, readings: ReadingRefs | None) -> str:
    """Return of how many readings the minutes are the mean: one figure is one, nothing is none."""
    one = "1"
    if readings is not None:
        one = f"IF(ROUND(N(E{row})-{readings.mean},9)=0,{readings.count},1)"
    return f'IF({given_at}="",0,{one})'


def _sureness(row: int, task: Task, ground: HourGround) -> Cell:
    """Return what the minutes rest on; those that are usual are said to be while they stand."""
    said, now = sureness_of(f"D{row}"), sureness_words(task.sureness)
    if task.what in ground.hours.as_usual:
        usual = number_text(task.minutes_each)
        said, now = f'IF(ROUND(N(E{row})-{usual},9)=0,"{AS_USUAL}",{said})', AS_USUAL
    if task.what in ground.hours.not_given:
        now = NOT_GIVEN
    return Cell(Formula(f'IF(D{row}=0,"{NOT_GIVEN}",{said})', now))


def _share(row: int, readings: ReadingRefs | None, taken: HourAssumptions) -> str:
    """Return how far off a task may be: as one figure, or as the mean of its readings."""
    limits = f"N({taken.limits})"
    if readings is None:
        return limits
    predicted = readings.pace(f"E{row}").half_width(f"C{row}", taken)
    return f"IF(OR(D{row}<2,F{row}=0),{limits},{predicted}/F{row})"
