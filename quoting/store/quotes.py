"""Quotes in the book: numbered as they are given, and never changed afterwards."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date, datetime

from sqlalchemy import Connection, func, insert, select

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.making.log_lines import Moved
from quoting.core.order.order import Order
from quoting.core.order.stage import Stage, check_open
from quoting.core.quote.given_number import GivenNumber
from quoting.store.book import Book
from quoting.store.quote_content import FrozenQuote, KeptQuote, QuoteLine
from quoting.store.quote_rows import (
    last_first,
    lines_of,
    quote_agreed,
    quote_columns,
    quote_in,
    quote_numbered,
)
from quoting.store.records import order_of
from quoting.store.stages import move_order, stage_of
from quoting.store.tables import ORDERS, QUOTES

Freeze = Callable[[GivenNumber], FrozenQuote]
"""Makes a quote of the number that it is to bear; quickly, for nobody else writes meanwhile."""


def give_quote(
    book: Book, order_id: int, freeze: Freeze, *, revision: int, day: date, now: datetime
) -> KeptQuote:
    """Give an order's quote a number and keep it; one that has a number gets its next version.

    An order that was only asked for is quoted from then on. Where nothing has changed since the
    last was given on this day, that is the one. `revision` is the order's as the page shows it.
    Errors: `order-missing`; `order-overtaken` where it has another by now; as `check_open`; those
    of `freeze`, and then no number is taken.
    """
    with book.writing() as connection:
        stage = stage_of(connection, order_id)
        check_open(stage)
        _check_revision(connection, order_id, revision)
        last = _last_of(connection, order_id)
        number = _first_number(connection, day.year) if last is None else _next_version(last)
        frozen = freeze(number)
        if last is not None and last.frozen.is_alike(frozen):
            number = last.number
            if stage is not Stage.ASKED:
                return last
        else:
            given = {"order_id": order_id, "given_at": now, "revision": revision}
            _insert(connection, number, quote_columns(frozen) | given)
        quoted = Stage.QUOTED if stage is Stage.ASKED else stage
        moved = Moved(stage=quoted, before=stage, quote=str(number))
        move_order(connection, order_id, moved, now=now)
        return quote_numbered(connection, number)


def kept_quote(book: Book, number: GivenNumber) -> KeptQuote:
    """Return the quote of a number. Errors: `quote-missing`."""
    with book.reading() as connection:
        return quote_numbered(connection, number)


def quoted_order(book: Book, order_id: int) -> Order | None:
    """Return an order as it was when its quote was given last, None where none was."""
    records = last_first(order_id).with_only_columns(QUOTES.c.order_record)
    with book.reading() as connection:
        record = connection.scalar(records.limit(1))
        return None if record is None else order_of(record)


def quotes_of(book: Book, order_id: int) -> tuple[KeptQuote, ...]:
    """Return every version that was given of an order's quote, the latest first."""
    with book.reading() as connection:
        return tuple(map(quote_in, connection.execute(last_first(order_id))))


def quote_lines(book: Book, order_id: int) -> tuple[QuoteLine, ...]:
    """Return every version of an order's quote as lists show it, the latest first."""
    with book.reading() as connection:
        return lines_of(connection, order_id)


def agreed_quote(book: Book, order_id: int) -> KeptQuote | None:
    """Return the quote that an order was agreed by, None where it was not."""
    with book.reading() as connection:
        return quote_agreed(connection, order_id)


def _check_revision(connection: Connection, order_id: int, revision: int) -> None:
    if connection.scalar(select(ORDERS.c.revision).where(ORDERS.c.id == order_id)) != revision:
        raise refuse("", MistakeCode.ORDER_OVERTAKEN)


def _first_number(connection: Connection, year: int) -> GivenNumber:
    """Return the first number of a year that no quote bears; there are no gaps below it."""
    last = select(func.max(QUOTES.c.running)).where(QUOTES.c.year == year)
    return GivenNumber(year, (connection.scalar(last) or 0) + 1)


def _next_version(last: KeptQuote) -> GivenNumber:
    return GivenNumber(last.number.year, last.number.running, last.number.version + 1)


def _insert(connection: Connection, number: GivenNumber, columns: Mapping[str, object]) -> None:
    numbered = {"year": number.year, "running": number.running, "version": number.version}
    connection.execute(insert(QUOTES).values(**columns, **numbered))


def _last_of(connection: Connection, order_id: int) -> KeptQuote | None:
    row = connection.execute(last_first(order_id).limit(1)).one_or_none()
    return None if row is None else quote_in(row)
