"""A book in a file and a book on a server: the same tests are run on both."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.store.book import Book, open_book
from tests.store.moments import NOW
from tests.store.postgres import Server, running_server


@pytest.fixture(scope="session")
def server() -> Iterator[Server]:
    """Start a server for the whole run."""
    with running_server() as started:
        yield started


@pytest.fixture(params=["file", "server"])
def address(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """Say where a book may be begun."""
    if request.param == "file":
        return str(tmp_path / "book.db")
    started: Server = request.getfixturevalue("server")
    return started.new_place()


@pytest.fixture
def another_address(address: str, request: pytest.FixtureRequest) -> str:
    """Say where a further book of the same sort may be begun."""
    if "://" in address:
        started: Server = request.getfixturevalue("server")
        return started.new_place()
    return f"{address}.further"


@pytest.fixture
def book(address: str) -> Iterator[Book]:
    """Open a book with nothing in it."""
    with open_book(address, now=NOW) as opened:
        yield opened


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Say where a book's file may be made."""
    return tmp_path / "book.db"
