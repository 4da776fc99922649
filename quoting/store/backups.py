"""Backups of an open book: one when it is asked for, and one each day."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.store.book import Book
from quoting.store.copies import copy_whole

DAYS_KEPT = 14

_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")


def back_up(book: Book, target: Path) -> None:
    """Copy an open book to another file; whoever works in it need not stop.

    Errors: `book-on-server`, `backup-is-book`, and as `copy_whole`.
    """
    path = file_of(book)
    if target.resolve() == path.resolve():
        raise refuse("", MistakeCode.BACKUP_IS_BOOK, file=str(target))
    copy_whole(path, target)


def file_of(book: Book) -> Path:
    """Return a book's file. Errors: `book-on-server`, whose own tools make copies of it."""
    if book.path is None:
        raise refuse("", MistakeCode.BOOK_ON_SERVER)
    return book.path


def copy_of_the_day(book: Book, today: date) -> Path | None:
    """Make today's copy of a book, unless it is there; None on a server, which has its own.

    Copies stand in a folder beside the book. The last fourteen days that have one keep it: by
    count, for a clock that was wrong once would take them all by date. Errors: as `copy_whole`.
    """
    if book.path is None:
        return None
    folder = copies_folder(book.path)
    copy = folder / f"{today.isoformat()}{book.path.suffix}"
    if not copy.exists():
        folder.mkdir(mode=0o700, exist_ok=True)
        copy_whole(book.path, copy)
        for older in daily_copies(book.path)[:-DAYS_KEPT]:
            older.unlink(missing_ok=True)
    return copy


def copies_folder(path: Path) -> Path:
    """Return the folder of a book's daily copies."""
    return path.with_name(f"{path.stem} copies")


def daily_copies(path: Path) -> list[Path]:
    """Return the daily copies of a book that there are, the oldest first."""
    found = copies_folder(path).glob(f"*{path.suffix}")
    return sorted(copy for copy in found if _DAY.fullmatch(copy.stem))
