"""A book's file written anew, so that nothing is left in it of what was written over."""

from __future__ import annotations

from sqlalchemy import text

from quoting.core.ground.errors import Refused
from quoting.store.book import Book
from quoting.store.failures import failures_told
from quoting.store.tables import LOG, ORDER_TEXTS, ORDERS, QUOTES, SET_ASIDE

_TABLES = ", ".join(table.name for table in (ORDERS, ORDER_TEXTS, SET_ASIDE, QUOTES, LOG))
_REWRITE_TABLES = text(f"VACUUM FULL {_TABLES}")


def sweep(book: Book) -> bool:
    """Write what there is anew, and return whether that could be done.

    Databases leave what was written over where it was until the place is used again. Nothing that
    is in the book is changed by it; somebody else at work in it may keep it from being done.
    """
    try:
        with failures_told():
            return _sweep_server(book) if book.path is None else _sweep_file(book)
    except Refused:
        return False


def _sweep_file(book: Book) -> bool:
    connection = book.engine.raw_connection()
    try:
        cursor = connection.cursor()
        cursor.execute("VACUUM")
        cursor.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        (busy, *_) = cursor.fetchall()[0]
        cursor.close()
    finally:
        connection.close()
    return not busy


def _sweep_server(book: Book) -> bool:
    engine = book.engine.execution_options(isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(_REWRITE_TABLES)
    return True
