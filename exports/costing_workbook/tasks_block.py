"""Every task on the sheet of hours: how many, how long each, how long together, how sure."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from exports.costing_workbook.timings_block import TimingRefs
from exports.sheets.cells import Cell, Ref, counted, heads, reckoned, total_of, words, yours
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, FINE, HOURS, SHARE
from quoting.core.estimate.hours import Task
from quoting.core.estimate.pace_guesses import Likeness
from quoting.core.ground.money import MINUTES_PER_HOUR
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import TIME_RATIO
from quoting.wording import Speech, part_words, work_words

FIRST_TASK = 3
"""The rows of the block before its first task: a free one, its title, its headings."""

RIP_BACK = "rip_back"


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskRow:
    """The cells of one task; `off` is its half-width in minutes, where no timing is shared."""

    task: Task
    count: Ref
    minutes: Ref
    off: Ref | None


def tasks_block(grid: Grid, quote: Quote, timings: TimingRefs, speech: Speech) -> list[TaskRow]:
    """Write every task and return its cells."""
    grid.block("What there is to do")
    grid.line(
        *heads("", "", "how many", "minutes each", "minutes", "hours", figures_from=2),
        *heads("how sure", "± share", "± minutes"),
    )
    rows: list[TaskRow] = []
    hours, likeness = quote.estimate.hours, Likeness(quote.workshop)
    for task in hours.tasks:
        each = _minutes_each(task, likeness, timings, rows)
        rows.append(_task(grid, task, each, work_words(task, hours, speech)))
    return rows


def _task(grid: Grid, task: Task, each: Cell, called: str) -> TaskRow:
    row = grid.next_row
    share = 0.0 if task.timed_stitch else task.half_width_min / task.minutes
    refs = grid.line(
        words(part_words(task.part)),
        words(called),
        counted(task.count, COUNT),
        each,
        reckoned(f"Hours!C{row}*Hours!D{row}", task.minutes, HOURS),
        reckoned(f"Hours!E{row}/{MINUTES_PER_HOUR}", task.minutes / MINUTES_PER_HOUR, HOURS),
        words(task.sureness.value),
        counted(share, SHARE) if share else None,
        reckoned(f"Hours!E{row}*Hours!H{row}", task.minutes * share, HOURS) if share else None,
    )
    return TaskRow(task=task, count=refs[2], minutes=refs[4], off=refs[8] if share else None)


def _minutes_each(
    task: Task, likeness: Likeness, timings: TimingRefs, before: Sequence[TaskRow]
) -> Cell:
    """Return the minutes of one: from the timings, a share of the stitching, or an input."""
    base = task.timed_stitch
    if base is not None:
        expression = f"{timings.paces[base].each}{_ratio(task.what, base.stitch, likeness)}"
        return reckoned(expression, task.minutes_each, FINE)
    if task.what == RIP_BACK:
        share = f"{timings.rip_back}*{total_of([row.minutes for row in before])}"
        return reckoned(share, task.minutes_each, FINE)
    return yours(task.minutes_each, FINE)


def _ratio(stitch: str, base: str, likeness: Likeness) -> str:
    """Return by how much longer a stitch takes than the timed one, as factors to append."""
    mine, timed = (TIME_RATIO[likeness.kind(name)] for name in (stitch, base))
    return "" if mine == timed else f"*{mine:g}/{timed:g}"
