"""Whole copies of a book's file, made while it may be in use."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path
from typing import Any

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.files.whole_file import whole_file
from quoting.store.failures import failures_told


def keep_before(path: Path, event: str, now: datetime) -> Path:
    """Copy a book to a file beside it, named for what is about to happen to it, and return that.

    Errors: as `copy_whole`.
    """
    copy = path.with_name(f"{path.stem} before {event}, {now:%Y-%m-%d %H.%M.%S}{path.suffix}")
    copy_whole(path, copy)
    return copy


def copy_whole(path: Path, target: Path) -> None:
    """Copy a book as it is at one moment into a single file, which is then known to be sound.

    Errors: `book-damaged` and others of `failures_told`; OSError as `write_whole` raises it.
    """
    with whole_file(target, mode=0o600) as beside, failures_told():
        source = f"{path.absolute().as_uri()}?mode=ro"
        with (
            closing(sqlite3.connect(source, uri=True)) as book,
            closing(sqlite3.connect(beside)) as copy,
        ):
            book.backup(copy)
            check_length(path, _asked(book, "page_size"))
            copy.execute("PRAGMA journal_mode = DELETE")
            if _asked(copy, "integrity_check(1)") != "ok":
                raise refuse("", MistakeCode.BOOK_DAMAGED)


def check_length(path: Path, page_size: Any) -> None:
    """Refuse a file whose last page is not all there, which SQLite would fill up in silence.

    Errors: `book-damaged`.
    """
    if path.stat().st_size % int(page_size):
        raise refuse("", MistakeCode.BOOK_DAMAGED)


def _asked(connection: sqlite3.Connection, pragma: str) -> Any:
    return connection.execute(f"PRAGMA {pragma}").fetchone()[0]
