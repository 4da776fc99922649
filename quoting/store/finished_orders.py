"""Every finished order with the quote that it was agreed by and its log, in two queries."""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, Select, select

from quoting.core.making.log_lines import LogEntry, Moved, Withdrawn
from quoting.core.order.stage import Stage
from quoting.core.quote.given_number import GivenNumber
from quoting.schema.log_shapes import log_kind
from quoting.store.book import Book
from quoting.store.log import entry_in
from quoting.store.tables import AGREEMENTS, LOG, ORDERS, QUOTES

DONE = (Stage.FINISHED, Stage.HANDED_OVER)


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedOrder:
    """A finished order: `results` are those of its agreed quote, as `quote_record` writes them.

    `log` has the lines that hold, without remarks. `handed_over_at` is None until it was.
    """

    id: int
    title: str
    buyer: str
    number: GivenNumber
    agreed_at: datetime
    finished_at: datetime
    handed_over_at: datetime | None
    results: Mapping[str, Any]
    log: tuple[LogEntry, ...]


def finished_orders(book: Book) -> tuple[FinishedOrder, ...]:
    """Return the orders that are finished or handed over and were agreed by a quote, by number.

    An order that came to its stage without a line in its log was finished when it changed last.
    """
    with book.reading() as connection:
        logs = _logs(connection)
        rows = connection.execute(_agreed())
        return tuple(_order(row, logs.get(row.id, ())) for row in rows)


def _agreed() -> Select[Any]:
    shown = (ORDERS.c[name] for name in ("id", "title", "buyer", "stage", "changed_at"))
    numbered = (QUOTES.c[name] for name in ("year", "running", "version", "results"))
    both = select(*shown, *numbered, AGREEMENTS.c.agreed_at)
    joined = both.join(AGREEMENTS, AGREEMENTS.c.order_id == ORDERS.c.id).join(
        QUOTES, QUOTES.c.id == AGREEMENTS.c.quote_id
    )
    return joined.where(ORDERS.c.stage.in_(DONE)).order_by(QUOTES.c.year, QUOTES.c.running)


def _logs(connection: Connection) -> Mapping[int, tuple[LogEntry, ...]]:
    """Return the lines that hold of every finished order."""
    corrected = select(LOG.c.corrects).where(LOG.c.corrects.is_not(None))
    unread = (log_kind(Withdrawn()), "remark")
    lines = select(LOG).join(ORDERS, ORDERS.c.id == LOG.c.order_id)
    wanted = lines.where(
        ORDERS.c.stage.in_(DONE), LOG.c.id.not_in(corrected), LOG.c.kind.not_in(unread)
    )
    logs: dict[int, list[LogEntry]] = defaultdict(list)
    for row in connection.execute(wanted.order_by(LOG.c.id)):
        logs[row.order_id].append(entry_in(row))
    return {order_id: tuple(entries) for order_id, entries in logs.items()}


def _order(row: Row[Any], log: tuple[LogEntry, ...]) -> FinishedOrder:
    reached = {entry.line.stage: entry.at for entry in log if isinstance(entry.line, Moved)}
    handed_over = reached.get(Stage.HANDED_OVER) if row.stage == Stage.HANDED_OVER else None
    return FinishedOrder(
        id=row.id,
        title=row.title,
        buyer=row.buyer,
        number=GivenNumber(row.year, row.running, row.version),
        agreed_at=row.agreed_at,
        finished_at=reached.get(Stage.FINISHED) or handed_over or row.changed_at,
        handed_over_at=handed_over,
        results=json.loads(row.results),
        log=log,
    )
