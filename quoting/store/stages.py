"""Orders put from stage to stage within a transaction: none without a line in its log."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import Connection, delete, select, update

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.making.log_lines import Moved
from quoting.core.order.stage import Stage
from quoting.store.log import put_line
from quoting.store.tables import AGREEMENTS, ORDERS

_NOT_AGREED = frozenset({Stage.ASKED, Stage.QUOTED})


def stage_of(connection: Connection, order_id: int) -> Stage:
    """Return the stage of an order. Errors: `order-missing`."""
    stage = connection.scalar(select(ORDERS.c.stage).where(ORDERS.c.id == order_id))
    if stage is None:
        raise refuse("", MistakeCode.ORDER_MISSING)
    return Stage(stage)


def move_order(connection: Connection, order_id: int, moved: Moved, *, now: datetime) -> None:
    """Put an order at a stage, and write that down; one that is called off keeps where it was.

    An order that is put back before its agreement is agreed no longer.
    """
    before = moved.before.value if moved.stage is Stage.CALLED_OFF else None
    changes = {"stage": moved.stage.value, "stage_before": before, "changed_at": now}
    connection.execute(update(ORDERS).where(ORDERS.c.id == order_id).values(**changes))
    if moved.stage in _NOT_AGREED:
        connection.execute(delete(AGREEMENTS).where(AGREEMENTS.c.order_id == order_id))
    put_line(connection, order_id, moved, now=now)
