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
from quoting.store.book import Book
from quoting.store.order_content import Figures
from quoting.store.order_rows import figures_in, search_key
from quoting.store.tables import ORDERS

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


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderQuery:
    """What of the list is asked: every word of `words` is in the title or the buyer's name.

    No `stages` are all of them; `page` counts from 1.
    """

    words: str = ""
    stages: tuple[Stage, ...] = ()
    by: SortedBy = SortedBy.CHANGED
    falling: bool = True
    page: int = 1
    page_size: int = PAGE_SIZE


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderLine:
    """One order as a list shows it; there are figures once it was worked out."""

    id: int
    stage: Stage
    title: str
    buyer: str
    wanted_by: date | None
    changed_at: datetime
    figures: Figures | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderList:
    """One page of the list. `by_stage` counts all that the words find, whatever the stage."""

    lines: tuple[OrderLine, ...]
    by_stage: Mapping[Stage, int] = field(default_factory=lambda: MappingProxyType({}))
    found: int = 0
    page: int = 1
    pages: int = 1


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
        )
        lines = tuple(_line(row) for row in rows)
    return OrderList(lines=lines, by_stage=by_stage, found=found, page=page, pages=pages)


def _words(words: str) -> list[ColumnElement[bool]]:
    return [
        ORDERS.c.title_key.contains(word, autoescape=True)
        | ORDERS.c.buyer_key.contains(word, autoescape=True)
        for word in search_key(words).split()
    ]


def _count(connection: Connection, found: list[ColumnElement[bool]]) -> Mapping[Stage, int]:
    counts = select(ORDERS.c.stage, func.count()).where(*found).group_by(ORDERS.c.stage)
    return MappingProxyType({Stage(stage): count for stage, count in connection.execute(counts)})


def _order_of(query: OrderQuery) -> tuple[ColumnElement[Any], ...]:
    key = _KEYS[query.by]
    lacking = () if query.by in _ALWAYS_THERE else (key.is_(None),)
    return *lacking, key.desc() if query.falling else key.asc(), ORDERS.c.id.desc()


def _line(row: Row[Any]) -> OrderLine:
    return OrderLine(
        id=row.id,
        stage=Stage(row.stage),
        title=row.title,
        buyer=row.buyer,
        wanted_by=row.wanted_by,
        changed_at=row.changed_at,
        figures=figures_in(row._mapping),
    )
