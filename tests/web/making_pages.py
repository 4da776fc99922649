"""A maker at the pages of an order that is agreed: she writes down what she has made."""

from __future__ import annotations

from werkzeug.test import TestResponse

from quoting.core.making.log_lines import LogLine, standing
from quoting.store.log import log_of
from tests.web.book_pages import BookMaker
from tests.web.pages import Page

SIZE = {"blanket__width": "80 cm", "blanket__height": "100 cm"}
DAY = "2026-11-24"


def number_of(address: str) -> int:
    """Return the number of the order at an address."""
    return int(address.rsplit("/", 1)[1])


def agree(maker: BookMaker, **typed: str) -> str:
    """Begin an order, give its quote, have it accepted, and return the order's address."""
    address = maker.begin(**(SIZE | typed))
    given = maker.client.post(f"{address}/give", data=maker.open(address).typed()).location
    maker.press(f"{given}/accept", given)
    return address


def put_at(maker: BookMaker, address: str, *stages: str) -> None:
    """Put an order through some stages."""
    for stage in stages:
        maker.press(f"{address}/stage", address, stage=stage)


def tell(maker: BookMaker, address: str, start: Page | None = None, **typed: str) -> TestResponse:
    """Fill in what was done of an order and press *Write down*."""
    fields = (start or maker.open(f"{address}/making")).typed("sitting")
    fields |= {name.replace("__", "."): text for name, text in typed.items()}
    return maker.client.post(f"{address}/making", data=fields)


def write_line(maker: BookMaker, address: str, kind: str, **typed: str) -> TestResponse:
    """Fill in the form of one kind of line and send it."""
    fields = maker.open(f"{address}/making").typed(kind)
    fields |= {f"{kind}.{name}" if name != "again" else name: t for name, t in typed.items()}
    return maker.client.post(f"{address}/making/lines/{kind}", data=fields)


def lines_of(maker: BookMaker, address: str) -> list[LogLine]:
    """Return the lines of an order's log that hold, but for its stages."""
    entries = standing(log_of(maker.book, number_of(address)))
    return [entry.line for entry in entries if hasattr(entry.line, "day")]
