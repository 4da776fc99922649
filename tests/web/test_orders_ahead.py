"""A quote on the pages of a book counts the orders that were agreed before it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from sqlalchemy import event

from quoting.schema import order_text
from tests.core.agreed_orders import working
from tests.examples import sample_order, sample_quote
from tests.store.agreements import agree, agree_kept
from tests.store.moments import NOW
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.conftest import maker_in
from tests.web.pages import Page

SHOP = working(2, drying_days=2, post_days=3)
BY_ITSELF = "8 Dec 2026"
"""By hand: 15.90 h at 2 h a day are 8 days from 26 November on, and 5 more."""

AFTER_ONE = "16 Dec 2026"


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker of two hours a day, with nothing agreed."""
    with maker_with_book(tmp_path / "book.db", SHOP) as maker:
        yield maker


def typed(maker: BookMaker, title: str = "New one") -> str:
    """Keep the sample order as it is typed, and return its address."""
    order = sample_order(title=title, wanted_by=date(2026, 12, 12))
    reply = maker.hand_in("/orders/read", "/orders", order_text(order, SHOP.speaks))
    return str(reply.location)


def days_said(page: Page) -> str:
    """Return what a worktable says of the days."""
    sections = page.root.all(lambda n: n.attributes.get("aria-labelledby") == "h-days")
    return next(sections).text


def test_an_order_by_itself_can_be_there_in_time(maker: BookMaker) -> None:
    page = maker.open(typed(maker))
    assert page.figure("Ready by") == BY_ITSELF
    assert "Wanted by 12 December 2026: it can be there in time." in days_said(page)
    assert "It comes after" not in days_said(page)


def test_a_new_order_comes_after_those_that_were_agreed(maker: BookMaker) -> None:
    address = typed(maker)
    agree(maker.book, sample_order(), SHOP, now=NOW)
    page = maker.open(address)
    assert page.figure("Ready by") == f"{AFTER_ONE} wanted 12 Dec 2026"
    said = days_said(page)
    assert "It comes after 1 order agreed before it (15.9 h at most)." in said
    assert "It can be there by 16 December 2026, after 12 December 2026" in said
    assert "in time" not in said


def test_an_agreed_order_does_not_wait_for_itself(maker: BookMaker) -> None:
    first, second = typed(maker, "First"), typed(maker, "Second")
    for address in (first, second):
        order_id = int(address.rpartition("/")[2])
        agree_kept(maker.book, order_id, sample_quote(workshop=SHOP), now=NOW)
    assert maker.open(first).figure("Ready by") == BY_ITSELF
    assert maker.open(second).figure("Ready by").startswith(AFTER_ONE)
    maker.save(first, order__notes="as agreed")
    listed = {row[2]: row[5] for row in maker.open("/orders").table("Title")[1:]}
    assert listed == {"First": BY_ITSELF, "Second": BY_ITSELF}


def test_a_page_that_follows_what_is_typed_counts_them_too(maker: BookMaker) -> None:
    address = typed(maker)
    agree(maker.book, sample_order(), SHOP, now=NOW)
    fields = maker.open(address).typed()
    answered = maker.client.post("/answer", data=fields).text
    assert "It comes after 1 order agreed before it" in answered


def test_the_list_and_the_buyers_page_count_them(maker: BookMaker) -> None:
    agree(maker.book, sample_order(), SHOP, now=NOW)
    address = typed(maker)
    (row,) = [row for row in maker.open("/orders").table("Title") if row[2] == "New one"]
    assert row[5] == AFTER_ONE
    fields = maker.open(address).typed()
    assert "16 December 2026" in maker.client.post("/quote", data=fields).text


def test_the_queue_is_read_once_for_a_page(maker: BookMaker) -> None:
    agree(maker.book, sample_order(), SHOP, now=NOW)
    address = typed(maker)
    asked: list[str] = []

    def note(*args: object) -> None:
        asked.append(str(args[2]))

    event.listen(maker.book.engine, "before_cursor_execute", note)
    maker.open(address)
    assert len([statement for statement in asked if "FROM agreements" in statement]) == 1
    assert not [statement for statement in asked if "results" in statement]


def test_a_workshop_file_has_no_queue() -> None:
    page = maker_in(SHOP).open()
    assert page.figure("Ready by").startswith(BY_ITSELF)
    assert "It comes after" not in days_said(page)


def test_hours_promised_elsewhere_are_told(tmp_path: Path) -> None:
    busy = working(2, drying_days=2, post_days=3, hours_promised=4.0)
    page = maker_in(busy).open()
    assert "It comes after 4 h promised elsewhere." in days_said(page)
    with maker_with_book(tmp_path / "busy.db", busy) as maker:
        agree(maker.book, sample_order(), busy, now=NOW)
        said = days_said(maker.open(typed(maker)))
    assert "after 1 order agreed before it (15.9 h at most) and 4 h promised elsewhere." in said
