"""A file that is written whole, or not at all."""

from __future__ import annotations

import contextlib
import errno
import os
import secrets
import stat
from pathlib import Path


def write_whole(path: Path, data: bytes) -> None:
    """Write a file through another one beside it, which then takes its name.

    Errors: OSError with the reason, EINVAL for what is no name of a file; then an older file of
    that name is as it was, and nothing is left beside it.
    """
    try:
        _write(path, data)
    except ValueError as error:
        raise OSError(errno.EINVAL, "no such name") from error


def _write(path: Path, data: bytes) -> None:
    mode = _mode_of_older(path)
    path = path.resolve()
    beside = path.with_name(f".{secrets.token_hex(8)}.part")
    try:
        with beside.open("xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            beside.chmod(mode)
        beside.replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            beside.unlink(missing_ok=True)
        raise


def _mode_of_older(path: Path) -> int | None:
    """Return the mode of a file that may be written over, or None where there is none.

    Errors: OSError where something else bears the name, or the file is not to be written to.
    """
    try:
        mode = path.stat().st_mode
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(mode):
        raise IsADirectoryError(errno.EISDIR, "it is a folder")
    if not stat.S_ISREG(mode):
        raise OSError(errno.EINVAL, "it is no ordinary file")
    anybody = stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH  # root has access also to what has none
    if not (mode & anybody and os.access(path, os.W_OK)):
        raise PermissionError(errno.EACCES, "it may only be read")
    return stat.S_IMODE(mode)
