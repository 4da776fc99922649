"""A backup put in the place of a book, whole or not at all."""

from __future__ import annotations

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import ExitStack, closing, contextmanager
from datetime import datetime
from pathlib import Path

from sqlalchemy import delete, inspect

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.files.toml_text import check_file
from quoting.files.whole_file import whole_file
from quoting.store.copies import copy_whole, keep_before
from quoting.store.engines import file_engine, is_server
from quoting.store.failures import failures_told
from quoting.store.schema_version import version_of
from quoting.store.tables import SIGN_INS

_BESIDE = ("-wal", "-shm", "-journal")
"""What SQLite keeps beside a file while it works in it."""


def restore(address: str, backup: Path, *, now: datetime) -> Path | None:
    """Put a backup in the place of the book at an address; return where the old book is kept.

    Everything is looked at first: of a backup that was cut short, that is newer than the program
    or that is none, nothing is taken. A book that is damaged is replaced, too. Errors:
    `book-on-server`, `book-in-use`, `backup-is-book`, `not-a-book`, `book-newer`, `book-damaged`,
    others of `check_file` and `failures_told`; OSError.
    """
    if is_server(address):
        raise refuse("", MistakeCode.BOOK_ON_SERVER)
    path = Path(address).expanduser().absolute()
    check_file(backup)
    if path.exists() and path.samefile(backup):
        raise refuse("", MistakeCode.BACKUP_IS_BOOK, file=str(backup))
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    with whole_file(path, mode=0o600) as beside:
        copy_whole(backup, beside)
        _look_through(beside)
        if not path.exists():
            return None
        with _nobody_else_in(path):
            kept = _keep(path, now)
        for name in _names_beside(path):
            name.unlink(missing_ok=True)
    return kept


def _look_through(path: Path) -> None:
    """Refuse a file that is no book, or one of a newer program; end the sign-ins that are in it.

    A browser that was shown out since the backup was made stays so. Errors: as `restore`.
    """
    engine = file_engine(path, wait_s=0)
    try:
        with failures_told(), engine.begin() as connection:
            if version_of(connection) is None:
                raise refuse("", MistakeCode.NOT_A_BOOK)
            if inspect(connection).has_table(SIGN_INS.name):  # before the second version none was
                connection.execute(delete(SIGN_INS))
    finally:
        engine.dispose()


@contextmanager
def _nobody_else_in(path: Path) -> Iterator[None]:
    """Have the file alone, and its log written into it. Errors: `book-in-use`.

    SQLite stops keeping a log beside a file only when nobody else has the file open. A file that
    it cannot read is nobody's.
    """
    with ExitStack() as held:
        try:
            with failures_told():
                book = held.enter_context(closing(sqlite3.connect(path, timeout=0)))
                book.execute("PRAGMA journal_mode = DELETE")
                book.execute("BEGIN IMMEDIATE")
        except Refused as refused:
            code = refused.mistakes[0].code
            if code == MistakeCode.BOOK_LOCKED:
                raise refuse("", MistakeCode.BOOK_IN_USE) from refused
            if code not in {MistakeCode.BOOK_DAMAGED, MistakeCode.NOT_A_BOOK}:
                raise
        yield


def _keep(path: Path, now: datetime) -> Path:
    """Copy the old book to a file beside it; one that is damaged, byte by byte as it is."""
    try:
        return keep_before(path, "restore", now)
    except Refused:
        kept = path.with_name(f"{path.stem} damaged, {now:%Y-%m-%d %H.%M.%S}{path.suffix}")
        for name in (path, *_names_beside(path)):
            if name.exists():
                shutil.copyfile(name, kept.with_name(name.name.replace(path.name, kept.name, 1)))
        return kept


def _names_beside(path: Path) -> list[Path]:
    return [path.with_name(path.name + ending) for ending in _BESIDE]
