"""The sheet of hours: every task with its count and its minutes, and the parts they add up to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from textwrap import wrap

from exports.costing_workbook.range_block import range_block
from exports.costing_workbook.tasks_block import FIRST_TASK, TaskRow, tasks_block
from exports.costing_workbook.timings_block import timings_block
from exports.sheets.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    heads,
    reckoned,
    rounded,
    summed,
    total_of,
    words,
)
from exports.sheets.grid import Grid
from exports.sheets.legend import legend
from exports.sheets.number_formats import HOURS
from quoting.core.estimate.hours import Hours, Part
from quoting.core.ground.money import HOUR_DIGITS, MINUTES_PER_HOUR
from quoting.core.quote.quote import Quote
from quoting.core.workshop.timings import mean
from quoting.wording import Speech, part_words, task_words

TITLE = "Hours"
WIDTHS = (30, 26, 12, 12, 12, 13, 13, 10, 12)
PARTS_ROWS = len(Part) + 7
"""A free row, the title, the headings, the parts, and four sums."""

LINE_CHARACTERS = 100
"""Of the words beside a label, over all columns."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HourRefs:
    """The hours that the costing multiplies, and how few or many they may be."""

    making: Ref
    office: Ref
    total: Ref
    low: Ref
    high: Ref


def write_hours(grid: Grid, quote: Quote, speech: Speech) -> HourRefs:
    """Write the sheet and return the hours by their cells.

    The answer stands on top and what it rests on below, so the blocks are written upwards.
    """
    hours, workshop = quote.estimate.hours, quote.workshop
    grid.line(words("Hours", Look.TITLE))
    legend(grid)
    parts_at = grid.next_row
    missing = _missing(hours, speech)
    tasks_at = parts_at + PARTS_ROWS + len(missing)
    ranges_at = tasks_at + FIRST_TASK + len(hours.tasks)
    grid.next_row = ranges_at + len(hours.bases) + len(hours.guesses) + 4
    turn = next((at for at, task in enumerate(hours.tasks) if task.what == "turn"), None)
    turn_ref = (
        None
        if turn is None
        else Ref(TITLE, "D", tasks_at + FIRST_TASK + turn, mean(workshop.minutes.turn))
    )
    timings = timings_block(grid, workshop, hours.bases, turn_ref, speech)
    grid.next_row = tasks_at
    rows = tasks_block(grid, quote, timings, speech)
    grid.next_row = ranges_at
    grid.break_here()
    half_width = range_block(grid, hours, rows, timings.paces, speech)
    grid.next_row = parts_at
    refs = _parts(grid, hours, rows, half_width)
    for line in missing:
        grid.line(words("no minutes are given for"), words(line))
    return refs


def _missing(hours: Hours, speech: Speech) -> list[str]:
    """Return the work that is in no hours yet, in lines."""
    said = ", ".join(task_words(what, speech) for what in hours.not_given)
    return wrap(said, LINE_CHARACTERS)


def _parts(grid: Grid, hours: Hours, rows: Sequence[TaskRow], half_width: Ref) -> HourRefs:
    grid.block("Hours by part")
    grid.line(*heads("", "", "hours"))
    parts = {part: _part(grid, hours, part, rows) for part in Part}
    making = [ref for part, ref in parts.items() if part is not Part.OFFICE]
    together = summed(total_of(making), hours.making, HOURS)
    made = grid.name("making_hours", grid.line(words("Making, all together"), None, together)[1])
    office = parts[Part.OFFICE]
    grid.name("office_hours", office)
    total = _sum(grid, "All hours", f"{made}+{office}", hours.total, "all_hours")
    minutes = f"{total}*{MINUTES_PER_HOUR}"
    sure = "19 times in 20" if hours.timed_enough else "roughly"
    low = rounded(f"MAX(0,{minutes}-{half_width})/{MINUTES_PER_HOUR}", HOUR_DIGITS)
    high = rounded(f"({minutes}+{half_width})/{MINUTES_PER_HOUR}", HOUR_DIGITS)
    return HourRefs(
        making=made,
        office=office,
        total=total,
        low=_sum(grid, f"{sure}, no fewer than", low, hours.low, "fewest_hours"),
        high=_sum(grid, "and no more than", high, hours.high, "most_hours"),
    )


def _part(grid: Grid, hours: Hours, part: Part, rows: Sequence[TaskRow]) -> Ref:
    mine = [row.minutes for row in rows if row.task.part is part]
    expression = rounded(f"{total_of(mine)}/{MINUTES_PER_HOUR}", HOUR_DIGITS)
    return grid.line(words(part_words(part)), None, reckoned(expression, hours.of(part), HOURS))[1]


def _sum(grid: Grid, label: str, expression: str, value: Decimal, name: str) -> Ref:
    cell = Cell(Formula(expression, value), Look.STRONG, HOURS)
    return grid.name(name, grid.line(words(label), None, cell)[1])
