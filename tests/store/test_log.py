"""The log of an order: every line comes back; a correction stands in the place of its line."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest
from sqlalchemy import insert
from sqlalchemy.exc import IntegrityError

from quoting.core.ground.codes import MistakeCode
from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogLine,
    Moved,
    Payment,
    Remark,
    RowsReached,
    Session,
    Withdrawn,
    YarnTaken,
    YarnUsed,
    standing,
)
from quoting.core.order.stage import Stage
from quoting.store.book import Book
from quoting.store.log import add_line, log_of, logs_of
from quoting.store.orders import create_order
from quoting.store.tables import LOG
from tests.store.contents import whole
from tests.store.moments import NOW, later
from tests.store.refusals import refused

DAY = date(2026, 11, 25)

LINES: tuple[LogLine, ...] = (
    Session(
        day=DAY,
        doing=Doing.AT_THE_HOOK,
        minutes=42.5,
        started=NOW,
        first_row=3,
        last_row=9,
    ),
    Session(day=DAY, doing=Doing.WEAVING_IN, minutes=20),
    RowsReached(day=DAY, rows=31),
    YarnUsed(day=DAY, colour="teal", rows=25, balls=1, ball_g=100),
    YarnUsed(day=DAY, colour="oat", rows=31, grams=38.5),
    YarnTaken(day=DAY, colour="oat", grams=100, lot="771", cost=Decimal("4.60")),
    YarnTaken(day=DAY, colour="rust", grams=60, from_shelf=True),
    EndsWoven(day=DAY, ends=12),
    Payment(day=DAY, amount=Decimal("-12.50"), currency="GBP"),
    Remark(day=DAY, text="She would like the rust a little wider.\nSaid yes."),
    Moved(stage=Stage.AGREED, before=Stage.QUOTED, quote="2026-001/2"),
    Withdrawn(),
)


@pytest.fixture
def order_id(book: Book) -> int:
    """Return an order."""
    return create_order(book, whole(), now=NOW).id


def test_every_kind_of_line_comes_back_as_it_was_written(book: Book, order_id: int) -> None:
    written = tuple(add_line(book, order_id, line, now=later(minutes=1)) for line in LINES)
    assert log_of(book, order_id) == written
    assert tuple(entry.line for entry in written) == LINES


def test_a_correction_stands_in_the_place_of_what_was_wrong(book: Book, order_id: int) -> None:
    wrong = add_line(book, order_id, RowsReached(day=DAY, rows=310), now=NOW)
    right = add_line(
        book, order_id, RowsReached(day=DAY, rows=31), now=later(minutes=1), corrects=wrong.id
    )
    entries = log_of(book, order_id)
    assert entries == (wrong, right)
    assert standing(entries) == (right,)
    add_line(book, order_id, Withdrawn(), now=later(minutes=2), corrects=right.id)
    assert standing(log_of(book, order_id)) == ()


def test_a_line_is_corrected_once_and_only_where_it_stands(book: Book, order_id: int) -> None:
    other = create_order(book, whole(), now=NOW).id
    line = add_line(book, order_id, EndsWoven(day=DAY, ends=2), now=NOW)
    add_line(book, order_id, Withdrawn(), now=NOW, corrects=line.id)
    for order, corrects in ((order_id, line.id), (other, line.id), (order_id, line.id + 7)):
        told = refused(
            lambda o=order, c=corrects: add_line(  # type: ignore[misc]
                book, o, Withdrawn(), now=NOW, corrects=c
            )
        )
        assert told == MistakeCode.LOG_LINE_MISSING


def test_the_logs_of_several_orders_are_told_apart(book: Book, order_id: int) -> None:
    other = create_order(book, whole(), now=NOW).id
    mine = add_line(book, order_id, EndsWoven(day=DAY, ends=2), now=NOW)
    assert logs_of(book, (order_id, other)) == {order_id: (mine,), other: ()}
    told = refused(lambda: add_line(book, other + 1, Remark(day=DAY, text="?"), now=NOW))
    assert told == MistakeCode.ORDER_MISSING


def test_a_failure_that_nobody_foresaw_bears_no_word_of_what_was_written(book: Book) -> None:
    order = create_order(book, whole(), now=NOW)
    entry = add_line(book, order.id, Remark(day=DAY, text="first"), now=NOW)
    row = {"id": entry.id, "order_id": order.id, "at": NOW, "kind": "remark"}
    with pytest.raises(IntegrityError) as failure, book.writing() as connection:
        connection.execute(insert(LOG).values(**row, record="Maud Hollin rang"))
    assert "Maud" not in str(failure.value)
