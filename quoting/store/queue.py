"""The orders in the book that were agreed and are not finished, by when they were agreed."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from types import MappingProxyType
from typing import Any

from sqlalchemy import Connection, Row, select

from quoting.core.order.stage import Stage
from quoting.core.workshop.queue import AgreedOrder
from quoting.store.book import Book
from quoting.store.tables import AGREEMENTS, ORDERS, QUOTES

MOST_ASKED = 500
"""Quotes that are asked for at once: a database takes so many values, and no end of them."""


_WAITS = ORDERS.c.stage.in_([Stage.AGREED.value, Stage.ON_THE_HOOK.value])

_AGREED = (
    select(
        *(AGREEMENTS.c[name] for name in ("quote_id", "agreed_at")),
        *(ORDERS.c[name] for name in ("id", "title", "buyer", "stage", "wanted_by")),
    )
    .join_from(AGREEMENTS, ORDERS)
    .where(_WAITS)
    .order_by(AGREEMENTS.c.agreed_at, ORDERS.c.id)
)

_WITHOUT_QUOTE = (
    select(ORDERS.c.id, ORDERS.c.title)
    .where(_WAITS, ORDERS.c.id.not_in(select(AGREEMENTS.c.order_id)))
    .order_by(ORDERS.c.id)
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PromisedWork:
    """What a quote promised, as far as its order's turn rests on it; `hours` are its high ones."""

    hours: float
    yarn_bought: bool
    ready_by: date


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptQueue:
    """The agreed orders of a book; `quotes` are those that they were agreed by."""

    orders: tuple[AgreedOrder, ...] = ()
    quotes: Mapping[int, PromisedWork] = field(default_factory=lambda: MappingProxyType({}))


EMPTY_QUEUE = KeptQueue()


@dataclass(frozen=True, slots=True, kw_only=True)
class WithoutQuote:
    """An order that is agreed but by no quote, so that nothing says how long it takes."""

    order_id: int
    title: str


def kept_queue(book: Book, known: KeptQueue = EMPTY_QUEUE) -> KeptQueue:
    """Return the orders that were agreed and are not finished.

    Of the quotes that are `known` nothing is read again: a quote is never changed.
    """
    with book.reading() as connection:
        rows = connection.execute(_AGREED).all()
        quotes = dict(_quotes(connection, [row.quote_id for row in rows], known.quotes))
    return KeptQueue(
        orders=tuple(_order(row, quotes[row.quote_id]) for row in rows),
        quotes=MappingProxyType(quotes),
    )


def agreed_without_quote(book: Book) -> tuple[WithoutQuote, ...]:
    """Return the orders that are agreed by no quote of this book, and so have no turn."""
    with book.reading() as connection:
        rows = connection.execute(_WITHOUT_QUOTE)
        return tuple(WithoutQuote(order_id=row.id, title=row.title) for row in rows)


def _quotes(
    connection: Connection, wanted: Sequence[int], known: Mapping[int, PromisedWork]
) -> Iterator[tuple[int, PromisedWork]]:
    """Yield what each quote promised, those that are not known read from the book."""
    yield from ((number, known[number]) for number in wanted if number in known)
    unread = [number for number in wanted if number not in known]
    for start in range(0, len(unread), MOST_ASKED):
        some = QUOTES.c.id.in_(unread[start : start + MOST_ASKED])
        for row in connection.execute(select(QUOTES.c.id, QUOTES.c.results).where(some)):
            yield row.id, _promised(json.loads(row.results))


def _promised(results: Mapping[str, Any]) -> PromisedWork:
    return PromisedWork(
        hours=results["hours"]["high"],
        yarn_bought=any(colour["skeins"] for colour in results["yarn"]),
        ready_by=date.fromisoformat(results["quote"]["ready_by"]),
    )


def _order(row: Row[Any], promised: PromisedWork) -> AgreedOrder:
    return AgreedOrder(
        order_id=row.id,
        title=row.title,
        buyer=row.buyer,
        on_the_hook=row.stage == Stage.ON_THE_HOOK,
        agreed_on=row.agreed_at.astimezone().date(),  # the day that it was where she works
        hours=promised.hours,
        yarn_bought=promised.yarn_bought,
        promised_by=promised.ready_by,
        wanted_by=row.wanted_by,
    )
