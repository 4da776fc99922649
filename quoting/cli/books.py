"""The maker's book as a command opens it: where it is, and how it fails."""

from __future__ import annotations

import argparse
import os
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

from quoting.cli.failures import BadInput, NotDone, shown_path
from quoting.core.ground.errors import Refused
from quoting.places import book_file
from quoting.wording import BOOK_FAILURES, FILE_SPEECH, mistake_sentence

if TYPE_CHECKING:
    from quoting.store.book import Book

BOOK_VARIABLE = "QUOTING_BOOK"


def add_book(parser: argparse.ArgumentParser) -> None:
    """Add the argument that names the book."""
    parser.add_argument(
        "--book",
        metavar="FILE",
        help=f"your book, or a postgresql:// address (default: {BOOK_VARIABLE}, else your own)",
    )


def book_address(args: argparse.Namespace) -> str:
    """Return the path or the address of the book that the arguments mean."""
    named: str | None = args.book
    return named or os.environ.get(BOOK_VARIABLE) or str(book_file())


def opened_book(address: str) -> Book:
    """Return the book there, open. Errors: BadInput, NotDone."""
    from quoting.store.book import open_book  # loaded only when a book is opened

    with book_failures_told(address):
        return open_book(address, now=this_moment())


@contextmanager
def book_failures_told(address: str) -> Iterator[None]:
    """Turn a refusal by the book into an answer, with the name of the book."""
    try:
        yield
    except Refused as refused:
        said = " ".join(mistake_sentence(m, FILE_SPEECH) for m in refused.mistakes)
        line = f"{shown_address(address)}: {said}"
        fails = refused.mistakes[0].code in BOOK_FAILURES
        raise (NotDone(line) if fails else BadInput(line)) from refused


def shown_address(address: str) -> str:
    """Return a book's address as it is told: without a password."""
    if "://" not in address:
        return shown_path(Path(address))
    try:
        parts = urlsplit(address)
        return shown_path(Path(f"{parts.hostname or ''}{parts.path}"))
    except ValueError:
        return "The book"


def this_moment() -> datetime:
    """Return this moment."""
    return datetime.now(UTC)
