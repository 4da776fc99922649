"""The list of orders: searched, sorted, by stage, a page at a time."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from enum import StrEnum
from types import MappingProxyType
from typing import Any

from sqlalchemy import ColumnElement, Connection, Numeric, Row, case, cast, func, select

from quoting.core.order.stage import Stage
from quoting.core.quote.given_number import read_number
from quoting.store.book import Book
from quoting.store.order_content import Figures
from quoting.store.order_rows import figures_in, search_key
from quoting.store.quote_content import QuoteLine
from quoting.store.quote_rows import bears, lines_of
from quoting.store.tables import ORDERS, QUOTES

PAGE_SIZE = 50


class SortedBy(StrEnum):
    """What a list is sorted by."""

    CHANGED = "changed"
    STAGE = "stage"
    TITLE = "title"
    BUYER = "buyer"
    WANTED_BY = "wanted-by"
    READY_BY = "ready-by"
    PRICE = "price"
    EARNED_PER_HOUR = "earned-per-hour"
    QUOTE = "quote"


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderQuery:
    """What of the list is asked.

    Every word of `words` is in the title or the buyer's name, or is the number of a quote. No
    `stages` are all of them; `page` counts from 1.
    """

    words: str = ""
    stages: tuple[Stage, ...] = ()
    by: SortedBy = SortedBy.CHANGED
    falling: bool = True
    page: int = 1
    page_size: int = PAGE_SIZE


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderLine:
    """One order as a list shows it; there are figures once it was worked out.

    `quote` is the one that it was agreed by, else the one that was given last.
    """

    id: int
    stage: Stage
    title: str
    buyer: str
    wanted_by: date | None
    changed_at: datetime
    figures: Figures | None
    quote: QuoteLine | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderList:
    """One page of the list. `by_stage` counts all that the words find, whatever the stage."""

    lines: tuple[OrderLine, ...]
    by_stage: Mapping[Stage, int] = field(default_factory=lambda: MappingProxyType({}))
    found: int = 0
    page: int = 1
    pages: int = 1


_FIRST_GIVEN = (
    select(func.min(QUOTES.c.id)).where(QUOTES.c.order_id == ORDERS.c.id).scalar_subquery()
)
"""The first quote of an order: numbers run as they are given, so that it sorts by them."""

_PAST_ALL = 2**31 - 1
"""More than the id of any quote."""

_STAGES = {stage.value: position for position, stage in enumerate(Stage)}

_KEYS: Mapping[SortedBy, ColumnElement[Any]] = MappingProxyType(
    {
        SortedBy.CHANGED: ORDERS.c.changed_at,
        SortedBy.STAGE: case(_STAGES, value=ORDERS.c.stage),
        SortedBy.TITLE: func.nullif(ORDERS.c.title_key, ""),
        SortedBy.BUYER: func.nullif(ORDERS.c.buyer_key, ""),
        SortedBy.WANTED_BY: ORDERS.c.wanted_by,
        SortedBy.READY_BY: ORDERS.c.ready_by,
        SortedBy.PRICE: cast(ORDERS.c.price, Numeric),
        SortedBy.EARNED_PER_HOUR: cast(ORDERS.c.earned_per_hour, Numeric),
    }
)

_ALWAYS_THERE = {SortedBy.CHANGED, SortedBy.STAGE}

_SHOWN = tuple(
    ORDERS.c[name]
    for name in (
        "id", "stage", "title", "buyer", "wanted_by", "changed_at",
        "price", "currency", "earned_per_hour", "hours", "ready_by",
    )
)  # fmt: skip


def list_orders(book: Book, query: OrderQuery) -> OrderList:
    """Return a page of the orders; one past the last is the last.

    Orders that lack what is sorted by come last, whichever way; of equals the latest first.
    """
    with book.reading() as connection:
        by_stage = _count(connection, _words(query.words))
        stages = query.stages or tuple(Stage)
        found = sum(by_stage.get(stage, 0) for stage in stages)
        pages = max(1, -(-found // query.page_size))
        page = min(max(1, query.page), pages)
        wanted = [*_words(query.words), ORDERS.c.stage.in_(stage.value for stage in stages)]
        found_rows = select(*_SHOWN).where(*wanted).order_by(*_order_of(query))
        rows = connection.execute(
            found_rows.limit(query.page_size).offset((page - 1) * query.page_size)
        ).all()
        quotes = _quotes(connection, *(row.id for row in rows))
        lines = tuple(_line(row, quotes.get(row.id)) for row in rows)
    return OrderList(lines=lines, by_stage=by_stage, found=found, page=page, pages=pages)


def _words(words: str) -> list[ColumnElement[bool]]:
    return [_is_found(word) for word in search_key(words).split()]


def _is_found(word: str) -> ColumnElement[bool]:
    found = ORDERS.c.title_key.contains(word, autoescape=True)
    found |= ORDERS.c.buyer_key.contains(word, autoescape=True)
    number = read_number(word)
    if number is None:
        return found
    return found | ORDERS.c.id.in_(select(QUOTES.c.order_id).where(bears(number)))


def _quotes(connection: Connection, *order_ids: int) -> Mapping[int, QuoteLine]:
    """Return the quotes of some orders that a list shows: the agreed one wins over the last."""
    lines = sorted(lines_of(connection, *order_ids), key=lambda line: line.number)
    return {line.order_id: line for line in sorted(lines, key=lambda line: line.is_agreed)}


def _count(connection: Connection, found: list[ColumnElement[bool]]) -> Mapping[Stage, int]:
    counts = select(ORDERS.c.stage, func.count()).where(*found).group_by(ORDERS.c.stage)
    return MappingProxyType({Stage(stage): count for stage, count in connection.execute(counts)})


def _order_of(query: OrderQuery) -> tuple[ColumnElement[Any], ...]:
    if query.by is SortedBy.QUOTE:  # what lacks one is told by its number: to ask twice takes twice
        number = func.coalesce(_FIRST_GIVEN, 0 if query.falling else _PAST_ALL)
        return number.desc() if query.falling else number.asc(), ORDERS.c.id.desc()
    key = _KEYS[query.by]
    lacking = () if query.by in _ALWAYS_THERE else (key.is_(None),)
    return *lacking, key.desc() if query.falling else key.asc(), ORDERS.c.id.desc()


def _line(row: Row[Any], quote: QuoteLine | None) -> OrderLine:
    return OrderLine(
        id=row.id,
        stage=Stage(row.stage),
        title=row.title,
        buyer=row.buyer,
        wanted_by=row.wanted_by,
        changed_at=row.changed_at,
        figures=figures_in(row._mapping),
        quote=quote,
    )
