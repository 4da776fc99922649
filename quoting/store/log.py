"""The log of an order in the book: lines are added, never changed; a correction is one more."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import datetime
from functools import lru_cache
from typing import Any

from sqlalchemy import Connection, Row, insert, select

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.making.log_lines import LogEntry, LogLine, standing
from quoting.schema.log_shapes import log_kind, log_record, read_log_line
from quoting.store.book import Book
from quoting.store.tables import LOG, ORDERS

MOST_KEPT = 30_000
"""Lines that are read once: they never change, and those of many orders are asked for together."""


def add_line(
    book: Book, order_id: int, line: LogLine, *, now: datetime, corrects: int | None = None
) -> LogEntry:
    """Write a line down, in the place of the one that it `corrects`.

    Errors: `order-missing`; `log-line-missing` where there is none to correct, or it was corrected
    before.
    """
    with book.writing() as connection:
        entries = log_in(connection, order_id)
        if corrects is not None:
            correctable(entries, corrects)
        return put_line(connection, order_id, line, now=now, corrects=corrects)


def put_line(
    connection: Connection,
    order_id: int,
    line: LogLine,
    *,
    now: datetime,
    corrects: int | None = None,
) -> LogEntry:
    """Write a line down within a transaction."""
    row = {"order_id": order_id, "at": now, "kind": log_kind(line), "corrects": corrects}
    done = connection.execute(insert(LOG).values(**row, record=json.dumps(log_record(line))))
    assert done.inserted_primary_key is not None  # noqa: S101 - for the types
    return LogEntry(id=done.inserted_primary_key.id, at=now, line=line, corrects=corrects)


def log_of(book: Book, order_id: int) -> tuple[LogEntry, ...]:
    """Return every line of an order's log, corrected ones too, as they were written."""
    with book.reading() as connection:
        return _lines(connection, order_id)


def log_in(connection: Connection, order_id: int) -> tuple[LogEntry, ...]:
    """Return an order's log as a connection sees it. Errors: `order-missing`."""
    if connection.scalar(select(ORDERS.c.id).where(ORDERS.c.id == order_id)) is None:
        raise refuse("", MistakeCode.ORDER_MISSING)
    return _lines(connection, order_id)


def correctable(entries: tuple[LogEntry, ...], entry_id: int) -> LogEntry:
    """Return the line of a log that is to be corrected.

    Errors: `log-line-missing` where there is none, or it was corrected before.
    """
    for entry in standing(entries):
        if entry.id == entry_id:
            return entry
    raise refuse("", MistakeCode.LOG_LINE_MISSING)


def logs_of(book: Book, order_ids: tuple[int, ...]) -> Mapping[int, tuple[LogEntry, ...]]:
    """Return the logs of several orders, by order."""
    logs: dict[int, list[LogEntry]] = {order_id: [] for order_id in order_ids}
    query = select(LOG).where(LOG.c.order_id.in_(order_ids)).order_by(LOG.c.id)
    with book.reading() as connection:
        for row in connection.execute(query):
            logs[row.order_id].append(entry_in(row))
    return {order_id: tuple(entries) for order_id, entries in logs.items()}


def _lines(connection: Connection, order_id: int) -> tuple[LogEntry, ...]:
    query = select(LOG).where(LOG.c.order_id == order_id).order_by(LOG.c.id)
    return tuple(map(entry_in, connection.execute(query)))


def entry_in(row: Row[Any]) -> LogEntry:
    """Return the line of a row."""
    line = _line(row.kind, row.record)
    return LogEntry(id=row.id, at=row.at, line=line, corrects=row.corrects)


@lru_cache(maxsize=MOST_KEPT)
def _line(kind: str, record: str) -> LogLine:
    return read_log_line(kind, json.loads(record))
