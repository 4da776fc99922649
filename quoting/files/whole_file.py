"""A file that is written whole, or not at all."""

from __future__ import annotations

import contextlib
import errno
import os
import secrets
import stat
from collections.abc import Iterator
from pathlib import Path


def write_whole(path: Path, data: bytes) -> None:
    """Write a file's bytes. Errors: as `whole_file`."""
    with whole_file(path) as beside, beside.open("wb") as file:
        file.write(data)


@contextlib.contextmanager
def whole_file(path: Path, mode: int = 0o666) -> Iterator[Path]:
    """Yield an empty file beside a path, which takes its name once the block has ended well.

    `mode` is that of a new file, less what the user masks; one that was there keeps its own.
    Errors: OSError with the reason, EINVAL for what is no name of a file; then an older file of
    that name is as it was, and nothing is left beside it.
    """
    try:
        older = _mode_of_older(path)
        path = path.resolve()
        beside = path.with_name(f".{secrets.token_hex(8)}.part")
    except ValueError as error:
        raise OSError(errno.EINVAL, "no such name") from error
    try:
        beside.touch(mode, exist_ok=False)
        yield beside
        _settle(beside)
        if older is not None:
            beside.chmod(older)
        beside.replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            beside.unlink(missing_ok=True)
        raise


def _settle(path: Path) -> None:
    """Wait until what was written is on the disk."""
    with path.open("rb+") as file:
        os.fsync(file.fileno())


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
