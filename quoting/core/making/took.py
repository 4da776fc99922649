"""What the work of an order that is finished really took: minutes by kind of work, grams."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.work_counted import count_work
from quoting.core.making.chores_by_pass import chores_by_pass
from quoting.core.making.log_lines import Doing, LogEntry, Session, YarnUsed
from quoting.core.making.made_rows import MadeRows, made_rows
from quoting.core.making.planned_yarn import planned_yarn
from quoting.core.making.progress import of_colour
from quoting.core.making.told import told
from quoting.core.making.yarn_left import yarn_use
from quoting.core.plan.passes import Pass
from quoting.core.quote.quote import Quote


def minutes_taken(quote: Quote, entries: tuple[LogEntry, ...], doing: Doing) -> float | None:
    """Return the minutes that one kind of work took; None where no session told any.

    At the hook, where every session tells its rows, rows that none of them told are reckoned with
    at the pace of the others.
    """
    sessions = [session for session in told(entries, Session) if session.doing is doing]
    if not sessions:
        return None
    minutes = math.fsum(session.minutes for session in sessions)
    if doing is Doing.AT_THE_HOOK and all(session.rows for session in sessions):
        return minutes * _all_over_told(quote, sessions)
    return minutes


def rows_projected(quote: Quote, entries: tuple[LogEntry, ...]) -> tuple[int, ...]:
    """Return the rows that no session told, and that are reckoned at the pace of the others."""
    sessions = [session for session in told(entries, Session) if session.doing is Doing.AT_THE_HOOK]
    if not all(session.rows for session in sessions):
        return ()
    times = _times_told(sessions)
    rows = range(1, made_rows(quote).all + 1)
    missing = tuple(row for row in rows if not times[row])
    return missing if len(missing) < len(rows) else ()


def grams_taken(
    quote: Quote, entries: tuple[LogEntry, ...], colour: ColourEstimate
) -> float | None:
    """Return the yarn that a colour took; None where none was told.

    Rows after the last that it was told of are reckoned with as what was told goes, and extras as
    they were given.
    """
    lines = of_colour(quote, entries, YarnUsed, colour.colour)
    if not lines:
        return None
    planned = planned_yarn(colour, made_rows(quote))
    use, upto = yarn_use(colour, planned, lines)
    to_come_m = planned.left_m(upto)
    rest_m = use.really_m(to_come_m) + planned.extras_m if to_come_m else 0.0
    return (use.used_m + rest_m) / colour.metres_per_gram


def _all_over_told(quote: Quote, sessions: Sequence[Session]) -> float:
    """Return how much longer than the told minutes all rows take: redone rows count again."""
    rows = made_rows(quote)
    times = _times_told(sessions)
    minutes = dict(enumerate(_row_minutes(quote, rows) * rows.blankets, 1))
    told_min = math.fsum(minutes[row] * count for row, count in times.items() if row in minutes)
    missing_min = math.fsum(expected for row, expected in minutes.items() if not times[row])
    return 1 + missing_min / told_min if told_min else 1.0


def _times_told(sessions: Sequence[Session]) -> Counter[int]:
    """Return how often each row was told."""
    times = Counter[int]()
    for session in sessions:
        times.update(range(session.first_row or 1, (session.last_row or 0) + 1))
    return times


def _row_minutes(quote: Quote, rows: MadeRows) -> list[float]:
    """Return the minutes that each row of a blanket was expected to take, joins of motifs too."""
    each = {(task.yarn, task.what): task.minutes_each for task in quote.estimate.hours.tasks}
    joining = chores_by_pass(quote.plan)
    by_name = {task.what: task.minutes_each for task in quote.estimate.hours.tasks}
    in_pass = [
        _pass_minutes(quote, worked, each)
        + math.fsum(count * by_name.get(name, 0.0) for name, count in chores.items())
        for worked, chores in zip(rows.passes, joining, strict=True)
    ]
    of_one = (rows.worked_with(row) for row in range(1, rows.of_one + 1))
    return [math.fsum(in_pass[index] for index in indexes) for indexes in of_one]


def _pass_minutes(
    quote: Quote, worked: Pass, each: Mapping[tuple[str | None, str], float]
) -> float:
    """Return the minutes that a pass was expected to take, by those of each thing made."""
    counted = count_work([(worked, 1)], quote.plan, quote.order, quote.workshop)
    stitches = (n * each.get(work, 0.0) for work, n in counted.stitches.items())
    motifs = (n * each.get((made.yarn, made.motif), 0.0) for made, n in counted.motifs.items())
    return math.fsum((*stitches, *motifs))
