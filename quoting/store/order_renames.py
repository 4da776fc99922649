"""Orders that are not yet quoted follow the names of the workshop."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from typing import Any

from sqlalchemy import Connection, Row, select, update

from quoting.core.order.stage import Stage
from quoting.store.records import typed_of, typed_record
from quoting.store.renames import Renames
from quoting.store.tables import ORDER_TEXTS, ORDERS

FOLLOWING = frozenset({Stage.ASKED})
"""Stages in which an order goes by the names of today: nobody was told another yet."""

CLOSED = frozenset({Stage.FINISHED, Stage.HANDED_OVER, Stage.CALLED_OFF})
"""Stages in which an order takes no more yarn."""


def rename_in_orders(connection: Connection, renames: Renames) -> None:
    """Put the new names into every order that follows them, typed and worked out.

    An order that is changed by it has a new revision of nobody's, so that a page which was open
    meanwhile does not bring the old names back in silence. One that was told goes by none of the
    names, or they could not be changed; but what rests in its form may, and is renamed there.
    """
    for row in _in_stages(connection, FOLLOWING):
        typed, record = texts_by_new_names(row.typed, row.record, renames)
        if (typed, record) != (row.typed, row.record):
            its = update(ORDER_TEXTS).where(ORDER_TEXTS.c.order_id == row.id)
            connection.execute(its.values(typed=typed, record=record))
            order = update(ORDERS).where(ORDERS.c.id == row.id)
            connection.execute(order.values(revision=row.revision + 1, writer=""))
    for row in _in_stages(connection, frozenset(Stage) - FOLLOWING - CLOSED):
        typed, _ = texts_by_new_names(row.typed, None, renames)
        if typed != row.typed:
            its = update(ORDER_TEXTS).where(ORDER_TEXTS.c.order_id == row.id)
            connection.execute(its.values(typed=typed))


def _in_stages(connection: Connection, stages: Iterable[Stage]) -> Sequence[Row[Any]]:
    """Return the orders in some stages, with what is kept of their texts."""
    columns = [ORDERS.c.id, ORDERS.c.revision, ORDER_TEXTS.c.typed, ORDER_TEXTS.c.record]
    there = ORDERS.c.stage.in_([stage.value for stage in stages])
    return connection.execute(select(*columns).join(ORDER_TEXTS).where(there)).all()


def texts_by_new_names(typed: str, record: str | None, renames: Renames) -> tuple[str, str | None]:
    """Return what a row keeps of an order, by the new names."""
    changed = None if record is None else json.dumps(renames.record(json.loads(record)))
    return typed_record(renames.typed(typed_of(typed))), changed
