"""A maker at the pages of a book of hers."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from io import BytesIO
from pathlib import Path

from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from quoting.core.workshop.workshop import Workshop
from quoting.store.book import Book, open_book
from quoting.store.workshops import save_workshop
from quoting.web import create_app
from quoting.web.address import AT_HOME, Address
from quoting.web.kept import KeptShop
from tests.examples import TODAY
from tests.web.conftest import Maker
from tests.web.pages import Page

BEGINNING = datetime(2026, 11, 24, 8, 0, tzinfo=UTC)


@dataclass
class Clock:
    """A clock that goes on by a minute whenever it is looked at."""

    moment: datetime = BEGINNING

    def __call__(self) -> datetime:
        """Return the moment."""
        self.moment += timedelta(minutes=1)
        return self.moment


class BookMaker(Maker):
    """A maker at the pages of a book."""

    def __init__(self, client: FlaskClient, book: Book, clock: Clock) -> None:
        super().__init__(client)
        self.book = book
        self.clock = clock

    def token(self, address: str) -> str:
        """Open a page and return the token of its forms."""
        fields = self.open(address).root.all(lambda n: n.attributes.get("name") == "csrf_token")
        return next(fields).attributes["value"] or ""

    def begin(self, **typed: str) -> str:
        """Begin an order, type into it, save it, and return its address."""
        address = self.press("/orders/new", "/orders").location
        self.save(address, **typed)
        return str(address)

    def save(self, address: str, start: Page | None = None, **typed: str) -> TestResponse:
        """Type into the worktable of an order, or of a page opened before, and press Save."""
        fields = (start or self.open(address)).typed()
        fields |= {name.replace("__", "."): text for name, text in typed.items()}
        return self.client.post(address, data=fields | {"do": "save"})

    def give(self, address: str, start: Page | None = None, **typed: str) -> TestResponse:
        """Give the quote of a worktable, or of a page opened before, with what is typed into it."""
        fields = (start or self.open(address)).typed()
        fields |= {name.replace("__", "."): text for name, text in typed.items()}
        return self.client.post(f"{address}/give", data=fields)

    def press(self, address: str, start: str, **typed: str) -> TestResponse:
        """Send a form of the page at `start` that has but a token, and return the reply."""
        token = self.token(start)
        return self.client.post(address, data={"csrf_token": token, **typed})

    def hand_in(self, address: str, start: str, text: str) -> TestResponse:
        """Give a form of the page at `start` a file."""
        token = self.token(start)
        file = (BytesIO(text.encode()), "mine.toml")
        return self.client.post(address, data={"csrf_token": token, "file": file})


@contextmanager
def maker_with_book(
    file: Path,
    workshop: Workshop | None = None,
    address: Address = AT_HOME,
    today: Callable[[], date] = lambda: TODAY,
) -> Iterator[BookMaker]:
    """Yield a maker with a book in a file, and in it her workshop, if she has one."""
    clock = Clock()
    with open_book(str(file), now=clock()) as book:
        if workshop is not None:
            save_workshop(book, workshop, now=clock())
        app = create_app(KeptShop(book=book, now=clock, today=today), address)
        yield BookMaker(app.test_client(), book, clock)
