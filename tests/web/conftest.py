"""A maker's workshop behind the pages, on a fixed day."""

from __future__ import annotations

from io import BytesIO

import pytest
from flask.testing import FlaskClient

from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.schema import load_order_text, order_text
from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.examples import TODAY, sample_order, sample_workshop
from tests.web.pages import Page

ORDER = load_order_text(order_text(sample_order(), Vocabulary.US), sample_workshop())
"""The sample order as a file gives it."""


class Maker:
    """A maker at the pages: she opens them, types, presses buttons."""

    def __init__(self, client: FlaskClient) -> None:
        self.client = client
        self.status = 0

    def open(self, address: str = "/") -> Page:
        """Open a page."""
        reply = self.client.get(address)
        self.status = reply.status_code
        return Page(reply.text)

    def send(self, address: str, start: str = "/", **typed: str) -> Page:
        """Open the form, type into its fields (`__` for a dot), and send it.

        A price that is typed without its choice is sent without any, as a script would.
        """
        fields = self.open(start).typed()
        fields |= {name.replace("__", "."): text for name, text in typed.items()}
        if "price_by" not in typed and any(name.startswith("price__") for name in typed):
            fields.pop("price_by", None)
        reply = self.client.post(address, data=fields)
        self.status = reply.status_code
        return Page(reply.text)

    def give(self, text: str) -> Page:
        """Give the form an order file to read."""
        token = self.open().typed()["csrf_token"]
        file = (BytesIO(text.encode()), "order.toml")
        reply = self.client.post("/read", data={"csrf_token": token, "file": file})
        self.status = reply.status_code
        return Page(reply.text)


def maker_in(workshop: Workshop) -> Maker:
    """Return a maker in a workshop, the sample order on her form."""
    shop = open_shop(workshop, today=lambda: TODAY).starting_with(ORDER)
    return Maker(create_app(shop).test_client())


@pytest.fixture
def maker() -> Maker:
    """Return the maker of the scenario."""
    return maker_in(sample_workshop())
