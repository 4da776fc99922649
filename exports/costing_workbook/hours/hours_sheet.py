"""The sheet of hours: every task with its count and its minutes, and the parts they add up to."""

from __future__ import annotations

from exports.costing_workbook.hours.hour_assumptions_block import hour_assumptions_block
from exports.costing_workbook.hours.hour_ground import HourGround
from exports.costing_workbook.hours.parts_block import PARTS_ROWS, HourRefs, parts_block, parts_span
from exports.costing_workbook.hours.range_block import range_block, range_rows
from exports.costing_workbook.hours.readings_block import readings_block
from exports.costing_workbook.hours.stitches_block import (
    stitches_block,
    stitches_of,
    stitches_rows,
)
from exports.costing_workbook.hours.tasks_block import tasks_block, tasks_of
from exports.costing_workbook.hours.timings_block import timings_block
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from exports.sheets.legend import legend
from quoting.core.estimate.chores import Part
from quoting.core.estimate.in_motifs import stitches_in_motifs
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, part_words

TITLE = "Hours"
WIDTHS = (40, 28, 12, 13, 12, 12, 13, 14, 22, 12, 60)
FLAGS = "K"

TASKS_ROWS = 4
"""The rows of the tasks' block besides its list's lines: three before it, one after it."""


def write_hours(grid: Grid, quote: Quote, speech: Speech) -> HourRefs:
    """Write the sheet and return the hours by their cells.

    The answer stands on top and what it rests on below, so the blocks are written upwards.
    """
    hours, workshop = quote.estimate.hours, quote.workshop
    heading(grid, TITLE)
    legend(grid)
    parts_at, tasks = grid.next_row, tasks_of(hours)
    stitches_at = parts_at + PARTS_ROWS
    tasks_at = stitches_at + stitches_rows(hours) + len(stitches_of(hours))
    grid.next_row = tasks_at + TASKS_ROWS + len(tasks) + range_rows(hours)
    taken = hour_assumptions_block(grid, hours, workshop, speech)
    grid.break_here()
    ground = HourGround(
        hours=hours,
        workshop=workshop,
        taken=taken,
        timings=timings_block(grid, workshop, hours.bases, taken, speech),
        parts=parts_span(grid.title, parts_at),
        in_motifs=stitches_in_motifs(quote.plan, quote.order, workshop),
        called={part: part_words(part, speech, quote) for part in Part},
        speech=speech,
    )
    several = readings_block(grid, tasks, workshop, taken, speech)
    grid.next_row = stitches_at
    stitches = stitches_block(grid, ground)
    grid.break_here()
    listed = tasks_block(grid, ground, stitches, several)
    half_width = range_block(grid, ground, stitches, listed)
    grid.next_row = parts_at
    return parts_block(grid, ground, stitches, listed, half_width)
