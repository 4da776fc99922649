"""What a log tells, line by line, in the order in which it happened."""

from __future__ import annotations

from typing import TypeVar

from quoting.core.making.log_lines import (
    EndsWoven,
    LogEntry,
    Payment,
    Remark,
    RowsReached,
    Session,
    YarnTaken,
    YarnUsed,
    standing,
)

Dated = Session | RowsReached | YarnUsed | YarnTaken | EndsWoven | Payment | Remark
"""What happened on a day."""

Line = TypeVar("Line", Session, RowsReached, YarnUsed, YarnTaken, EndsWoven, Payment, Remark)


def happened(entries: tuple[LogEntry, ...]) -> list[Dated]:
    """Return the dated lines that hold, by their days; a correction where the first line stood."""
    first = _first_ids(entries)
    dated = [
        (entry.line.day, first[entry.id], entry.line)
        for entry in standing(entries)
        if isinstance(entry.line, Dated)
    ]
    return [line for _, _, line in sorted(dated, key=lambda found: found[:2])]


def told(entries: tuple[LogEntry, ...], kind: type[Line]) -> list[Line]:
    """Return the lines of one kind that hold, in the order in which they happened."""
    return [line for line in happened(entries) if isinstance(line, kind)]


def _first_ids(entries: tuple[LogEntry, ...]) -> dict[int, int]:
    """Return, by the id of a line, that of the first one in whose place it stands."""
    first: dict[int, int] = {}
    for entry in entries:
        before = entry.corrects
        first[entry.id] = entry.id if before is None else first.get(before, before)
    return first
