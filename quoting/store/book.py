"""The maker's book: opened, brought up to date, read and written."""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import Connection, Engine, text

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.store.copies import check_length, keep_before
from quoting.store.engines import (
    WAIT_S,
    WRITES,
    file_engine,
    is_server,
    keep_log_beside,
    server_engine,
)
from quoting.store.failures import failures_told
from quoting.store.schema_version import bring_up_to_date

if TYPE_CHECKING:
    from sqlalchemy.pool import PoolProxiedConnection

_WRITERS_LOCK = 7_301_942_065_118_403
"""The number of the lock that whoever writes on a server takes: any that no other program uses."""

_TAKE_LOCK = text("SELECT pg_advisory_xact_lock(:lock)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Book:
    """An open book; `path` is its file, None on a server.

    `held` is a connection that stays open with the book, by which a restore sees that it is used.
    """

    engine: Engine
    path: Path | None
    held: PoolProxiedConnection | None = None

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Yield a connection that sees the book as it is at one moment.

        Errors: as `failures_told`.
        """
        options = {} if self.path else {"isolation_level": "REPEATABLE READ"}
        with failures_told(), self._begun(**options) as connection:
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """Yield a connection; what it did is on the disk when the block has ended, or undone.

        One writer at a time, on a server too, so that what was read is still so when it is
        written. Errors: as `failures_told`; then nothing was written.
        """
        with failures_told(), self._begun(**{WRITES: True}) as connection:
            if self.path is None:
                connection.execute(_TAKE_LOCK, {"lock": _WRITERS_LOCK})
            yield connection

    @contextmanager
    def _begun(self, **options: object) -> Iterator[Connection]:
        with self.engine.execution_options(**options).begin() as connection:
            yield connection

    def close(self) -> None:
        """Let go of the book."""
        if self.held is not None:
            self.held.close()
        self.engine.dispose()

    def __enter__(self) -> Book:
        return self

    def __exit__(self, *failure: object) -> None:
        self.close()


def open_book(address: str, *, now: datetime, wait_s: float = WAIT_S) -> Book:
    """Open the book at a path, or at a `postgresql://` address; where there is none, begin one.

    A book of an older version is brought up to date; a file is copied first. A save waits
    `wait_s` for another. Errors: `not-a-book`, `book-newer`, `book-not-made`, `file-is-folder`,
    `file-is-no-file`, and those of `failures_told` and `server_engine`.
    """
    if is_server(address):
        path, engine = None, server_engine(address, wait_s)
    else:
        path = Path(address).expanduser().absolute()
        _look_at(path)
        engine = file_engine(path, wait_s)
    with ExitStack() as undo:
        undo.callback(engine.dispose)
        book = Book(engine=engine, path=path)
        _look_over(book, now)
        if path is not None:
            book = Book(engine=engine, path=path, held=_hold(engine, wait_s))
        undo.pop_all()
    return book


def _look_at(path: Path) -> None:
    """See to it that there is a file that may be written to. Errors: as `open_book`."""
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        if not path.exists():
            path.touch(0o600)
        mode = path.stat().st_mode
    except (OSError, ValueError) as error:
        said = (error.strerror if isinstance(error, OSError) else None) or str(error)
        raise refuse("", MistakeCode.BOOK_NOT_MADE, file=str(path), said=said) from error
    if stat.S_ISDIR(mode):
        raise refuse("", MistakeCode.FILE_IS_FOLDER, file=str(path))
    if not stat.S_ISREG(mode):
        raise refuse("", MistakeCode.FILE_IS_NO_FILE, file=str(path))
    anybody = stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH  # root may write also to what has none
    if not (mode & anybody and os.access(path, os.W_OK)):
        raise refuse("", MistakeCode.BOOK_READ_ONLY, file=str(path))


def _look_over(book: Book, now: datetime) -> None:
    """See that a book is sound, and give it the tables of today.

    The lock is held from the look to the end, so that two that open it do not both set to work.
    """
    path = book.path
    with book.writing() as connection:
        if path is None:
            bring_up_to_date(connection, before=lambda: None)
        else:
            _check_whole(connection, path)
            bring_up_to_date(connection, before=lambda: keep_before(path, "update", now))


def _check_whole(connection: Connection, path: Path) -> None:
    if connection.scalar(text("PRAGMA quick_check(1)")) != "ok":
        raise refuse("", MistakeCode.BOOK_DAMAGED)
    check_length(path, connection.scalar(text("PRAGMA page_size")))


def _hold(engine: Engine, wait_s: float) -> PoolProxiedConnection:
    """Return a connection that keeps its hold on the file as long as it is open.

    That is so where writes go to a log beside the file, which the file says of itself from then
    on. Nobody has to wait for a reader then, either.
    """
    with failures_told(), ExitStack() as undo:
        held = engine.raw_connection()
        undo.callback(held.close)
        cursor = held.cursor()
        keep_log_beside(cursor, wait_s)
        cursor.execute("SELECT count(*) FROM sqlite_master")
        cursor.fetchall()
        cursor.close()
        undo.pop_all()
        return held
