"""The queue of a book: what was agreed and is not finished, by when it was agreed."""

from __future__ import annotations

from datetime import date

import pytest
from sqlalchemy import event

from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.store.book import Book
from quoting.store.orders import call_off, create_order
from quoting.store.queue import KeptQueue, WithoutQuote, agreed_without_quote, kept_queue
from quoting.store.workshops import save_workshop
from tests.examples import sample_order, sample_quote, sample_workshop
from tests.store.agreements import agree
from tests.store.contents import whole
from tests.store.moments import NOW, later

SHOP = sample_workshop()


@pytest.fixture(autouse=True)
def workshop(book: Book) -> None:
    """Keep the workshop that the quotes are given by."""
    save_workshop(book, SHOP, now=NOW)


def named(title: str) -> Order:
    return sample_order(title=title, buyer="Tam Fell", wanted_by=date(2027, 1, 30))


def titles(queue: KeptQueue) -> list[str]:
    return [order.title for order in queue.orders]


def test_an_order_waits_with_what_its_quote_said(book: Book) -> None:
    order_id = agree(book, named("Cot blanket"), SHOP, now=later(days=2), quoted=NOW)
    (order,) = kept_queue(book).orders
    quote = sample_quote()
    assert (order.order_id, order.title, order.buyer) == (order_id, "Cot blanket", "Tam Fell")
    assert order.hours == float(quote.estimate.hours.high)
    assert order.yarn_bought
    assert order.promised_by == quote.ready_by
    assert order.wanted_by == date(2027, 1, 30)
    assert order.agreed_on == later(days=2).astimezone().date()
    assert not order.on_the_hook


def test_orders_wait_in_the_order_in_which_they_were_agreed(book: Book) -> None:
    agree(book, named("later"), SHOP, now=later(days=3))
    agree(book, named("sooner"), SHOP, now=later(days=1))
    agree(book, named("begun"), SHOP, now=later(days=2), stage=Stage.ON_THE_HOOK)
    queue = kept_queue(book)
    assert titles(queue) == ["sooner", "begun", "later"]
    assert [order.on_the_hook for order in queue.orders] == [False, True, False]


@pytest.mark.parametrize("stage", [Stage.FINISHED, Stage.HANDED_OVER, Stage.QUOTED])
def test_what_is_finished_or_not_agreed_waits_no_longer(book: Book, stage: Stage) -> None:
    agree(book, named("past"), SHOP, now=NOW, stage=stage)
    assert kept_queue(book) == KeptQueue()


def test_what_is_called_off_leaves_the_queue(book: Book) -> None:
    order_id = agree(book, named("gone"), SHOP, now=NOW)
    call_off(book, order_id, now=later(hours=1))
    assert kept_queue(book).orders == ()


def test_what_was_agreed_by_no_quote_is_told_and_not_counted(book: Book) -> None:
    order_id = create_order(book, whole(title="Old one"), now=NOW, stage=Stage.AGREED).id
    agree(book, named("by a quote"), SHOP, now=NOW)
    assert titles(kept_queue(book)) == ["by a quote"]
    assert agreed_without_quote(book) == (WithoutQuote(order_id=order_id, title="Old one"),)


def test_a_quote_is_read_once(book: Book) -> None:
    first = agree(book, named("first"), SHOP, now=NOW)
    known = kept_queue(book)
    agree(book, named("second"), SHOP, now=later(hours=1))
    asked: list[str] = []

    def note(*args: object) -> None:
        asked.append(f"{args[2]} {args[3]}")

    event.listen(book.engine, "before_cursor_execute", note)
    both = kept_queue(book, known)
    again = kept_queue(book, both)
    assert both == again == kept_queue(book)
    assert known.quotes.items() < both.quotes.items()
    assert first == known.orders[0].order_id
    results = [statement for statement in asked if "results" in statement]
    assert len(results) == 2, "the second is read as it comes, and both by whoever knows none"
