"""The workbook that a command writes beside its answer."""

from __future__ import annotations

import argparse
from pathlib import Path

from quoting.cli.failures import BadInput, shown_path, why_not_written
from quoting.files.whole_file import write_whole

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


def write_workbook(path: Path, data: bytes) -> None:
    """Write a workbook, whole or not at all.

    Errors: NotDone with the reason, BadInput for a name too long; then an older file of that
    name is as it was.
    """
    try:
        write_whole(path, data)
    except OSError as error:
        raise why_not_written(path, error) from error
