"""`quoting restore`: put a backup in the place of your book; the old book is kept beside it."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Any

from quoting.cli.books import add_book, book_address, book_failures_told, this_moment
from quoting.cli.failures import shown_path, why_not_written


def add_to(commands: Any) -> None:
    """Add the command to the parser's commands."""
    parser = commands.add_parser(
        "restore", help="put a backup in the place of your book", description=__doc__
    )
    parser.add_argument("file", metavar="FILE", type=Path, help="the backup")
    add_book(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> None:
    """Restore the book and say where the old one is. Errors: BadInput, NotDone."""
    from quoting.store.restoring import restore  # loaded only when a book is opened

    address = book_address(args)
    with book_failures_told(address, args.file):
        try:
            kept = restore(address, args.file, now=this_moment())
        except OSError as error:
            raise why_not_written(Path(address), error) from error
    sys.stdout.write(f"The book is as it was in {shown_path(args.file)}.\n")
    if kept is not None:
        sys.stdout.write(f"What was there before is kept in {shown_path(kept)}.\n")
