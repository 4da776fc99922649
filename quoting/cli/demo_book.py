"""A book of the demo's, in a folder that is thrown away."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from pathlib import Path

from quoting.cli.books import opened_book, this_moment
from quoting.cli.demo_log import demo_log
from quoting.cli.job import this_day
from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.core.workshop.workshop import Workshop
from quoting.places import demo_centre, demo_order, demo_squares, demo_workshop
from quoting.schema import load_order, load_workshop
from quoting.store.book import Book
from quoting.store.order_content import KeptOrder
from quoting.store.workshops import save_workshop
from quoting.web import create_app
from quoting.web.book.keeping import content_of_order
from quoting.web.kept import KeptShop
from quoting.web.shop import shop_now

_OTHERS = (
    (75, Stage.HANDED_OVER, "Pram blanket in moorland stripes", "Tam Fell", 60.0, 80.0),
    (60, Stage.CALLED_OFF, "Sofa throw in moorland stripes", "Ada Marsh", 120.0, 150.0),
    (40, Stage.FINISHED, "Lap blanket in moorland stripes", "Corin Dale", 90.0, 110.0),
    (9, Stage.ON_THE_HOOK, "Small cot blanket", "Maud Hollin", 70.0, 90.0),
    (4, Stage.AGREED, "Bench cover in three colours", "Tam Fell", 50.0, 110.0),
)
"""Days since it was asked for, stage, title, buyer, width and height in centimetres, of the demo's
order made otherwise."""

_OF_OTHER_CONSTRUCTIONS = (
    (30, Stage.FINISHED, demo_centre),
    (1, Stage.ASKED, demo_squares),
)
"""Days since it was asked for, stage, and the file of an order that is not worked in rows."""

_LONG_AGO = timedelta(days=90)


@dataclass(slots=True)
class _Earlier:
    """A clock that is so many days behind."""

    days: int = 0

    def now(self) -> datetime:
        """Return the moment that it is there."""
        return this_moment() - timedelta(days=self.days)

    def today(self) -> date:
        """Return the day that it is there."""
        return this_day() - timedelta(days=self.days)


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
    workshop, clock = load_workshop(demo_workshop()), _Earlier()
    save_workshop(book, workshop, now=this_moment() - _LONG_AGO)
    app = create_app(KeptShop(book=book, now=clock.now, today=clock.today))
    for days, stage, order in sorted(_orders(workshop), key=lambda kept: -kept[0]):
        clock.days = days
        with app.test_request_context():  # a quote that is given has a page
            _keep(book, order, stage, clock.now())


def _keep(book: Book, order: Order, stage: Stage, now: datetime) -> None:
    from quoting.store.orders import create_order

    kept = create_order(book, content_of_order(order, shop_now()), now=now)
    if stage is not Stage.ASKED:
        _bring_to(book, kept, order, stage, now)


def _bring_to(book: Book, kept: KeptOrder, order: Order, stage: Stage, now: datetime) -> None:
    """Give an order's quote, and bring it to a stage from there as a maker does."""
    from quoting.store.answers import accept_quote, decline_quote
    from quoting.store.log import add_line
    from quoting.store.orders import change_stage
    from quoting.store.quotes import give_quote
    from quoting.web.book.freezing import freezing, quote_of_today

    shop = shop_now()
    quote = quote_of_today(order, shop)
    given = give_quote(
        book,
        kept.id,
        freezing(quote, shop),
        revision=kept.revision,
        day=shop.today(),
        now=now,
    )
    if stage is Stage.CALLED_OFF:
        decline_quote(book, given.number, now=now)
        return
    accept_quote(book, given.number, day=shop.today(), now=now)
    for line in demo_log(quote, stage, shop.today()):
        add_line(book, kept.id, line, now=now)
    further = list(Stage)
    for each in further[further.index(Stage.ON_THE_HOOK) : further.index(stage) + 1]:
        change_stage(book, kept.id, each, now=now)


def _orders(workshop: Workshop) -> Iterator[tuple[int, Stage, Order]]:
    """Yield the orders of some days ago, in different stages, the demo's own among them."""
    order = load_order(demo_order(), workshop)
    for days, stage, title, buyer, width_cm, height_cm in _OTHERS:
        design = replace(order.design, width_cm=width_cm, height_cm=height_cm)
        yield days, stage, replace(order, title=title, buyer=buyer, design=design, wanted_by=None)
    for days, stage, file in _OF_OTHER_CONSTRUCTIONS:
        yield days, stage, load_order(file(), workshop)
    yield 0, Stage.ASKED, order
