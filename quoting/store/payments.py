"""All money that was received, whatever the stage of the order that it came for."""

from __future__ import annotations

from dataclasses import dataclass

from sqlalchemy import select

from quoting.core.making.log_lines import Payment
from quoting.core.quote.given_number import GivenNumber
from quoting.schema.log_shapes import LOG_SHAPES
from quoting.store.book import Book
from quoting.store.log import entry_in
from quoting.store.tables import AGREEMENTS, LOG, ORDERS, QUOTES

_KIND = next(kind for kind, shape in LOG_SHAPES.items() if shape.value is Payment)


@dataclass(frozen=True, slots=True, kw_only=True)
class PaymentReceived:
    """A payment, and the order that it came for; `number` is of the quote that was agreed."""

    payment: Payment
    title: str
    buyer: str
    number: GivenNumber | None


def payments_received(book: Book) -> tuple[PaymentReceived, ...]:
    """Return the payments that hold, by their days."""
    corrected = select(LOG.c.corrects).where(LOG.c.corrects.is_not(None))
    shown = select(
        LOG, ORDERS.c.title, ORDERS.c.buyer, QUOTES.c.year, QUOTES.c.running, QUOTES.c.version
    ).join(ORDERS, ORDERS.c.id == LOG.c.order_id)
    agreed = shown.outerjoin(AGREEMENTS, AGREEMENTS.c.order_id == ORDERS.c.id).outerjoin(
        QUOTES, QUOTES.c.id == AGREEMENTS.c.quote_id
    )
    wanted = agreed.where(LOG.c.kind == _KIND, LOG.c.id.not_in(corrected)).order_by(LOG.c.id)
    with book.reading() as connection:
        found = [(entry_in(row).line, row) for row in connection.execute(wanted)]
    received = [
        PaymentReceived(
            payment=line,
            title=row.title,
            buyer=row.buyer,
            number=None if row.year is None else GivenNumber(row.year, row.running, row.version),
        )
        for line, row in found
        if isinstance(line, Payment)
    ]
    return tuple(sorted(received, key=lambda each: each.payment.day))
