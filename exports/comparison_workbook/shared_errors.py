"""What is off together: all that rests on one timing, and all that one guess concerns."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from exports.comparison_workbook.size_rows import Rows, Sized
from exports.comparison_workbook.work_lines import WorkSpans
from exports.comparison_workbook.works import Works, share_off
from exports.sheets.cells import Span, beside, counted, heads, reckoned, total_where, words
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import HOURS, SHARE
from quoting.core.estimate.chores import Part
from quoting.core.estimate.hours import Task
from quoting.wording import Speech, guess_words, part_words, timed_words


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedSpans:
    """The columns of the list: sizes, minutes off, and those of all that is off alike."""

    sizes: Span
    off: Span
    together: Span

    def squares(self, size: str) -> str:
        """Return the sum of the squares of what a size is off by, each of them added up before.

        A sum's square is each of its parts times the sum.
        """
        return f"SUMPRODUCT(--EXACT({self.sizes},{size}),{self.off},{self.together})"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Error:
    """That a stitch's minutes in one size are off by a share, with all that rests on the same."""

    sized: Sized
    task: Task
    rests_on: str
    share: float

    @property
    def off_min(self) -> float:
        """The minutes that it may be off by."""
        return self.task.minutes * self.share


def shared_errors(
    grid: Grid, rows: Rows, works: Works, work: WorkSpans, speech: Speech
) -> SharedSpans:
    """Write how far off the stitching of each size may be; return the columns."""
    errors = [error for sized in rows.all for error in _errors_of(sized, speech)]
    grid.block("How far off the stitching may be: what rests on the same is off together")
    listed = Lines(
        grid,
        len(errors),
        [
            *heads("size", "rests on", "work", "minutes", "± share", figures_from=3),
            *heads("± minutes", "± all of it", figures_from=0),
        ],
    )
    spans = SharedSpans(
        sizes=listed.column("A"), off=listed.column("F"), together=listed.column("G")
    )
    together: dict[tuple[str, str], float] = {}
    for error in errors:
        key = error.sized.name, error.rests_on
        together[key] = together.get(key, 0.0) + error.off_min
    for error in errors:
        _write(
            grid,
            error,
            works.called(error.task, speech),
            together[error.sized.name, error.rests_on],
            work,
            listed,
            speech,
        )
    listed.close()
    return spans


def _errors_of(sized: Sized, speech: Speech) -> Iterator[_Error]:
    for task in sized.quote.estimate.hours.tasks:
        if task.timed_stitch is None:
            continue
        timed = f"the timing of {timed_words(task.timed_stitch, speech)}"
        yield _Error(sized=sized, task=task, rests_on=timed, share=share_off(task))
        for guess in task.guesses:
            guessed = f"guessed: {guess_words(guess, speech)}"
            yield _Error(sized=sized, task=task, rests_on=guessed, share=guess.limits)


def _write(
    grid: Grid,
    error: _Error,
    called: str,
    together: float,
    work: WorkSpans,
    listed: Lines,
    speech: Speech,
) -> None:
    row = grid.next_row
    size, rests_on, done, minutes, share = (beside(letter, row) for letter in "ABCDE")
    pairs = ((listed.column("A"), size), (listed.column("B"), rests_on))
    stitching = f'"{part_words(Part.STITCHING, speech)}"'
    grid.line(
        words(error.sized.name),
        words(error.rests_on),
        words(called),
        reckoned(work.of_work(size, done, stitching), error.task.minutes, HOURS),
        counted(error.share, SHARE),
        reckoned(f"{minutes}*{share}", error.off_min, HOURS),
        reckoned(total_where(listed.column("F"), *pairs), together, HOURS),
    )
