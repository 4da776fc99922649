"""Orders in the book: begun, saved as they are typed, copied, moved from stage to stage."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from sqlalchemy import Connection, delete, insert, select, update

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.making.log_lines import Moved
from quoting.core.order.stage import Stage, check_step
from quoting.store.book import Book
from quoting.store.order_content import KeptOrder, OrderContent, Overtaken, SetAside
from quoting.store.order_rows import as_kept, listed_columns, order_in, text_columns
from quoting.store.records import typed_of, typed_record
from quoting.store.stages import move_order
from quoting.store.tables import ORDER_TEXTS, ORDERS, SET_ASIDE


def create_order(
    book: Book,
    content: OrderContent,
    *,
    now: datetime,
    writer: str = "",
    stage: Stage = Stage.ASKED,
) -> KeptOrder:
    """Begin an order and return it; one from elsewhere may be at a `stage` already.

    Errors: as `Book.writing`.
    """
    with book.writing() as connection:
        return _insert(connection, content, now, writer, stage)


def kept_order(book: Book, order_id: int) -> KeptOrder:
    """Return an order. Errors: `order-missing`."""
    with book.reading() as connection:
        return _order(connection, order_id)


def save_order(
    book: Book, order_id: int, content: OrderContent, *, revision: int, writer: str, now: datetime
) -> KeptOrder | Overtaken:
    """Keep an order's content, which its writer began to change from a revision.

    Where another writer has saved since, that one's stays; what this one typed is set aside, and
    both are returned. Who wrote last may write again, whatever revision is named: an answer may
    not have reached the page. Errors: `order-missing`.
    """
    with book.writing() as connection:
        kept = _order(connection, order_id)
        if kept.content == as_kept(content):
            _drop_aside(connection, order_id, writer)
            return kept
        if revision != kept.revision and writer != kept.writer:
            aside = SetAside(
                order_id=order_id,
                writer=writer,
                from_revision=revision,
                typed=content.typed,
                kept_at=now,
            )
            _set_aside(connection, aside)
            return Overtaken(kept=kept, aside=aside)
        changes = {"revision": kept.revision + 1, "writer": writer, "changed_at": now}
        _update(connection, order_id, changes | listed_columns(content))
        its = update(ORDER_TEXTS).where(ORDER_TEXTS.c.order_id == order_id)
        connection.execute(its.values(**text_columns(content)))
        _drop_aside(connection, order_id, writer)
        return _order(connection, order_id)


def copy_order(book: Book, order_id: int, *, now: datetime, writer: str = "") -> KeptOrder:
    """Begin an order with the content of another, and return it. Errors: `order-missing`."""
    with book.writing() as connection:
        content = _order(connection, order_id).content
        return _insert(connection, content, now, writer, Stage.ASKED)


def change_stage(book: Book, order_id: int, stage: Stage, *, now: datetime) -> KeptOrder:
    """Put an order to the next stage or back to the last; one called off remembers where it was.

    Errors: `order-missing`; as `check_step`.
    """
    with book.writing() as connection:
        kept = _order(connection, order_id)
        if stage is kept.stage:
            return kept
        check_step(kept.stage, stage)
        return _move(connection, kept, stage, now)


def call_off(book: Book, order_id: int, *, now: datetime) -> KeptOrder:
    """Call an order off, whatever its stage. Errors: `order-missing`."""
    return change_stage(book, order_id, Stage.CALLED_OFF, now=now)


def bring_back_order(book: Book, order_id: int, *, now: datetime) -> KeptOrder:
    """Bring an order that was called off back to the stage it was at; another stays as it is.

    Errors: `order-missing`.
    """
    with book.writing() as connection:
        kept = _order(connection, order_id)
        if kept.stage is not Stage.CALLED_OFF:
            return kept
        return _move(connection, kept, kept.stage_before or Stage.ASKED, now)


def asides_of(book: Book, order_id: int) -> tuple[SetAside, ...]:
    """Return what was set aside of an order, the latest first."""
    query = select(SET_ASIDE).where(SET_ASIDE.c.order_id == order_id)
    with book.reading() as connection:
        rows = connection.execute(query.order_by(SET_ASIDE.c.kept_at.desc()))
        return tuple(SetAside(**{**row._mapping, "typed": typed_of(row.typed)}) for row in rows)


def drop_aside(book: Book, order_id: int, writer: str) -> None:
    """Throw away what was set aside of a writer's."""
    with book.writing() as connection:
        _drop_aside(connection, order_id, writer)


def _order(connection: Connection, order_id: int) -> KeptOrder:
    both = select(ORDERS, ORDER_TEXTS.c.typed, ORDER_TEXTS.c.record).join(ORDER_TEXTS)
    row = connection.execute(both.where(ORDERS.c.id == order_id)).one_or_none()
    if row is None:
        raise refuse("", MistakeCode.ORDER_MISSING)
    return order_in(row)


def _insert(
    connection: Connection, content: OrderContent, now: datetime, writer: str, stage: Stage
) -> KeptOrder:
    row = listed_columns(content) | {
        "revision": 1,
        "writer": writer,
        "stage": stage.value,
        "created_at": now,
        "changed_at": now,
    }
    done = connection.execute(insert(ORDERS).values(**row))
    assert done.inserted_primary_key is not None  # noqa: S101 - for the types
    order_id = done.inserted_primary_key.id
    texts = insert(ORDER_TEXTS).values(order_id=order_id, **text_columns(content))
    connection.execute(texts)
    return _order(connection, order_id)


def _move(connection: Connection, kept: KeptOrder, stage: Stage, now: datetime) -> KeptOrder:
    move_order(connection, kept.id, Moved(stage=stage, before=kept.stage), now=now)
    return _order(connection, kept.id)


def _update(connection: Connection, order_id: int, changes: Mapping[str, object]) -> None:
    connection.execute(update(ORDERS).where(ORDERS.c.id == order_id).values(**changes))


def _set_aside(connection: Connection, aside: SetAside) -> None:
    _drop_aside(connection, aside.order_id, aside.writer)
    row = {name: getattr(aside, name) for name in ("order_id", "writer", "from_revision")}
    row |= {"kept_at": aside.kept_at, "typed": typed_record(aside.typed)}
    connection.execute(insert(SET_ASIDE).values(**row))


def _drop_aside(connection: Connection, order_id: int, writer: str) -> None:
    its = (SET_ASIDE.c.order_id == order_id) & (SET_ASIDE.c.writer == writer)
    connection.execute(delete(SET_ASIDE).where(its))
