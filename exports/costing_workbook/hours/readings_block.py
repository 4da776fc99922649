"""What the maker measured several times, other than stitches: how often, on average, how alike."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from exports.costing_workbook.hours.hour_assumptions_block import HourAssumptions
from exports.costing_workbook.hours.pace_formulas import PaceCells, student_t
from exports.sheets.cells import Ref, counted, heads, reckoned, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, FINE
from quoting.core.estimate.hours import Task
from quoting.core.estimate.pace import CONFIDENCE, Pace, pace_of_readings
from quoting.core.ground.student_t import two_sided_t
from quoting.core.workshop.workshop import Workshop
from quoting.wording import Speech, task_words


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingRefs:
    """The cells of one task's readings: how many, their mean, their scatter, Student's t."""

    count: Ref
    mean: Ref
    scatter: Ref
    t: Ref

    def pace(self, each: str) -> PaceCells:
        """Return the pace of these readings: of each one thing was timed."""
        return PaceCells(
            each=each, counted=self.count, sessions=self.count, scatter=self.scatter, t=self.t
        )


def readings_block(
    grid: Grid, tasks: Sequence[Task], workshop: Workshop, taken: HourAssumptions, speech: Speech
) -> Mapping[str, ReadingRefs]:
    """Write the tasks that were measured several times, if any; return their cells by the task."""
    several = [task for task in tasks if task.readings > 1]
    if not several:
        return {}
    grid.block("What you measured several times")
    grid.line(
        *heads("", "", "readings", "", "mean of them, minutes", "scatter of one", "Student's t")
    )
    paces = {task.what: pace_of_readings(getattr(workshop.minutes, task.what)) for task in several}
    return {
        what: _line(grid, task_words(what, speech), pace, taken) for what, pace in paces.items()
    }


def _line(grid: Grid, called: str, pace: Pace, taken: HourAssumptions) -> ReadingRefs:
    t = two_sided_t(CONFIDENCE, pace.sessions - 1)
    at = f"C{grid.next_row}"
    _, count, mean, scatter, student = grid.line(
        words(called),
        None,
        counted(pace.sessions, COUNT),
        None,
        counted(pace.minutes_each, FINE),
        counted(pace.deviation or 0, FINE),
        reckoned(student_t(at, taken), t, FINE),
    )
    return ReadingRefs(count=count, mean=mean, scatter=scatter, t=student)
