"""Logs of orders being made, as makers write them, for tests of what they tell."""

from __future__ import annotations

from datetime import UTC, date, datetime
from decimal import Decimal
from typing import Any

from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogEntry,
    LogLine,
    Payment,
    RowsReached,
    Session,
    YarnTaken,
    YarnUsed,
)

DAY = date(2026, 12, 1)
NOON = datetime(2026, 12, 1, 12, tzinfo=UTC)


def log(*lines: LogLine, corrects: dict[int, int] | None = None) -> tuple[LogEntry, ...]:
    """Return lines as they were written down, numbered from 1; some in the place of others."""
    instead = corrects or {}
    return tuple(
        LogEntry(id=number, at=NOON, line=line, corrects=instead.get(number))
        for number, line in enumerate(lines, 1)
    )


def hook(first: int | None, last: int | None, minutes: float, **changes: Any) -> Session:
    """Return a session at the hook from one row to another."""
    day = changes.get("day", DAY)
    doing = Doing.AT_THE_HOOK
    return Session(day=day, doing=doing, minutes=minutes, first_row=first, last_row=last)


def spent(doing: Doing, minutes: float, day: date = DAY) -> Session:
    """Return minutes of another kind of work."""
    return Session(day=day, doing=doing, minutes=minutes)


def reached(rows: int, day: date = DAY) -> RowsReached:
    """Return that so many rows are done."""
    return RowsReached(day=day, rows=rows)


def used(colour: str, grams: float, rows: int, day: date = DAY) -> YarnUsed:
    """Return that grams of a colour were used, with so many rows done."""
    return YarnUsed(day=day, colour=colour, grams=grams, rows=rows)


def taken(colour: str, grams: float, **changes: Any) -> YarnTaken:
    """Return that yarn was got for the order."""
    return YarnTaken(day=DAY, colour=colour, grams=grams, **changes)


def woven(ends: int, day: date = DAY) -> EndsWoven:
    """Return that ends were woven in."""
    return EndsWoven(day=day, ends=ends)


def paid(amount: str, currency: str = "GBP", day: date = DAY) -> Payment:
    """Return money from the buyer."""
    return Payment(day=day, amount=Decimal(amount), currency=currency)
