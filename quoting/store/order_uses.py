"""Which open orders use a yarn, a colour or a stitch pattern of the workshop."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass

from sqlalchemy import select

from quoting.core.order.stage import Stage
from quoting.store.book import Book
from quoting.store.order_renames import FOLLOWING, texts_by_new_names
from quoting.store.records import typed_of
from quoting.store.renames import Renames
from quoting.store.tables import ORDER_TEXTS, ORDERS

CLOSED = frozenset({Stage.FINISHED, Stage.HANDED_OVER, Stage.CALLED_OFF})
"""Stages in which an order takes no more yarn."""

Used = frozenset[tuple[str, str]]
"""Names that an order goes by, each with the key that it stands at."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderUse:
    """An order, and the names of those asked for that it uses."""

    id: int
    title: str
    names: tuple[str, ...]


def order_uses(
    book: Book,
    *,
    yarns: frozenset[str],
    patterns: frozenset[str],
    colours: frozenset[tuple[str, str]],
    renames: Renames | None = None,
) -> tuple[OrderUse, ...]:
    """Return the open orders that use any of these; a colour is given with its yarn.

    What is not yet quoted is looked at as it is after `renames`.
    """
    open_stages = [stage.value for stage in Stage if stage not in CLOSED]
    texts = select(
        ORDERS.c.id, ORDERS.c.title, ORDERS.c.stage, ORDER_TEXTS.c.typed, ORDER_TEXTS.c.record
    )
    of_open = texts.join(ORDER_TEXTS).where(ORDERS.c.stage.in_(open_stages))
    with book.reading() as connection:
        rows = connection.execute(of_open.order_by(ORDERS.c.id)).all()
    uses = []
    for row in rows:
        follows = renames if Stage(row.stage) in FOLLOWING else None
        used = _used(*_texts(row.typed, row.record, follows))
        named = {
            *(name for key, name in used if key == "yarn" and name in yarns),
            *(name for key, name in used if key == "stitch" and name in patterns),
            *(f"{yarn}, {colour}" for yarn, colour in colours if _is_used(used, yarn, colour)),
        }
        if named:
            uses.append(OrderUse(id=row.id, title=row.title, names=tuple(sorted(named))))
    return tuple(uses)


def _is_used(used: Used, yarn: str, colour: str) -> bool:
    return {("yarn", yarn), ("colour", colour)} <= used


def _texts(typed: str, record: str | None, renames: Renames | None) -> tuple[str, str | None]:
    return texts_by_new_names(typed, record, renames) if renames else (typed, record)


def _used(typed_text: str, record: str | None) -> Used:
    """Return what an order goes by: its record, or what was typed while it has none."""
    if record is not None:
        return frozenset(_leaves("", json.loads(record)))
    typed = typed_of(typed_text).items()
    return frozenset((name.rpartition(".")[2], text) for name, texts in typed for text in texts)


def _leaves(key: str, value: object) -> Iterator[tuple[str, str]]:
    match value:
        case str():
            yield key, value
        case list():
            for item in value:
                yield from _leaves(key, item)
        case dict():
            for name, item in value.items():
                yield from _leaves(name, item)
