"""A book of the demo's, in a folder that is thrown away."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from quoting.cli.books import opened_book, this_moment
from quoting.places import demo_workshop
from quoting.schema import load_workshop
from quoting.store.book import Book
from quoting.store.workshops import save_workshop


@contextmanager
def demo_book() -> Iterator[Book]:
    """Yield the book, open; at the end it is gone. Errors: OSError, NotDone."""
    with (
        tempfile.TemporaryDirectory(prefix="quoting-demo-", ignore_cleanup_errors=True) as folder,
        opened_book(str(Path(folder) / "book.db")) as book,
    ):
        save_workshop(book, load_workshop(demo_workshop()), now=this_moment())
        yield book
