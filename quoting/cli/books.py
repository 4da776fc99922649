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
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order
from quoting.core.quote.given_number import GivenNumber
from quoting.core.workshop.workshop import Workshop
from quoting.places import book_file
from quoting.wording import BOOK_FAILURES, FILE_SPEECH, mistake_sentence

if TYPE_CHECKING:
    from quoting.store.book import Book
    from quoting.store.quote_content import KeptQuote

BOOK_VARIABLE = "QUOTING_BOOK"

_OF_A_BACKUP = frozenset(
    {
        MistakeCode.BACKUP_IS_BOOK,
        MistakeCode.BOOK_DAMAGED,
        MistakeCode.BOOK_NEWER,
        MistakeCode.NOT_A_BOOK,
        MistakeCode.FILE_IS_FOLDER,
        MistakeCode.FILE_IS_NO_FILE,
        MistakeCode.FILE_MISSING,
        MistakeCode.FILE_UNREADABLE,
    }
)
"""What is wrong with the file that is to be put in the place of a book, not with the book."""


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


def opened_book(address: str, *, must_be_there: bool = False) -> Book:
    """Return the book there, open; unless it must be there already, one is begun.

    Errors: BadInput, NotDone.
    """
    from quoting.store.book import open_book  # loaded only when a book is opened

    if must_be_there and "://" not in address and not Path(address).expanduser().exists():
        raise BadInput(
            f"{shown_address(address)}: There is no book here yet; `quoting serve` makes one."
        )
    with book_failures_told(address):
        return open_book(address, now=this_moment())


def book_workshop(address: str) -> Workshop:
    """Return the workshop of a book as it is now. Errors: BadInput, NotDone."""
    from quoting.store.workshops import current_workshop

    with opened_book(address, must_be_there=True) as book, book_failures_told(address):
        kept = current_workshop(book)
    if kept is None:
        raise BadInput(f"{shown_address(address)}: There is no workshop in this book yet.")
    return kept.workshop


def book_order(address: str, number: int) -> Order:
    """Return an order of a book. Errors: BadInput, also where it is not whole yet; NotDone."""
    from quoting.store.orders import kept_order

    with opened_book(address, must_be_there=True) as book, book_failures_told(address):
        order = kept_order(book, number).content.order
    if order is None:
        raise BadInput(
            f"{shown_address(address)}: Order {number} is not whole yet: its page says what is "
            "still to fill in or to correct."
        )
    return order


def book_quote(address: str, number: GivenNumber) -> KeptQuote:
    """Return a quote of a book that was given. Errors: BadInput, NotDone."""
    from quoting.store.quotes import kept_quote

    with opened_book(address, must_be_there=True) as book, book_failures_told(address):
        return kept_quote(book, number)


@contextmanager
def book_failures_told(address: str, backup: Path | None = None) -> Iterator[None]:
    """Turn a refusal by the book, or of a backup of it, into an answer that names the file."""
    try:
        yield
    except Refused as refused:
        said = " ".join(mistake_sentence(m, FILE_SPEECH) for m in refused.mistakes)
        code = refused.mistakes[0].code
        of_backup = backup is not None and code in _OF_A_BACKUP
        name = shown_path(backup) if backup and of_backup else shown_address(address)
        fails = code in BOOK_FAILURES and not of_backup
        raise (NotDone if fails else BadInput)(f"{name}: {said}") from refused


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
