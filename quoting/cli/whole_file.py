"""The file that a command writes beside its answer: whole, or not at all."""

from __future__ import annotations

import argparse
import contextlib
import errno
import os
import secrets
import stat
from pathlib import Path

from quoting.cli.failures import BadInput, shown_path, why_not_written

WORKBOOK_ENDING = ".xlsx"


def add_workbook(parser: argparse.ArgumentParser) -> None:
    """Add the argument that asks for a spreadsheet."""
    parser.add_argument(
        "--workbook", metavar="FILE.xlsx", type=Path, help="write the spreadsheet too"
    )


def check_workbook(path: Path | None) -> None:
    """Refuse a spreadsheet whose name would hide what it is. Errors: BadInput."""
    if path is not None and path.suffix.lower() != WORKBOOK_ENDING:
        raise BadInput(f"{shown_path(path)}: the name of a workbook must end in {WORKBOOK_ENDING}.")


def write_whole(path: Path, data: bytes) -> None:
    """Write a file through another one beside it, which then takes its name.

    Errors: NotDone with the reason, BadInput for a name too long; then an older file of that
    name is as it was.
    """
    try:
        _write(path, data)
    except (OSError, ValueError) as error:
        reason = error if isinstance(error, OSError) else OSError(errno.EINVAL, "no such name")
        raise why_not_written(path, reason) from error


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
