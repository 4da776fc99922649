"""An order's content as the columns of rows, and rows as the order they keep."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from sqlalchemy import Row

from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.store.order_content import Figures, KeptOrder, OrderContent
from quoting.store.records import order_of, order_record, typed_of, typed_record

MOST_LISTED = 200
"""Characters of a title or a buyer that a list keeps; what was typed is kept whole."""


def listed_columns(content: OrderContent) -> dict[str, object]:
    """Return what lists show of an order's content."""
    content, figures = as_kept(content), content.figures
    return {
        "title": content.title,
        "title_key": search_key(content.title),
        "buyer": content.buyer,
        "buyer_key": search_key(content.buyer),
        "wanted_by": content.wanted_by,
        "price": figures and figures.price,
        "currency": figures and figures.currency,
        "earned_per_hour": figures and figures.earned_per_hour,
        "hours": figures and figures.hours,
        "ready_by": figures and figures.ready_by,
    }


def text_columns(content: OrderContent) -> dict[str, object]:
    """Return what was typed of an order's content, and its record."""
    return {
        "typed": typed_record(content.typed),
        "record": content.order and order_record(content.order),
    }


def as_kept(content: OrderContent) -> OrderContent:
    """Return an order's content with its title and its buyer as a list has them."""
    return replace(content, title=_listed(content.title), buyer=_listed(content.buyer))


def order_in(row: Row[Any]) -> KeptOrder:
    """Return the order that a row keeps, its texts beside it."""
    content = OrderContent(
        typed=typed_of(row.typed),
        title=row.title,
        buyer=row.buyer,
        wanted_by=row.wanted_by,
        order=_order_of(row.record),
        figures=figures_in(row._mapping),
    )
    return KeptOrder(
        id=row.id,
        revision=row.revision,
        writer=row.writer,
        stage=Stage(row.stage),
        stage_before=None if row.stage_before is None else Stage(row.stage_before),
        created_at=row.created_at,
        changed_at=row.changed_at,
        content=content,
    )


def _order_of(record: str | None) -> Order | None:
    """Return the order of a record; what was whole once may not be to a later version's limits.

    What was typed is there all the same, and tells what is wrong with it.
    """
    try:
        return None if record is None else order_of(record)
    except Refused:
        return None


def figures_in(columns: Mapping[Any, Any]) -> Figures | None:
    """Return the figures that a row keeps, None where the order was not worked out."""
    if columns["price"] is None:
        return None
    names = ("price", "currency", "earned_per_hour", "hours", "ready_by")
    return Figures(**{name: columns[name] for name in names})


def search_key(text: str) -> str:
    """Return a text as it is searched and sorted by: without capitals and accents."""
    parts = unicodedata.normalize("NFKD", text.casefold())
    return "".join(char for char in parts if not unicodedata.combining(char))


def _listed(text: str) -> str:
    """Return the beginning of a text in one line, of signs that every database takes."""
    shown = "".join(char if char.isprintable() else " " for char in text[:MOST_LISTED])
    return shown.strip()
