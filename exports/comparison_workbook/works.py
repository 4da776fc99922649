"""All work that any of the sizes takes, each once, also what takes no minutes yet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from exports.comparison_workbook.size_rows import Rows, Sized
from quoting.core.estimate.chores import Part
from quoting.core.estimate.hours import Hours, Task
from quoting.core.estimate.pace import ONE_TIMING_LIMITS
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, part_words, work_words

RIP_BACK, TURN = "rip_back", "turn"
"""What is a share of the stitching and no work that is counted, and what timings have in them."""


@dataclass(frozen=True, slots=True)
class Works:
    """One task of each work, part by part, of all that `quotes` take."""

    tasks: tuple[Task, ...]
    quotes: tuple[Quote, ...]

    def called(self, task: Task, speech: Speech) -> str:
        """Return what a work is called, alike for every size."""
        return work_words(task, Hours(tasks=self.tasks), speech)

    def part_called(self, part: Part, speech: Speech) -> str:
        """Return what a part of the work is called: as each size calls it, if all do alike."""
        own = {part_words(part, speech, quote) for quote in self.quotes}
        return own.pop() if len(own) == 1 else part_words(part, speech)


def works_of(rows: Rows) -> Works:
    """Return the work of all rows."""
    found = {(t.part, t.what, t.yarn): t for sized in rows.all for t in tasks_of(sized)}
    parts = list(Part)
    return Works(
        tasks=tuple(sorted(found.values(), key=lambda task: parts.index(task.part))),
        quotes=tuple(sized.quote for sized in rows.all),
    )


def tasks_of(sized: Sized) -> Iterator[Task]:
    """Yield the tasks of one size, but for ripping back."""
    hours = sized.quote.estimate.hours
    return (task for task in hours.every_task if task.what != RIP_BACK)


def share_off(task: Task) -> float:
    """Return by which share minutes are off with all of the same readings; none, as set ones."""
    return task.shared_min / task.minutes if task.minutes else ONE_TIMING_LIMITS
