"""Writes a file whole or not at all."""

from __future__ import annotations

import contextlib
import errno
import os
import secrets
from pathlib import Path

from quoting.cli.failures import why_not_written


def write_whole(path: Path, data: bytes) -> None:
    """Write a file through another one beside it, which then takes its name.

    Errors: NotDone with the reason; then an older file of that name is as it was.
    """
    try:
        _write(path.resolve(), data)
    except (OSError, ValueError) as error:
        reason = error if isinstance(error, OSError) else OSError(errno.EINVAL, "no such name")
        raise why_not_written(path, reason) from error


def _write(path: Path, data: bytes) -> None:
    if path.is_dir():
        raise IsADirectoryError(errno.EISDIR, "it is a folder")
    beside = path.with_name(f".{secrets.token_hex(8)}.part")
    try:
        with beside.open("xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        beside.replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            beside.unlink(missing_ok=True)
        raise
