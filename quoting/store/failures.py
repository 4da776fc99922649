"""What a database says when it fails, as a code that can be told; the unknown stays as it is."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError, OperationalError

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse

_PRIMARY = 0xFF
"""SQLite puts the particular reason in higher bits than the sort of failure."""

_OF_A_FILE = {
    sqlite3.SQLITE_BUSY: MistakeCode.BOOK_LOCKED,
    sqlite3.SQLITE_LOCKED: MistakeCode.BOOK_LOCKED,
    sqlite3.SQLITE_PERM: MistakeCode.BOOK_READ_ONLY,
    sqlite3.SQLITE_READONLY: MistakeCode.BOOK_READ_ONLY,
    sqlite3.SQLITE_IOERR: MistakeCode.DISK_FAILS,
    sqlite3.SQLITE_CORRUPT: MistakeCode.BOOK_DAMAGED,
    sqlite3.SQLITE_FULL: MistakeCode.DISK_FULL,
    sqlite3.SQLITE_CANTOPEN: MistakeCode.FILE_UNREADABLE,
    sqlite3.SQLITE_NOTADB: MistakeCode.NOT_A_BOOK,
}

_OF_A_SERVER = {
    "25006": MistakeCode.BOOK_READ_ONLY,
    "40001": MistakeCode.BOOK_LOCKED,
    "40P01": MistakeCode.BOOK_LOCKED,
    "42501": MistakeCode.BOOK_READ_ONLY,
    "53100": MistakeCode.DISK_FULL,
    "55P03": MistakeCode.BOOK_LOCKED,
    "58030": MistakeCode.DISK_FAILS,
}
"""By the codes of appendix A of the PostgreSQL manual."""

_NO_CONNECTION = {"3D000", "53300", "57P01", "57P02", "57P03"}
_NO_CONNECTION_CLASSES = {"08", "28"}


@contextmanager
def failures_told() -> Iterator[None]:
    """Turn a failure of the database into a refusal, where it is one that a maker can mend.

    Errors: `book-locked`, `book-read-only`, `book-damaged`, `book-unreachable`, `not-a-book`,
    `disk-full`, `disk-fails`, `file-unreadable`.
    """
    try:
        yield
    except (DBAPIError, sqlite3.Error) as error:
        code = _of_either(error) if isinstance(error, DBAPIError) else _of_file(error)
        if code is None:
            raise
        raise refuse("", code) from error


def _of_file(error: sqlite3.Error) -> MistakeCode | None:
    reason = getattr(error, "sqlite_errorcode", None)
    return None if reason is None else _OF_A_FILE.get(reason & _PRIMARY)


def _of_either(error: DBAPIError) -> MistakeCode | None:
    if isinstance(error.orig, sqlite3.Error):
        return _of_file(error.orig)
    state: str | None = getattr(error.orig, "sqlstate", None)
    if state is None:  # the server was never asked, or answers no more
        return MistakeCode.BOOK_UNREACHABLE if isinstance(error, OperationalError) else None
    if state in _NO_CONNECTION or state[:2] in _NO_CONNECTION_CLASSES:
        return MistakeCode.BOOK_UNREACHABLE
    return _OF_A_SERVER.get(state)
