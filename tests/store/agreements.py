"""Orders that were quoted and agreed, straight in the book."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import insert, update

from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.workshop import Workshop
from quoting.store.book import Book
from quoting.store.order_content import OrderContent
from quoting.store.orders import create_order, kept_order
from quoting.store.quotes import give_quote
from quoting.store.tables import AGREEMENTS, ORDERS
from tests.store.contents import FIGURES
from tests.store.given import frozen_as


def agree(
    book: Book,
    order: Order,
    workshop: Workshop,
    *,
    now: datetime,
    stage: Stage = Stage.AGREED,
    quoted: datetime | None = None,
) -> int:
    """Keep an order, give its quote, have it agreed at a moment, and return its id.

    The quote is of the same moment, unless told. The book has a version of the workshop already.
    """
    quoted = quoted or now
    content = OrderContent(
        title=order.title, buyer=order.buyer, wanted_by=order.wanted_by, figures=FIGURES
    )
    order_id = create_order(book, content, now=quoted).id
    quote = quote_order(order, workshop, today=quoted.date())
    agree_kept(book, order_id, quote, now=now, stage=stage, quoted=quoted)
    return order_id


def agree_kept(
    book: Book,
    order_id: int,
    quote: Quote,
    *,
    now: datetime,
    stage: Stage = Stage.AGREED,
    quoted: datetime | None = None,
) -> None:
    """Give an order's quote, and have it agreed at a moment."""
    given = give_quote(
        book,
        order_id,
        lambda number: frozen_as(quote, number),
        revision=kept_order(book, order_id).revision,
        day=quote.day,
        now=quoted or now,
    )
    with book.writing() as connection:
        row = {"order_id": order_id, "quote_id": given.id, "agreed_at": now}
        connection.execute(insert(AGREEMENTS).values(**row))
        its = update(ORDERS).where(ORDERS.c.id == order_id)
        connection.execute(its.values(stage=stage.value))
