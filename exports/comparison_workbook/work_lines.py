"""The work of each size: how many of each, the minutes, and how far off these may be."""

from __future__ import annotations

from dataclasses import dataclass

from exports.comparison_workbook.minutes_block import MinuteRefs
from exports.comparison_workbook.size_rows import Rows, Sized
from exports.comparison_workbook.works import Works, share_off, tasks_of
from exports.comparison_workbook.yarn_lines import NO_SUCH_SIZE
from exports.sheets.cells import (
    Span,
    beside,
    count_where,
    counted,
    heads,
    reckoned,
    total_where,
    words,
)
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import FINE, HOURS, SHARE, count_shape
from quoting.core.estimate.hours import Task
from quoting.wording import Speech

NO_SUCH_WORK = '"no minutes of one are given for such work"'


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkSpans:
    """The columns of the work of all sizes; `off` are minutes that nothing else is off by."""

    sizes: Span
    parts: Span
    works: Span
    minutes: Span
    off: Span

    def of_part(self, size: str, part: str) -> str:
        """Return the minutes of a part of a size's work, each named by a cell or a text."""
        return total_where(self.minutes, (self.sizes, size), (self.parts, part))

    def of_work(self, size: str, work: str, part: str) -> str:
        """Return the minutes of one work of a size."""
        pairs = ((self.sizes, size), (self.works, work), (self.parts, part))
        return total_where(self.minutes, *pairs)

    def squares(self, size: str) -> str:
        """Return the sum of the squares of what a size's minutes are off by, each by itself."""
        return f"SUMPRODUCT(--EXACT({self.sizes},{size}),{self.off},{self.off})"


def work_lines(
    grid: Grid, rows: Rows, works: Works, names: Span, one: MinuteRefs, speech: Speech
) -> WorkSpans:
    """Write what every size has to do, but for ripping back; return the columns."""
    tasks = [(sized, task) for sized in rows.all for task in tasks_of(sized)]
    grid.block("What there is to do for each size, all blankets of the order together")
    listed = Lines(
        grid,
        len(tasks),
        [
            *heads("size", "part", "work", "how many", "minutes of one", figures_from=3),
            *heads("minutes", "± share", "± minutes", figures_from=0),
        ],
    )
    for sized, task in tasks:
        part, called = works.part_called(task.part, speech), works.called(task, speech)
        _write(grid, sized, task, (part, called), names, one)
    listed.close()
    return WorkSpans(
        sizes=listed.column("A"),
        parts=listed.column("B"),
        works=listed.column("C"),
        minutes=listed.column("F"),
        off=listed.column("H"),
    )


def _write(
    grid: Grid, sized: Sized, task: Task, told: tuple[str, str], names: Span, one: MinuteRefs
) -> None:
    row = grid.next_row
    size, part, work, many, each, minutes, off = (beside(letter, row) for letter in "ABCDEFG")
    share = None if task.timed_stitch else share_off(task)
    grid.line(
        words(sized.name),
        *map(words, told),
        counted(task.count, count_shape(task.count)),
        reckoned(one.of(part, work), task.minutes_each, FINE),
        reckoned(f"{many}*{each}", task.minutes, HOURS),
        None if share is None else counted(share, SHARE),
        None if share is None else reckoned(f"{minutes}*{off}", task.minutes * share, HOURS),
        faults=[
            Fault(f"{count_where((names, size))}<>1", NO_SUCH_SIZE),
            Fault(f"{one.known(part, work)}=0", NO_SUCH_WORK),
        ],
    )
