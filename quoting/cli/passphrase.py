"""`quoting passphrase`: set what the pages ask for before they show your book to anybody.

It is asked twice and not shown; from a pipe, one line is read. Whoever was signed in has to sign
in again. `--remove` has it asked no more; the pages are then for this computer alone.
"""

from __future__ import annotations

import argparse
import sys
from getpass import getpass
from typing import Any

from quoting.cli.books import (
    add_book,
    book_address,
    book_failures_told,
    opened_book,
    shown_address,
    this_moment,
)
from quoting.cli.failures import BadInput
from quoting.files.security_log import SecurityEvent, security_logged, tell_event


def add_to(commands: Any) -> None:
    """Add the command to the parser's commands."""
    parser = commands.add_parser(
        "passphrase", help="set what the pages ask for", description=__doc__
    )
    parser.add_argument("--remove", action="store_true", help="ask for none any more")
    add_book(parser)
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> None:
    """Set or remove the passphrase, and say so. Errors: BadInput, NotDone."""
    from quoting.store.door import remove_passphrase, set_passphrase  # loaded with a book
    from quoting.store.workshops import current_workshop

    address = book_address(args)
    with opened_book(address, must_be_there=True) as book, security_logged(book.path):
        if args.remove:
            with book_failures_told(address):
                remove_passphrase(book)
            tell_event(SecurityEvent.PASSPHRASE_REMOVED)
            said = "No passphrase is asked any more: the pages are for this computer alone."
        else:
            passphrase = _asked(shown_address(address))
            with book_failures_told(address):
                kept = current_workshop(book)
                maker = "" if kept is None else kept.workshop.name
                set_passphrase(book, passphrase, maker=maker, now=this_moment())
            tell_event(SecurityEvent.PASSPHRASE_SET)
            said = "The passphrase is set. Whoever was signed in has to sign in again."
    sys.stdout.write(f"{said}\n")


def _asked(book: str) -> str:
    """Return the passphrase as it is typed or sent. Errors: BadInput."""
    if not sys.stdin or not sys.stdin.isatty():
        return _sent()
    try:
        first = getpass(f"A passphrase for {book}, of four or five words: ")
        again = getpass("The same once more: ")
    except EOFError as error:
        raise BadInput("No passphrase was typed; all is as it was.") from error
    if first != again:
        raise BadInput("The two are not alike; all is as it was.")
    return first


def _sent() -> str:
    try:
        line = sys.stdin.readline() if sys.stdin else ""
    except UnicodeDecodeError as error:
        raise BadInput("The passphrase could not be read as text; all is as it was.") from error
    if not line.strip():
        raise BadInput("No passphrase came; all is as it was.")
    return line.rstrip("\r\n")
