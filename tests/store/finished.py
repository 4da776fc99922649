"""Orders that were quoted, agreed, made and handed over, put into a book at once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime

from sqlalchemy import insert, update

from exports.records.quote_record import quote_record
from quoting.core.making.log_lines import LogLine, Moved
from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.core.quote.given_number import GivenNumber
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import quote_order
from quoting.core.workshop.workshop import Workshop
from quoting.store.book import Book
from quoting.store.log import put_line
from quoting.store.orders import create_order
from quoting.store.quote_content import FrozenQuote
from quoting.store.quotes import give_quote
from quoting.store.tables import AGREEMENTS, ORDERS
from tests.examples import TODAY, sample_order, sample_workshop
from tests.store.contents import whole
from tests.store.moments import NOW


def quote_as_given(order: Order, shop: Workshop, number: GivenNumber, day: date) -> FrozenQuote:
    """Return an order's quote as it is kept."""
    quote = replace(quote_order(order, shop, today=day), number=str(number))
    return FrozenQuote(
        day=day,
        valid_until=quote.valid_until,
        workshop_version=1,
        workshop=shop,
        order=order,
        results=quote_record(quote),
        offer=offer_of(quote),
        page="",
        program="0.1.0",
    )


def made_order(
    book: Book,
    *lines: LogLine,
    order: Order | None = None,
    shop: Workshop | None = None,
    stages: Sequence[Stage] = (Stage.FINISHED, Stage.HANDED_OVER),
    agreed: datetime = NOW,
    now: datetime = NOW,
) -> int:
    """Keep an order that was agreed, its log and the stages that it came to; return its id."""
    asked, maker = order or sample_order(), shop or sample_workshop()
    content = whole(title=asked.title, buyer=asked.buyer, order=asked)
    kept = create_order(book, content, now=agreed)
    given = give_quote(
        book,
        kept.id,
        lambda number: quote_as_given(asked, maker, number, TODAY),
        revision=kept.revision,
        day=TODAY,
        now=agreed,
    )
    with book.writing() as connection:
        row = {"order_id": kept.id, "quote_id": given.id, "agreed_at": agreed}
        connection.execute(insert(AGREEMENTS).values(**row))
        for line in lines:
            put_line(connection, kept.id, line, now=now)
        for stage in stages:
            put_line(connection, kept.id, Moved(stage=stage, before=Stage.AGREED), now=now)
            moved = update(ORDERS).where(ORDERS.c.id == kept.id)
            connection.execute(moved.values(stage=stage.value, changed_at=now))
    return kept.id
