"""An order that cannot be read yet uses what is typed for what it has chosen, not what rests."""

from __future__ import annotations

from types import MappingProxyType

import pytest

from quoting.store.book import Book
from quoting.store.order_content import OrderContent
from quoting.store.order_uses import Lost, order_uses
from quoting.store.orders import create_order
from tests.store.moments import NOW

TYPED = {
    "order.title": ("Cot blanket",),
    "blanket.yarn": ("moor aran",),
    "blanket.stitch": ("hdc",),
    "blanket.sections.1.stripes.1.stitch": ("shells",),
    "blanket.sections.1.stripes.1.colour": ("moss",),
    "blanket.squares.motif": ("fen square",),
    "blanket.squares.layouts.1.colours.1.value": ("teal",),
    "blanket.border.1.colour": ("oat",),
}
LOST = Lost(
    patterns=frozenset({"shells"}),
    motifs=frozenset({"fen square"}),
    colours=frozenset({("moor aran", colour) for colour in ("moss", "teal", "oat")}),
)
EVERYTHING = ("fen square", "moor aran, moss", "moor aran, oat", "moor aran, teal", "shells")


@pytest.mark.parametrize(
    ("chosen", "used"),
    [
        ("rows", ("moor aran, moss", "moor aran, oat", "shells")),
        ("squares", ("fen square", "moor aran, oat", "moor aran, teal")),
        ("centre", ("moor aran, oat",)),
        ("knots", EVERYTHING),
    ],
)
def test_what_rests_is_not_used(book: Book, chosen: str, used: tuple[str, ...]) -> None:
    typed = TYPED | {"blanket.construction": (chosen,)}
    create_order(book, OrderContent(typed=MappingProxyType(typed), title="Cot blanket"), now=NOW)
    (use,) = order_uses(book, LOST)
    assert use.names == used


def test_where_no_construction_is_said_all_that_is_typed_may_be_used(book: Book) -> None:
    content = OrderContent(typed=MappingProxyType(TYPED), title="Cot blanket")
    create_order(book, content, now=NOW)
    (use,) = order_uses(book, LOST)
    assert use.names == EVERYTHING
