"""`quoting workshop`: write the workshop of your book to a file."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Any

from quoting.cli.books import add_book, book_address, book_workshop
from quoting.cli.failures import shown_path, why_not_written
from quoting.files.whole_file import write_whole
from quoting.schema import workshop_text


def add_to(commands: Any) -> None:
    """Add the command to the parser's commands."""
    parser = commands.add_parser(
        "workshop", help="write your workshop to a file", description=__doc__
    )
    parser.add_argument(
        "--write", metavar="FILE", type=Path, help="the file to write (default: print it)"
    )
    add_book(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> None:
    """Write or print the workshop as it is now, its shelf included. Errors: BadInput, NotDone."""
    workshop = book_workshop(book_address(args))
    text = workshop_text(workshop, workshop.speaks)
    if args.write is None:
        sys.stdout.write(text)
        return
    try:
        write_whole(args.write, text.encode())
    except OSError as error:
        raise why_not_written(args.write, error) from error
    sys.stdout.write(f"Wrote the workshop to {shown_path(args.write)}.\n")
