"""The minutes of one of each work, once for all sizes: her pace, and what is not stitching."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import dataclass

from exports.comparison_workbook.pace_list import PaceList, pace_list
from exports.comparison_workbook.size_rows import Rows
from exports.comparison_workbook.works import RIP_BACK, TURN, Works
from exports.sheets.cells import (
    Ref,
    Span,
    beside,
    count_where,
    counted,
    heads,
    reckoned,
    total_where,
    words,
    yours,
)
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import FINE, SHARE
from exports.sheets.rules import FACTOR, MEASURE
from exports.sheets.rules import SHARE as A_SHARE
from quoting.core.estimate.hours import Task
from quoting.core.estimate.pace import ONE_TIMING_LIMITS
from quoting.core.estimate.pace_guesses import Likeness
from quoting.wording import AS_USUAL, Speech, sureness_words, task_words, timed_words

NOT_TIMED = '"no such stitch is among your paces"'


@dataclass(frozen=True, slots=True, kw_only=True)
class MinuteRefs:
    """What every size's work is multiplied with.

    `parts`, `works` and `minutes` are columns of one list; `rip_back` is a share of the stitching,
    `rip_back_off` is how far off that
    is, and `widened` the workshop's own factor of the range of all hours.
    """

    parts: Span
    works: Span
    minutes: Span
    rip_back: Ref
    rip_back_off: Ref
    widened: Ref

    def of(self, part: str, work: str) -> str:
        """Return the minutes of one of the work that two cells name."""
        return total_where(self.minutes, (self.parts, part), (self.works, work))

    def known(self, part: str, work: str) -> str:
        """Return how many lines of the list have the words of two cells."""
        return count_where((self.parts, part), (self.works, work))


def minutes_block(grid: Grid, rows: Rows, works: Works, speech: Speech) -> MinuteRefs:
    """Write the minutes of one of all that any size has to do; return their cells."""
    workshop = rows.first.workshop
    paces = pace_list(grid, workshop, works, speech)
    grid.block("The minutes of one, for all sizes")
    lost = workshop.minutes.rip_back or 0.0
    _, rip_back, _, off = grid.line(
        words(f"{task_words(RIP_BACK, speech)}, of the stitching"),
        *[None] * 3,
        yours(lost, SHARE, A_SHARE),
        words("its own range, ±"),
        counted(ONE_TIMING_LIMITS, SHARE),
    )
    grid.name("rip_back", rip_back)
    wider = yours(workshop.ranges.hours, FINE, FACTOR)
    label = words("The range of all hours"), words("times as wide as measured")
    *_, widened = grid.line(*label, None, None, wider)
    grid.name("hours_widened", widened)
    listed = Lines(
        grid,
        len(works.tasks),
        [
            *heads("part", "work", "timed by", "times as long", "minutes of one", figures_from=3),
            *heads("how sure"),
        ],
    )
    likeness = Likeness(workshop)
    as_usual = {what for sized in rows.all for what in sized.quote.estimate.hours.as_usual}
    for task in works.tasks:
        called = works.part_called(task.part, speech), works.called(task, speech)
        _work(grid, task, called, likeness, paces, as_usual, speech)
    listed.close()
    return MinuteRefs(
        parts=listed.column("A"),
        works=listed.column("B"),
        minutes=listed.column("E"),
        rip_back=rip_back,
        rip_back_off=off,
        widened=widened,
    )


def _work(
    grid: Grid,
    task: Task,
    called: tuple[str, str],
    likeness: Likeness,
    paces: PaceList,
    as_usual: Container[str],
    speech: Speech,
) -> None:
    """Write one work: a stitch by the pace that it rests on, all else as an input."""
    row, base = grid.next_row, task.timed_stitch
    faults: list[Fault] = []
    timed_by, ratio, minutes = None, None, yours(task.minutes_each, FINE, MEASURE)
    if base is not None:
        timed_by = words(timed_words(base, speech))
        ratio = counted(_times(task.what, base.stitch, likeness), FINE)
        each = f"{paces.of(beside('C', row))}*{beside('D', row)}"
        minutes = reckoned(each, task.minutes_each, FINE)
        faults = [Fault(f"{paces.known(beside('C', row))}<>1", NOT_TIMED)]
    elif task.what == TURN:
        minutes = reckoned(str(paces.turn), task.minutes_each, FINE)
    grid.line(
        *map(words, called),
        timed_by,
        ratio,
        minutes,
        words(_sure(task, as_usual)),
        faults=faults,
    )


def _times(what: str, timed: str, likeness: Likeness) -> float:
    """Return how many times as long a stitch, or a motif, takes as what was timed."""
    return 1.0 if what == timed else likeness.ratio(what, timed)


def _sure(task: Task, as_usual: Container[str]) -> str:
    """Return what is said of the minutes of a work."""
    if task.what in as_usual:
        return AS_USUAL
    if task.what == "extras":
        return "of all extras together"
    return sureness_words(task.sureness) if task.minutes else "nothing is counted for it"
