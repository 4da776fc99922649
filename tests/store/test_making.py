"""What is written down of a blanket, and the shelf that goes down by it."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.making.log_lines import LogLine, RowsReached, Withdrawn, YarnTaken, standing
from quoting.core.order.design import ColourSource
from quoting.core.workshop.yarns import Stock
from quoting.store.book import Book
from quoting.store.log import log_of
from quoting.store.making import correct_line, last_of, write_down
from quoting.store.orders import create_order
from quoting.store.shelf import lots_on_shelf
from quoting.store.workshops import current_workshop, save_workshop
from tests.examples import WOOL, sample_workshop, sample_yarn
from tests.store.contents import whole
from tests.store.moments import NOW, later
from tests.store.refusals import refused

DAY = date(2026, 11, 25)
SOURCES = {"oat": ColourSource(yarn=WOOL, colour="oat")}


@pytest.fixture
def order_id(book: Book) -> int:
    """Return an order of a workshop with two part balls of a lot on its shelf."""
    stock = (
        Stock(colour="oat", weight_g=60, lot="771"),
        Stock(colour="oat", weight_g=35, lot="771"),
    )
    workshop = sample_workshop(yarns=(sample_yarn(stock=stock),))
    save_workshop(book, workshop, now=NOW)
    return create_order(book, whole(), now=NOW).id


def taken(grams: float, **changes: Any) -> YarnTaken:
    """Return yarn that was taken from the shelf."""
    facts = {"colour": "oat", "lot": "771", "from_shelf": True} | changes
    return YarnTaken(day=DAY, grams=grams, **facts)


def write(book: Book, order_id: int, *lines: LogLine, seen: int | None = None) -> None:
    write_down(book, order_id, lines, SOURCES, now=later(minutes=1), seen=seen)


def on_shelf(book: Book) -> list[float]:
    return [lot.grams for lot in lots_on_shelf(book)]


def test_what_is_taken_from_the_shelf_is_gone_from_it(book: Book, order_id: int) -> None:
    first, second = (lot.id for lot in lots_on_shelf(book))
    write(book, order_id, taken(20))
    assert on_shelf(book) == [40, 35]
    write(book, order_id, taken(50))
    assert on_shelf(book) == [25]
    assert [lot.id for lot in lots_on_shelf(book)] == [second] != [first]
    kept = current_workshop(book)
    assert kept is not None
    assert kept.version.number == 1
    assert [ball.weight_g for ball in kept.workshop.yarn(WOOL).stock] == [25]


def test_a_lot_that_is_used_up_is_gone(book: Book, order_id: int) -> None:
    write(book, order_id, taken(95))
    assert on_shelf(book) == []


def test_more_than_a_lot_has_is_refused_and_nothing_is_written(book: Book, order_id: int) -> None:
    reached = RowsReached(day=DAY, rows=4)
    told = refused(lambda: write(book, order_id, reached, taken(95.5)))
    assert told == MistakeCode.LOT_TOO_SMALL
    assert (on_shelf(book), log_of(book, order_id)) == ([60, 35], ())


@pytest.mark.parametrize("line", [taken(5, lot="772"), taken(5, colour="teal")])
def test_a_lot_or_a_colour_that_is_not_there_is_refused(
    book: Book, order_id: int, line: YarnTaken
) -> None:
    told = refused(lambda: write(book, order_id, line))
    assert told in {MistakeCode.LOT_MISSING, MistakeCode.UNKNOWN_COLOUR}
    assert on_shelf(book) == [60, 35]


def test_new_balls_leave_the_shelf_alone(book: Book, order_id: int) -> None:
    write(book, order_id, taken(400, from_shelf=False))
    assert on_shelf(book) == [60, 35]


def test_a_correction_gives_back_what_was_not_taken(book: Book, order_id: int) -> None:
    write(book, order_id, taken(50))
    (entry,) = log_of(book, order_id)
    (right,) = correct_line(book, order_id, entry.id, (taken(5),), SOURCES, now=NOW)
    assert on_shelf(book) == [55, 35]
    correct_line(book, order_id, right.id, (Withdrawn(),), SOURCES, now=NOW)
    assert on_shelf(book) == [60, 35]
    assert standing(log_of(book, order_id)) == ()


def test_what_comes_back_of_a_lot_that_was_used_up_is_a_ball_of_its_own(
    book: Book, order_id: int
) -> None:
    write(book, order_id, taken(95))
    (entry,) = log_of(book, order_id)
    correct_line(book, order_id, entry.id, (Withdrawn(),), SOURCES, now=NOW)
    assert [(lot.lot, lot.grams) for lot in lots_on_shelf(book)] == [("771", 95)]


def test_a_correction_may_write_more_lines_beside(book: Book, order_id: int) -> None:
    write(book, order_id, RowsReached(day=DAY, rows=40))
    (entry,) = log_of(book, order_id)
    lines = (RowsReached(day=DAY, rows=4), taken(5))
    written = correct_line(book, order_id, entry.id, lines, SOURCES, now=NOW)
    assert [line.corrects for line in written] == [entry.id, None]
    assert standing(log_of(book, order_id)) == written


def test_a_line_that_was_corrected_before_is_refused_and_gives_nothing_back_twice(
    book: Book, order_id: int
) -> None:
    write(book, order_id, taken(50))
    (entry,) = log_of(book, order_id)
    take_back = (book, order_id, entry.id, (Withdrawn(),), SOURCES)
    correct_line(*take_back, now=NOW)
    assert refused(lambda: correct_line(*take_back, now=NOW)) == MistakeCode.LOG_LINE_MISSING
    assert on_shelf(book) == [60, 35]


def test_a_page_that_has_not_seen_the_last_line_is_told(book: Book, order_id: int) -> None:
    reached = RowsReached(day=DAY, rows=4)
    write(book, order_id, reached, seen=0)
    told = refused(lambda: write(book, order_id, reached, seen=0))
    assert told == MistakeCode.LOG_OVERTAKEN
    write(book, order_id, reached, seen=last_of(log_of(book, order_id)))
    assert len(log_of(book, order_id)) == 2


def test_an_order_that_is_not_there_is_refused(book: Book, order_id: int) -> None:
    told = refused(lambda: write(book, order_id + 1, RowsReached(day=DAY, rows=4)))
    assert told == MistakeCode.ORDER_MISSING
