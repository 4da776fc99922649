"""What happened at the door, a line each, in a file beside the book; no word of it is private.

A line has the moment, what happened and the address that it came from, as the connection says
it: no passphrase, no name, nothing that was typed, and no page that was asked for.
"""

from __future__ import annotations

import io
import logging
import os
import time
from collections.abc import Iterator
from contextlib import contextmanager
from enum import StrEnum
from logging.handlers import RotatingFileHandler
from pathlib import Path

MOST_BYTES = 250_000
"""Of one file; a few thousand lines."""

OLDER_FILES = 3
"""Kept beside it; of what is older nothing is."""


class SecurityEvent(StrEnum):
    """What happens at the door, in the words of its line."""

    PASSPHRASE_SET = "passphrase set, every sign-in ended"
    PASSPHRASE_REMOVED = "passphrase taken away, every sign-in ended"
    SIGNED_IN = "signed in"
    WRONG_PASSPHRASE = "wrong passphrase"
    TRIED_TOO_SOON = "tried again too soon after a wrong passphrase"
    SIGNED_OUT = "signed out"
    FOREIGN_NAME = "turned away: asked under another name"
    FOREIGN_PAGE = "turned away: sent by a page of another site"
    NO_PASSPHRASE = "turned away: served to others without a passphrase"
    BUYER_FORGOTTEN = "a buyer was forgotten"


_log = logging.getLogger("quoting.security")
_log.setLevel(logging.INFO)


class _PrivateFile(RotatingFileHandler):
    """A log file that its owner alone may read, each new one of it too."""

    def _open(self) -> io.TextIOWrapper:
        return open(self.baseFilename, "a", encoding="utf-8", opener=_open_private)


def _open_private(path: str, flags: int) -> int:
    return os.open(path, flags, mode=0o600)


def tell_event(event: SecurityEvent, whence: str | None = None) -> None:
    """Write a line; `whence` is the address of the other end of the connection."""
    _log.info("%s%s", event.value, f", from {whence}" if whence else "")


def security_log_file(book: Path) -> Path:
    """Return the log that stands beside a book's file."""
    return book.with_name(f"{book.stem} security.log")


@contextmanager
def security_logged(book: Path | None) -> Iterator[None]:
    """Write events to the log beside a book meanwhile; a book on a server has none beside it."""
    if book is None:
        yield
        return
    file = _PrivateFile(
        security_log_file(book), maxBytes=MOST_BYTES, backupCount=OLDER_FILES, delay=True
    )
    line = logging.Formatter("%(asctime)s %(message)s", datefmt="%Y-%m-%dT%H:%M:%SZ")
    line.converter = time.gmtime
    file.setFormatter(line)
    _log.addHandler(file)
    try:
        yield
    finally:
        _log.removeHandler(file)
        file.close()
