"""The workbook and the PDF that a command writes beside its answer."""

from __future__ import annotations

import argparse
from pathlib import Path

from exports.papers.typesetter import NOT_INSTALLED, can_set
from quoting.cli.failures import BadInput, NotDone, shown_path, why_not_written
from quoting.files.whole_file import write_whole

WORKBOOK_ENDING, PDF_ENDING = ".xlsx", ".pdf"


def add_workbook(parser: argparse.ArgumentParser) -> None:
    """Add the argument that asks for a spreadsheet."""
    parser.add_argument(
        "--workbook", metavar="FILE.xlsx", type=Path, help="write the spreadsheet too"
    )


def add_pdf(parser: argparse.ArgumentParser) -> None:
    """Add the argument that asks for what the buyer reads."""
    parser.add_argument(
        "--pdf", metavar="FILE.pdf", type=Path, help="write the quote for the buyer too"
    )


def check_workbook(path: Path | None) -> None:
    """Refuse a spreadsheet whose name would hide what it is. Errors: BadInput."""
    _check_ending(path, "a workbook", WORKBOOK_ENDING)


def check_pdf(path: Path | None) -> None:
    """Refuse a PDF whose name would hide what it is, or that nothing here can make.

    Errors: BadInput, NotDone.
    """
    _check_ending(path, "a PDF", PDF_ENDING)
    if path is not None and not can_set():
        raise NotDone(NOT_INSTALLED)


def _check_ending(path: Path | None, what: str, ending: str) -> None:
    if path is not None and path.suffix.lower() != ending:
        raise BadInput(f"{shown_path(path)}: the name of {what} must end in {ending}.")


def write_beside(path: Path, data: bytes) -> None:
    """Write a file, whole or not at all.

    Errors: NotDone with the reason, BadInput for a name too long; then an older file of that
    name is as it was.
    """
    try:
        write_whole(path, data)
    except OSError as error:
        raise why_not_written(path, error) from error
