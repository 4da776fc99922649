"""What the book tells of finished orders: the quote they were agreed by, and what was done."""

from __future__ import annotations

import pytest

from quoting.core.making.log_lines import Doing, Payment, Remark, Session, Withdrawn
from quoting.core.order.stage import Stage
from quoting.store.book import Book
from quoting.store.finished_orders import finished_orders
from quoting.store.log import add_line
from quoting.store.orders import create_order
from quoting.store.workshops import save_workshop
from tests.examples import TODAY, sample_order, sample_workshop
from tests.store.contents import whole
from tests.store.finished import made_order
from tests.store.moments import NOW, later

SESSION = Session(day=TODAY, doing=Doing.AT_THE_HOOK, minutes=900)


@pytest.fixture(autouse=True)
def _workshop(book: Book) -> None:
    save_workshop(book, sample_workshop(), now=NOW)


def test_a_book_without_any_has_none(book: Book) -> None:
    create_order(book, whole(), now=NOW)
    assert finished_orders(book) == ()


def test_a_finished_order_comes_with_its_quote_its_days_and_its_log(book: Book) -> None:
    order_id = made_order(book, SESSION, Remark(day=TODAY, text="Soft."), now=later(days=20))
    (found,) = finished_orders(book)
    assert (found.id, str(found.number)) == (order_id, "2026-001")
    assert (found.title, found.buyer) == (sample_order().title, "Rosalind Quill")
    assert found.results["quote"]["number"] == "2026-001"
    assert (found.agreed_at, found.finished_at) == (NOW, later(days=20))
    assert found.handed_over_at == later(days=20)
    assert [entry.line for entry in found.log if isinstance(entry.line, Session)] == [SESSION]
    assert not any(isinstance(entry.line, Remark) for entry in found.log)


def test_what_was_corrected_or_taken_back_is_not_told(book: Book) -> None:
    order_id = made_order(book, SESSION, SESSION)
    first, second = (e for e in finished_orders(book)[0].log if isinstance(e.line, Session))
    better = Session(day=TODAY, doing=Doing.AT_THE_HOOK, minutes=90)
    add_line(book, order_id, better, now=later(days=1), corrects=first.id)
    add_line(book, order_id, Withdrawn(), now=later(days=1), corrects=second.id)
    (found,) = finished_orders(book)
    assert [e.line for e in found.log if isinstance(e.line, Session)] == [better]


def test_an_order_that_is_not_finished_is_not_among_them(book: Book) -> None:
    made_order(book, SESSION, stages=(Stage.ON_THE_HOOK,))
    finished = made_order(book, SESSION, stages=(Stage.ON_THE_HOOK, Stage.FINISHED))
    (found,) = finished_orders(book)
    assert (found.id, found.handed_over_at) == (finished, None)


def test_logs_are_told_apart(book: Book) -> None:
    payment = Payment(day=TODAY, amount=sample_workshop().pay.making_per_hour, currency="GBP")
    made_order(book, SESSION, SESSION)
    made_order(book, payment)
    first, second = finished_orders(book)
    assert len([e for e in first.log if isinstance(e.line, Session)]) == 2
    assert [e.line for e in second.log if isinstance(e.line, Payment)] == [payment]
