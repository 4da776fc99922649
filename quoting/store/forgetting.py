"""Forgetting a buyer: her name and what identifies her leave the book, the figures stay."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, Row, func, select, update

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.store.book import Book
from quoting.store.forgotten_texts import (
    Told,
    log_line_without,
    offer_without,
    order_without,
    page_without,
    paper_without,
    results_without,
    typed_without,
)
from quoting.store.name_words import FORGOTTEN, NameWords
from quoting.store.order_rows import search_key
from quoting.store.records import typed_of, typed_record
from quoting.store.sweeping import sweep
from quoting.store.tables import LOG, ORDER_TEXTS, ORDERS, PAPERS, QUOTES, SET_ASIDE


@dataclass(frozen=True, slots=True, kw_only=True)
class BuyersOrder:
    """An order of a buyer's: its title, as it will be without her, and how many quotes it has."""

    id: int
    title: str
    title_without: str
    quotes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Buyer:
    """Whose order it is, and every order of hers, that one first; none where nobody is named."""

    name: str
    orders: tuple[BuyersOrder, ...]


def buyer_of(book: Book, order_id: int) -> Buyer:
    """Return the buyer of an order. Errors: `order-missing`."""
    with book.reading() as connection:
        order = _order(connection, order_id)
        rows = [_order(connection, each) for each in _of_buyer(connection, order)]
        words = _words(connection, [row.id for row in rows])
        orders = tuple(_buyers_order(connection, row, words) for row in rows)
    return Buyer(name=order.buyer, orders=orders)


def forget_buyer(book: Book, order_id: int, *, everywhere: bool, told: Told) -> bool:
    """Take the buyer out of an order, or of all that bear her name, and what was given of them.

    An order has a new revision of nobody's then, so that a page that is open brings nothing back
    in silence. `told` tells what the buyer's page says. Returns whether nothing of her is left in
    the unused parts of the book's file either. Errors: `order-missing`, `no-buyer`; then nothing
    was forgotten.
    """
    with book.writing() as connection:
        order = _order(connection, order_id)
        ids = _of_buyer(connection, order)
        if not ids:
            raise refuse("", MistakeCode.NO_BUYER)
        forgotten = ids if everywhere else [order_id]
        words = _words(connection, forgotten)
        for each in forgotten:
            _forget_order(connection, _order(connection, each), words)
            _forget_log(connection, each)
            _forget_papers(connection, each, words)
            for quote in connection.execute(select(QUOTES).where(QUOTES.c.order_id == each)).all():
                _forget_quote(connection, quote, words, told)
    return sweep(book)


def _order(connection: Connection, order_id: int) -> Row[Any]:
    both = select(ORDERS, ORDER_TEXTS.c.typed, ORDER_TEXTS.c.record).join(ORDER_TEXTS)
    row = connection.execute(both.where(ORDERS.c.id == order_id)).one_or_none()
    if row is None:
        raise refuse("", MistakeCode.ORDER_MISSING)
    return row


def _of_buyer(connection: Connection, order: Row[Any]) -> list[int]:
    """Return the orders that bear the name of an order's buyer, that one first."""
    if order.buyer in {"", FORGOTTEN}:
        return []
    its = select(ORDERS.c.id).where(ORDERS.c.buyer_key == order.buyer_key)
    ids = connection.scalars(its.order_by(ORDERS.c.id.desc()))
    return [order.id, *(each for each in ids if each != order.id)]


def _words(connection: Connection, order_ids: list[int]) -> NameWords:
    """Return every spelling of the name that the orders, their quotes and papers have."""
    names = {name for each in order_ids for name in _names(connection, each)}
    return NameWords(frozenset(name.strip() for name in names) - {"", FORGOTTEN})


def _names(connection: Connection, order_id: int) -> Iterator[str]:
    order = _order(connection, order_id)
    yield order.buyer
    asides = select(SET_ASIDE.c.typed).where(SET_ASIDE.c.order_id == order_id)
    for typed in (order.typed, *connection.scalars(asides)):
        yield from typed_of(typed).get("order.buyer", ())
    quoted = select(QUOTES.c.order_record).where(QUOTES.c.order_id == order_id)
    for record in (order.record, *connection.scalars(quoted)):
        yield "" if record is None else json.loads(record)["order"].get("buyer", "")
    papers = select(PAPERS.c.record).where(PAPERS.c.order_id == order_id)
    for record in connection.scalars(papers):
        yield json.loads(record)["head"]["buyer"]


def _buyers_order(connection: Connection, row: Row[Any], words: NameWords) -> BuyersOrder:
    its = select(func.count()).select_from(QUOTES).where(QUOTES.c.order_id == row.id)
    return BuyersOrder(
        id=row.id,
        title=row.title,
        title_without=words.out_of(row.title),
        quotes=connection.scalar(its) or 0,
    )


def _forget_order(connection: Connection, row: Row[Any], words: NameWords) -> None:
    title, revision = words.out_of(row.title), row.revision + 1
    head = {"title": title, "title_key": search_key(title), "buyer": FORGOTTEN}
    head |= {"buyer_key": search_key(FORGOTTEN), "revision": revision, "writer": ""}
    connection.execute(update(ORDERS).where(ORDERS.c.id == row.id).values(**head))
    record = None if row.record is None else order_without(row.record, words)
    texts = {"typed": _typed(row.typed, words), "record": record}
    its = update(ORDER_TEXTS).where(ORDER_TEXTS.c.order_id == row.id)
    connection.execute(its.values(**texts))
    as_quoted = (QUOTES.c.order_id == row.id) & (QUOTES.c.revision == row.revision)
    connection.execute(update(QUOTES).where(as_quoted).values(revision=revision))
    asides = SET_ASIDE.c.order_id == row.id
    for aside in connection.execute(select(SET_ASIDE).where(asides)).all():
        its = update(SET_ASIDE).where(asides & (SET_ASIDE.c.writer == aside.writer))
        connection.execute(its.values(typed=_typed(aside.typed, words)))


def _forget_log(connection: Connection, order_id: int) -> None:
    for line in connection.execute(select(LOG).where(LOG.c.order_id == order_id)).all():
        record = log_line_without(line.kind, line.record)
        if record != line.record:
            connection.execute(update(LOG).where(LOG.c.id == line.id).values(record=record))


def _forget_papers(connection: Connection, order_id: int, words: NameWords) -> None:
    for paper in connection.execute(select(PAPERS).where(PAPERS.c.order_id == order_id)).all():
        record = paper_without(paper.record, words)
        connection.execute(update(PAPERS).where(PAPERS.c.id == paper.id).values(record=record))


def _forget_quote(connection: Connection, row: Row[Any], words: NameWords, told: Told) -> None:
    offer = offer_without(row.offer, words)
    texts = {
        "order_record": order_without(row.order_record, words),
        "results": results_without(row.results, words),
        "offer": offer,
        "page": page_without(row.page, offer, told),
    }
    connection.execute(update(QUOTES).where(QUOTES.c.id == row.id).values(**texts))


def _typed(record: str, words: NameWords) -> str:
    return typed_record(typed_without(typed_of(record), words))
