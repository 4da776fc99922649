"""`quoting backup`: copy your book to another file; the pages may be open meanwhile."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Any

from quoting.cli.books import add_book, book_address, book_failures_told, opened_book
from quoting.cli.failures import shown_path, why_not_written


def add_to(commands: Any) -> None:
    """Add the command to the parser's commands."""
    parser = commands.add_parser("backup", help="copy your book to a file", description=__doc__)
    parser.add_argument("file", metavar="FILE", type=Path, help="the file to write")
    add_book(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> None:
    """Write the copy, whole or not at all, and name it. Errors: BadInput, NotDone."""
    from quoting.store.backups import back_up  # loaded only when a book is opened

    address = book_address(args)
    with opened_book(address, must_be_there=True) as book, book_failures_told(address):
        try:
            back_up(book, args.file)
        except OSError as error:
            raise why_not_written(args.file, error) from error
    sys.stdout.write(f"Copied the book to {shown_path(args.file)}.\n")
