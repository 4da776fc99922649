"""The hours by part on the sheet of hours, and the few and the many they may be together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from exports.costing_workbook.hours.hour_ground import HourGround
from exports.costing_workbook.hours.pace_formulas import how_sure, promise
from exports.costing_workbook.hours.stitches_block import StitchRefs
from exports.costing_workbook.hours.tasks_block import EXTRAS, NOT_GIVEN, TaskRefs, tasks_of
from exports.sheets.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    Span,
    heads,
    reckoned,
    rounded,
    summed,
    total_of,
    words,
)
from exports.sheets.checks import Check
from exports.sheets.grid import Fault, Grid
from exports.sheets.number_formats import HOURS
from quoting.core.estimate.chores import Part
from quoting.core.ground.money import HOUR_DIGITS, MINUTES_PER_HOUR
from quoting.wording import task_words

FIRST_LINE = 3
PARTS_ROWS = FIRST_LINE + len(Part) + 4
"""A free row, the title, the headings, the parts, and four sums."""

ROUNDED_OFF = len(Part) * 0.5 / 10**HOUR_DIGITS
"""By how much the parts, each rounded, may be off together, in hours."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HourRefs:
    """The hours that the costing multiplies, and how few or many they may be, and how surely.

    `parts` are the hours of each part of the work; `stitching_minutes` is what stitches and motifs
    take without ripping back, `motif_minutes` those of motifs that are joined; `checks` are what
    should hold.
    """

    making: Ref
    office: Ref
    total: Ref
    low: Ref
    high: Ref
    how_sure: Formula
    parts: Mapping[Part, Ref]
    stitching_minutes: Ref
    motif_minutes: Formula
    checks: tuple[Check, ...]


def parts_span(title: str, row: int) -> Span:
    """Return the names of the parts on a sheet where the block begins in a row."""
    return Span(title, "A", row + FIRST_LINE, row + FIRST_LINE + len(Part) - 1)


def parts_block(
    grid: Grid, ground: HourGround, stitches: StitchRefs, tasks: TaskRefs, half_width: Ref
) -> HourRefs:
    """Write the hours of each part, their sums and their range."""
    hours = ground.hours
    grid.block("Hours by part")
    grid.line(*heads("", "", "hours"), None, *heads("no minutes are given for"))
    parts = {part: _part(grid, part, ground, stitches, tasks) for part in Part}
    making = [ref for part, ref in parts.items() if part is not Part.OFFICE]
    together = summed(total_of(making), hours.making, HOURS)
    made = grid.name("making_hours", grid.line(words("Making, all together"), None, together)[1])
    office = grid.name("office_hours", parts[Part.OFFICE])
    total = _sum(grid, words("All hours"), f"{made}+{office}", hours.total, "all_hours")
    low, high = _range(grid, total, ground, half_width)
    return HourRefs(
        making=made,
        office=office,
        total=total,
        low=low,
        high=high,
        how_sure=how_sure(hours, ground.timings.sessions, ground.taken),
        parts=parts,
        stitching_minutes=stitches.stitching_minutes,
        motif_minutes=stitches.motif_minutes,
        checks=_checks(total, ground.parts, (stitches, tasks)),
    )


def _part(grid: Grid, part: Part, ground: HourGround, stitches: StitchRefs, tasks: TaskRefs) -> Ref:
    """Write the hours of one part: of all tasks that name it, wherever they stand."""
    mine = "+".join(
        f"SUMIF({each.parts},A{grid.next_row},{each.minutes})" for each in (stitches, tasks)
    )
    expression = rounded(f"({mine})/{MINUTES_PER_HOUR}", HOUR_DIGITS)
    cell = reckoned(expression, ground.hours.of(part), HOURS)
    label = words(ground.called[part])
    return grid.line(label, None, cell, None, _not_given(part, ground, tasks))[1]


def _not_given(part: Part, ground: HourGround, tasks: TaskRefs) -> Cell | None:
    """Return the tasks of a part for which no minutes are given, as a list that follows."""
    whats = [
        task.what for task in tasks_of(ground.hours) if task.part is part and task.what != EXTRAS
    ]
    if not whats:
        return None
    called = {what: task_words(what, ground.speech) for what in whats}
    found = "&".join(
        f'IF(COUNTIFS({tasks.called},"{word}",{tasks.sure},"{NOT_GIVEN}")>0,", {word}","")'
        for word in called.values()
    )
    now = ", ".join(word for what, word in called.items() if what in ground.hours.not_given)
    return Cell(Formula(f"MID({found},3,500)", now), Look.NOTE)


def _range(grid: Grid, total: Ref, ground: HourGround, half_width: Ref) -> tuple[Ref, Ref]:
    """Write how few and how many all hours may be."""
    hours, minutes = ground.hours, f"{total}*{MINUTES_PER_HOUR}"
    said = promise("", ", no fewer than", hours, ground.timings.sessions, ground.taken)
    fewest = rounded(f"MAX(0,{minutes}-{half_width})/{MINUTES_PER_HOUR}", HOUR_DIGITS)
    most = rounded(f"({minutes}+{half_width})/{MINUTES_PER_HOUR}", HOUR_DIGITS)
    return (
        _sum(grid, Cell(said), fewest, hours.low, "fewest_hours"),
        _sum(grid, words("and no more than"), most, hours.high, "most_hours"),
    )


def _sum(grid: Grid, label: Cell, expression: str, value: Decimal, name: str) -> Ref:
    cell = Cell(Formula(expression, value), Look.STRONG, HOURS)
    return grid.name(name, grid.line(label, None, cell)[1])


def _checks(total: Ref, names: Span, lists: tuple[StitchRefs, TaskRefs]) -> tuple[Check, ...]:
    """Return that the parts hold all tasks, and that every task names one of them."""
    minutes = "+".join(f"SUM({each.minutes})" for each in lists)
    off = f"{total}-({minutes})/{MINUTES_PER_HOUR}"
    written = "+".join(f"COUNT({each.minutes})" for each in lists)
    known = "+".join(f"SUMPRODUCT(COUNTIF({each.parts},{names}))" for each in lists)
    return (
        Check(
            "Hours by part are the hours of all tasks",
            Fault(
                f"IF(ISNUMBER({off}),ABS({off})>{ROUNDED_OFF:g}+0.000001,TRUE)",
                '"the parts do not add up to the tasks on the sheet Hours"',
            ),
        ),
        Check(
            "Every task is of a part of the work",
            Fault(f"{written}<>{known}", '"a task on the sheet Hours counts in no part"'),
        ),
    )
