"""The clock of an order: one runs, whoever starts it, until it is stopped or put away."""

from __future__ import annotations

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.making.log_lines import Doing, Session
from quoting.store.book import Book, open_book
from quoting.store.clocks import drop_clock, running_since, start_clock, stop_clock
from quoting.store.log import log_of
from quoting.store.orders import create_order
from tests.store.contents import whole
from tests.store.moments import NOW, later
from tests.store.refusals import refused


@pytest.fixture
def order_id(book: Book) -> int:
    """Return an order."""
    return create_order(book, whole(), now=NOW).id


def test_a_clock_runs_from_its_start_and_a_second_start_finds_it_running(
    book: Book, order_id: int
) -> None:
    assert running_since(book, order_id) is None
    assert start_clock(book, order_id, now=NOW) == NOW
    assert start_clock(book, order_id, now=later(minutes=7)) == NOW
    assert running_since(book, order_id) == NOW


def test_stopping_writes_down_a_session_with_its_beginning_and_its_minutes(
    book: Book, order_id: int
) -> None:
    start_clock(book, order_id, now=NOW)
    entry = stop_clock(book, order_id, now=later(minutes=42, seconds=15))
    assert entry is not None
    assert entry.line == Session(
        day=NOW.astimezone().date(), doing=Doing.AT_THE_HOOK, minutes=42.25, started=NOW
    )
    assert log_of(book, order_id) == (entry,)
    assert running_since(book, order_id) is None


def test_a_clock_that_was_stopped_elsewhere_is_stopped_once(book: Book, order_id: int) -> None:
    start_clock(book, order_id, now=NOW)
    stop_clock(book, order_id, now=later(minutes=5))
    assert stop_clock(book, order_id, now=later(minutes=6)) is None
    assert len(log_of(book, order_id)) == 1


def test_a_clock_stopped_in_the_moment_of_its_start_has_run_a_little(
    book: Book, order_id: int
) -> None:
    start_clock(book, order_id, now=NOW)
    entry = stop_clock(book, order_id, now=NOW)
    assert entry is not None
    assert isinstance(entry.line, Session)
    assert entry.line.minutes == 0.01


def test_a_clock_that_was_forgotten_for_days_goes_on_and_writes_nothing(
    book: Book, order_id: int
) -> None:
    start_clock(book, order_id, now=NOW)
    told = refused(lambda: stop_clock(book, order_id, now=later(hours=40)))
    assert told == MistakeCode.TOO_LARGE
    assert running_since(book, order_id) == NOW
    assert log_of(book, order_id) == ()


def test_a_clock_that_is_put_away_writes_nothing_down(book: Book, order_id: int) -> None:
    start_clock(book, order_id, now=NOW)
    drop_clock(book, order_id)
    assert running_since(book, order_id) is None
    assert log_of(book, order_id) == ()


def test_each_order_has_a_clock_of_its_own(book: Book, order_id: int) -> None:
    other = create_order(book, whole(), now=NOW).id
    start_clock(book, order_id, now=NOW)
    assert running_since(book, other) is None
    told = refused(lambda: start_clock(book, other + 1, now=NOW))
    assert told == MistakeCode.ORDER_MISSING


def test_a_clock_goes_on_while_the_book_is_closed(address: str) -> None:
    with open_book(address, now=NOW) as book:
        order_id = create_order(book, whole(), now=NOW).id
        start_clock(book, order_id, now=NOW)
    with open_book(address, now=later(hours=1)) as book:
        assert running_since(book, order_id) == NOW
