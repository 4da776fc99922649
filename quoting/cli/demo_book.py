"""A book of the demo's, in a folder that is thrown away."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from quoting.cli.books import opened_book, this_moment
from quoting.cli.job import this_day
from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.places import demo_order, demo_workshop
from quoting.schema import load_order, load_workshop
from quoting.store.book import Book
from quoting.store.order_content import KeptOrder
from quoting.store.workshops import save_workshop
from quoting.web import create_app
from quoting.web.book.keeping import content_of_order
from quoting.web.kept import KeptShop
from quoting.web.shop import shop_now

_OTHERS = (
    (Stage.HANDED_OVER, "Pram blanket in moorland stripes", "Tam Fell", 60.0, 80.0),
    (Stage.CALLED_OFF, "Sofa throw in moorland stripes", "Ada Marsh", 120.0, 150.0),
    (Stage.FINISHED, "Lap blanket in moorland stripes", "Corin Dale", 90.0, 110.0),
    (Stage.ON_THE_HOOK, "Small cot blanket", "Maud Hollin", 70.0, 90.0),
    (Stage.AGREED, "Bench cover in three colours", "Tam Fell", 50.0, 110.0),
)
"""Stage, title, buyer, width and height in centimetres, of the demo's order made otherwise."""


@contextmanager
def demo_book() -> Iterator[Book]:
    """Yield the book, open; at the end it is gone. Errors: OSError, NotDone."""
    with (
        tempfile.TemporaryDirectory(prefix="quoting-demo-", ignore_cleanup_errors=True) as folder,
        opened_book(str(Path(folder) / "book.db")) as book,
    ):
        fill(book)
        yield book


def fill(book: Book) -> None:
    """Keep the demo's workshop in an empty book, and its orders."""
    from quoting.store.orders import create_order

    workshop = load_workshop(demo_workshop())
    save_workshop(book, workshop, now=this_moment())
    app = create_app(KeptShop(book=book, now=this_moment, today=this_day))
    with app.test_request_context():  # a quote that is given has a page
        for stage, order in _orders(load_order(demo_order(), workshop)):
            content = content_of_order(order, shop_now())
            kept = create_order(book, content, now=this_moment())
            if stage is not Stage.ASKED:
                _bring_to(book, kept, order, stage)


def _bring_to(book: Book, kept: KeptOrder, order: Order, stage: Stage) -> None:
    """Give an order's quote, and bring it to a stage from there as a maker does."""
    from quoting.store.answers import accept_quote, decline_quote
    from quoting.store.orders import change_stage
    from quoting.store.quotes import give_quote
    from quoting.web.book.freezing import freezing, quote_of_today

    shop, now = shop_now(), this_moment()
    freeze = freezing(quote_of_today(order, shop), shop)
    given = give_quote(book, kept.id, freeze, revision=kept.revision, day=shop.today(), now=now)
    if stage is Stage.CALLED_OFF:
        decline_quote(book, given.number, now=now)
        return
    accept_quote(book, given.number, day=shop.today(), now=now)
    further = list(Stage)
    for each in further[further.index(Stage.ON_THE_HOOK) : further.index(stage) + 1]:
        change_stage(book, kept.id, each, now=now)


def _orders(order: Order) -> Iterator[tuple[Stage, Order]]:
    """Yield half a dozen orders in different stages, the demo's own last."""
    for stage, title, buyer, width_cm, height_cm in _OTHERS:
        design = replace(order.design, width_cm=width_cm, height_cm=height_cm)
        yield stage, replace(order, title=title, buyer=buyer, design=design, wanted_by=None)
    yield Stage.ASKED, order
