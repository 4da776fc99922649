"""The clock of an order: it runs in the book, whatever pages are open, until it is stopped."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy import Connection, delete, insert, select

from quoting.core.making.log_lines import Doing, LogEntry, Session
from quoting.store.book import Book
from quoting.store.log import log_in, put_line
from quoting.store.tables import CLOCKS

LEAST_MINUTES = 0.01
"""Of what a clock has run: who stops it at once has worked for a moment."""


def start_clock(book: Book, order_id: int, *, now: datetime) -> datetime:
    """Start the clock of an order and return since when it runs; one that runs goes on.

    Errors: `order-missing`.
    """
    with book.writing() as connection:
        log_in(connection, order_id)
        started = _running(connection, order_id)
        if started is None:
            connection.execute(insert(CLOCKS).values(order_id=order_id, started_at=now))
        return started or now


def running_since(book: Book, order_id: int) -> datetime | None:
    """Return since when the clock of an order runs, None where it does not."""
    with book.reading() as connection:
        return _running(connection, order_id)


def stop_clock(book: Book, order_id: int, *, now: datetime) -> LogEntry | None:
    """Stop the clock and write down the session at the hook that it measured; None where none ran.

    Errors: as `Session`, of one that ran for days; then it goes on.
    """
    with book.writing() as connection:
        started = _running(connection, order_id)
        if started is None:
            return None
        session = measured(started, now)
        _drop(connection, order_id)
        return put_line(connection, order_id, session, now=now)


def drop_clock(book: Book, order_id: int) -> None:
    """Put the clock of an order away, and write nothing down."""
    with book.writing() as connection:
        _drop(connection, order_id)


def measured(started: datetime, now: datetime) -> Session:
    """Return the session that began then and ends now, of the day it began here.

    Errors: as `Session`.
    """
    minutes = round((now - started) / timedelta(minutes=1), 2)
    return Session(
        day=started.astimezone().date(),
        doing=Doing.AT_THE_HOOK,
        minutes=max(LEAST_MINUTES, minutes),
        started=started,
    )


def _running(connection: Connection, order_id: int) -> datetime | None:
    return connection.scalar(select(CLOCKS.c.started_at).where(CLOCKS.c.order_id == order_id))


def _drop(connection: Connection, order_id: int) -> None:
    connection.execute(delete(CLOCKS).where(CLOCKS.c.order_id == order_id))
