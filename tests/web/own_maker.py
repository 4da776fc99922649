"""A maker with a book: she opens the pages of her workshop, types, presses buttons, saves."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from pathlib import Path

from flask.testing import FlaskClient

from quoting.core.workshop.workshop import Workshop
from quoting.store.book import Book
from quoting.store.workshops import current_workshop
from tests.web.book_pages import maker_with_book
from tests.web.pages import Page


class OwnMaker:
    """A maker at the pages of her own workshop; `page` is what she sees."""

    def __init__(self, client: FlaskClient, book: Book) -> None:
        self.client = client
        self.book = book
        self.status = 0
        self.page = Page("")

    def open(self, address: str) -> Page:
        """Open a page."""
        return self.see(self.client.get(address))

    def press(self, address: str, do: str = "save", **typed: str) -> Page:
        """Type into the page she sees (`__` for a dot), and press a button of it."""
        fields = self.page.typed("own")
        fields |= {name.replace("__", "."): text for name, text in typed.items()}
        fields |= {"do": do}
        return self.see(self.client.post(address, data=fields, follow_redirects=True))

    def press_at(self, address: str, form_from: str) -> Page:
        """Press the only button of a small form."""
        token = self._token(form_from)
        data = {"csrf_token": token}
        return self.see(self.client.post(address, data=data, follow_redirects=True))

    def give(self, text: str) -> Page:
        """Give the page of versions a workshop file to read."""
        data = {
            "csrf_token": self._token("/workshop/versions"),
            "file": (BytesIO(text.encode()), "workshop.toml"),
        }
        reply = self.client.post("/workshop/versions/file", data=data, follow_redirects=True)
        return self.see(reply)

    @property
    def workshop(self) -> Workshop:
        """What the book has."""
        kept = current_workshop(self.book)
        assert kept is not None
        return kept.workshop

    @property
    def version(self) -> int:
        """The number of the version that the book has."""
        kept = current_workshop(self.book)
        assert kept is not None
        return kept.version.number

    def _token(self, address: str) -> str:
        page = Page(self.client.get(address).text)
        hidden = page.root.all(lambda node: node.attributes.get("name") == "csrf_token")
        return next(hidden).attributes["value"]

    def see(self, reply: object) -> Page:
        self.status = reply.status_code  # type: ignore[attr-defined]
        self.page = Page(reply.text)  # type: ignore[attr-defined]
        return self.page


@contextmanager
def own_maker(folder: Path, workshop: Workshop | None) -> Iterator[OwnMaker]:
    """Yield a maker with a book in a folder, which has a workshop, or none yet."""
    with maker_with_book(folder / "book.db", workshop) as maker:
        yield OwnMaker(maker.client, maker.book)
