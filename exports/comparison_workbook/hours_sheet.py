"""The sheet of hours: those of each size on top, and the minutes that they come from."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.comparison_workbook.minutes_block import MinuteRefs, minutes_block
from exports.comparison_workbook.shared_errors import SharedSpans, shared_errors
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.comparison_workbook.work_lines import WorkSpans, work_lines
from exports.comparison_workbook.works import Works, works_of
from exports.sheets.cells import (
    Cell,
    Formula,
    Look,
    Ref,
    Span,
    beside,
    heads,
    reckoned,
    rounded,
    words,
)
from exports.sheets.grid import LETTERS, Grid
from exports.sheets.heading import heading
from exports.sheets.legend import legend
from exports.sheets.number_formats import HOURS
from quoting.core.estimate.chores import Part
from quoting.core.ground.money import HOUR_DIGITS, MINUTES_PER_HOUR
from quoting.wording import Speech

TITLE = "Hours"
WIDTHS = (30, 30, 26, 12, 12, 16, 13, 14, 11, 11, 11, 11, 11, 11)
FLAGS = "P"
HEADS_ROWS, AFTER = 3, 1


@dataclass(frozen=True, slots=True, kw_only=True)
class HourRefs:
    """The hours of one size: what is paid, and how few or many all of them may be."""

    making: Ref
    office: Ref
    total: Ref
    low: Ref
    high: Ref


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rests:
    """What the hours of every size are added up from."""

    works: Works
    one: MinuteRefs
    work: WorkSpans
    shared: SharedSpans


def write_hours(grid: Grid, rows: Rows, names: Span, speech: Speech) -> list[HourRefs]:
    """Write the sheet; return the hours of every size, in order.

    `names` are the cells that say which sizes there are. The answer stands on top and what it
    rests on below, so it is written last.
    """
    heading(grid, "The hours of every size")
    legend(grid)
    top, works = grid.next_row, works_of(rows)
    grid.next_row = top + HEADS_ROWS + len(rows.all)
    one = minutes_block(grid, rows, works, speech)
    work = work_lines(grid, rows, works, names, one, speech)
    shared = shared_errors(grid, rows, works, work, speech)
    grid.next_row = top
    return _table(grid, rows, _Rests(works=works, one=one, work=work, shared=shared), speech)


def _table(grid: Grid, rows: Rows, rests: _Rests, speech: Speech) -> list[HourRefs]:
    grid.block("Hours of each size, all blankets of the order together")
    headings = grid.line(
        *heads("size", *(rests.works.part_called(part, speech) for part in Part), "all making"),
        *heads("all hours", "± minutes", "no fewer than", "no more than", figures_from=0),
    )
    return [_size(grid, sized, headings[1:], rests) for sized in rows.all]


def _size(grid: Grid, sized: Sized, headings: list[Ref], rests: _Rests) -> HourRefs:
    row, hours = grid.next_row, sized.quote.estimate.hours
    made, below = len(Part) - 1, LETTERS[len(Part) :]
    size, first, last = (beside(each, row) for each in ("A", "B", LETTERS[made]))
    office, making, total, off = (beside(each, row) for each in below[:4])
    minutes = f"{total}*{MINUTES_PER_HOUR}"
    cells = [
        reckoned(_part(part, size, str(heading), rests), hours.of(part), HOURS)
        for part, heading in zip(Part, headings, strict=False)
    ]
    span = hours.span
    refs = grid.line(
        words(sized.name),
        *cells,
        reckoned(f"SUM({first}:{last})", hours.making, HOURS),
        _strong(f"{making}+{office}", hours.total),
        reckoned(_off(size, headings[0], rests), span.half_width, HOURS),
        _strong(_hours_of(f"MAX(0,{minutes}-{off})"), hours.low),
        _strong(_hours_of(f"{minutes}+{off}"), hours.high),
    )
    found = refs[len(Part) :]
    return HourRefs(making=found[1], office=found[0], total=found[2], low=found[4], high=found[5])


def _part(part: Part, size: str, heading: str, rests: _Rests) -> str:
    """Return the hours of a part of a size's work; stitching with what of it is ripped back."""
    minutes = rests.work.of_part(size, heading)
    if part is Part.STITCHING:
        minutes = f"{minutes}*(1+{rests.one.rip_back})"
    return _hours_of(minutes)


def _off(size: str, stitching: Ref, rests: _Rests) -> str:
    """Return what a size is off by, widened as the workshop has it."""
    return f"SQRT({_squares(size, stitching, rests)})*N({rests.one.widened})"


def _squares(size: str, stitching: Ref, rests: _Rests) -> str:
    """Return the squares of all that a size is off by, of which each is off by itself."""
    ripped = f"{rests.work.of_part(size, str(stitching))}*{rests.one.rip_back}"
    own = f"({ripped}*{rests.one.rip_back_off})^2"
    return f"{rests.work.squares(size)}+{rests.shared.squares(size)}+{own}"


def _hours_of(minutes: str) -> str:
    return rounded(f"({minutes})/{MINUTES_PER_HOUR}", HOUR_DIGITS)


def _strong(expression: str, hours: Decimal) -> Cell:
    return Cell(Formula(expression, hours), Look.STRONG, HOURS)
