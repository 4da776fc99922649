"""A book with a passphrase, and browsers in front of its door."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from werkzeug.test import TestResponse

from quoting.store.door import set_passphrase
from quoting.web.address import AT_HOME, Address
from tests.examples import sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book

RIGHT, WRONG = "three otters under a gate", "three otters over a gate"


@contextmanager
def maker_at_the_door(file: Path, address: Address = AT_HOME) -> Iterator[BookMaker]:
    """Yield a maker in front of the door of her book, in which there is her workshop."""
    with maker_with_book(file, sample_workshop(), address) as maker:
        set_passphrase(maker.book, RIGHT, maker="Ottermoor Blankets", now=maker.clock())
        yield maker


def sign_in(maker: BookMaker, passphrase: str = RIGHT, to: str = "") -> TestResponse:
    """Type a passphrase into the sign-in page."""
    token = maker.token("/door")
    fields = {"csrf_token": token, "to": to, "passphrase": passphrase}
    return maker.client.post("/door", data=fields)


def sign_out(maker: BookMaker) -> TestResponse:
    """Press the button that every page has."""
    return maker.press("/door/out", "/orders")
