"""Quotes in the book: numbered as they are given, and never changed afterwards."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, Select, func, insert, select

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.quote.given_number import GivenNumber
from quoting.schema.offer_shape import offer_record, read_offer
from quoting.store.book import Book
from quoting.store.quote_content import FrozenQuote, KeptQuote
from quoting.store.records import order_of, order_record, workshop_of, workshop_record
from quoting.store.tables import AGREEMENTS, ORDERS, QUOTES

Freeze = Callable[[GivenNumber], FrozenQuote]
"""Makes a quote of the number that it is to bear."""


def give_quote(
    book: Book, order_id: int, freeze: Freeze, *, revision: int, day: date, now: datetime
) -> KeptQuote:
    """Give an order's quote a number and keep it; one that has a number gets its next version.

    Where nothing has changed since the last was given on this day, that is the one. `revision` is
    the order's as the page shows it. Errors: `order-missing`; `order-overtaken` where it has
    another by now; those of `freeze`, and then no number is taken.
    """
    with book.writing() as connection:
        _check_revision(connection, order_id, revision)
        last = _last_of(connection, order_id)
        number = _first_number(connection, day.year) if last is None else _next_version(last)
        frozen = freeze(number)
        if last is not None and _is_same(last, frozen, revision):
            return last
        row = _columns(frozen) | {"order_id": order_id, "given_at": now, "revision": revision}
        row |= {"year": number.year, "running": number.running, "version": number.version}
        connection.execute(insert(QUOTES).values(**row))
        return _only(connection, _numbered(number))


def kept_quote(book: Book, number: GivenNumber) -> KeptQuote:
    """Return the quote of a number. Errors: `quote-missing`."""
    with book.reading() as connection:
        return _only(connection, _numbered(number))


def quotes_of(book: Book, order_id: int) -> tuple[KeptQuote, ...]:
    """Return every version that was given of an order's quote, the latest first."""
    with book.reading() as connection:
        return tuple(map(_quote_in, connection.execute(_of_order(order_id))))


def agreed_quote(book: Book, order_id: int) -> KeptQuote | None:
    """Return the quote that an order was agreed by, None where it was not."""
    query = select(QUOTES).join(AGREEMENTS, AGREEMENTS.c.quote_id == QUOTES.c.id)
    with book.reading() as connection:
        row = connection.execute(query.where(AGREEMENTS.c.order_id == order_id)).one_or_none()
        return None if row is None else _quote_in(row)


def _check_revision(connection: Connection, order_id: int, revision: int) -> None:
    kept = connection.scalar(select(ORDERS.c.revision).where(ORDERS.c.id == order_id))
    if kept is None:
        raise refuse("", MistakeCode.ORDER_MISSING)
    if kept != revision:
        raise refuse("", MistakeCode.ORDER_OVERTAKEN)


def _first_number(connection: Connection, year: int) -> GivenNumber:
    """Return the first number of a year that no quote bears; there are no gaps below it."""
    last = select(func.max(QUOTES.c.running)).where(QUOTES.c.year == year)
    return GivenNumber(year, (connection.scalar(last) or 0) + 1)


def _next_version(last: KeptQuote) -> GivenNumber:
    return GivenNumber(last.number.year, last.number.running, last.number.version + 1)


def _is_same(last: KeptQuote, frozen: FrozenQuote, revision: int) -> bool:
    was = last.frozen
    return (last.revision, was.workshop, was.day) == (revision, frozen.workshop, frozen.day)


def _of_order(order_id: int) -> Select[Any]:
    its = select(QUOTES).where(QUOTES.c.order_id == order_id)
    return its.order_by(QUOTES.c.version.desc())


def _numbered(number: GivenNumber) -> Select[Any]:
    return select(QUOTES).where(
        (QUOTES.c.year == number.year)
        & (QUOTES.c.running == number.running)
        & (QUOTES.c.version == number.version)
    )


def _last_of(connection: Connection, order_id: int) -> KeptQuote | None:
    row = connection.execute(_of_order(order_id).limit(1)).one_or_none()
    return None if row is None else _quote_in(row)


def _only(connection: Connection, query: Select[Any]) -> KeptQuote:
    row = connection.execute(query).one_or_none()
    if row is None:
        raise refuse("", MistakeCode.QUOTE_MISSING)
    return _quote_in(row)


def _columns(frozen: FrozenQuote) -> dict[str, object]:
    return {
        "day": frozen.day,
        "valid_until": frozen.valid_until,
        "workshop_version": frozen.workshop_version,
        "workshop": workshop_record(frozen.workshop),
        "order_record": order_record(frozen.order),
        "results": json.dumps(frozen.results),
        "offer": json.dumps(offer_record(frozen.offer)),
        "page": frozen.page,
        "program": frozen.program,
    }


def _quote_in(row: Row[Any]) -> KeptQuote:
    return KeptQuote(
        id=row.id,
        order_id=row.order_id,
        number=GivenNumber(row.year, row.running, row.version),
        given_at=row.given_at,
        revision=row.revision,
        frozen=FrozenQuote(
            day=row.day,
            valid_until=row.valid_until,
            workshop_version=row.workshop_version,
            workshop=workshop_of(row.workshop),
            order=order_of(row.order_record),
            results=json.loads(row.results),
            offer=read_offer(json.loads(row.offer)),
            page=row.page,
            program=row.program,
        ),
    )
