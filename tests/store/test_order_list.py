"""The list of orders is searched, sorted and turned over page by page, alike on every database."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from quoting.core.order.stage import Stage
from quoting.store.book import Book
from quoting.store.order_content import OrderContent
from quoting.store.order_list import OrderList, OrderQuery, SortedBy, list_orders
from quoting.store.orders import call_off, create_order
from quoting.store.workshops import save_workshop
from tests.examples import sample_workshop
from tests.store.contents import FIGURES, half, priced, whole
from tests.store.given import give, put_at
from tests.store.moments import NOW, later


def keep(book: Book, *contents: OrderContent, stage: Stage = Stage.ASKED) -> None:
    """Begin orders, a minute after one another."""
    for minutes, content in enumerate(contents):
        create_order(book, content, now=later(minutes=minutes), stage=stage)


def titles(found: OrderList) -> list[str]:
    return [line.title for line in found.lines]


def ask(book: Book, **what: Any) -> list[str]:
    return titles(list_orders(book, OrderQuery(**what)))


def test_an_empty_book_has_a_page_with_nothing_on_it(book: Book) -> None:
    assert list_orders(book, OrderQuery()) == OrderList(lines=())


def test_a_line_has_what_a_list_shows(book: Book) -> None:
    order = create_order(book, whole(), now=NOW)
    (line,) = list_orders(book, OrderQuery()).lines
    assert (line.id, line.stage, line.changed_at) == (order.id, Stage.ASKED, NOW)
    assert (line.title, line.buyer) == ("Cot blanket in moorland stripes", "Rosalind Quill")
    assert (line.wanted_by, line.figures) == (date(2027, 3, 20), FIGURES)


def test_the_latest_change_comes_first(book: Book) -> None:
    keep(book, half("first"), half("second"))
    call_off(book, 1, now=later(hours=1))
    assert ask(book) == ["first", "second"]


def test_amounts_are_sorted_as_numbers(book: Book) -> None:
    keep(book, *(priced(price) for price in ("9.50", "100", "84.00", "1E+3")))
    rising = ["At 9.50", "At 84.00", "At 100", "At 1E+3"]
    assert ask(book, by=SortedBy.PRICE, falling=False) == rising
    assert ask(book, by=SortedBy.PRICE) == rising[::-1]


@pytest.mark.parametrize("by", SortedBy)
def test_an_order_that_lacks_what_is_sorted_by_comes_last_either_way(
    book: Book, by: SortedBy
) -> None:
    keep(book, replace(half(), buyer=""), whole())
    lacks = {SortedBy.CHANGED, SortedBy.STAGE}
    for falling in (True, False):
        last = list_orders(book, OrderQuery(by=by, falling=falling)).lines[-1]
        assert (last.figures is None) or by in lacks


def test_days_are_sorted_by_the_calendar(book: Book) -> None:
    keep(
        book,
        half("late", wanted_by=date(2027, 10, 1)),
        half("soon", wanted_by=date(2027, 2, 9)),
        half("never"),
    )
    assert ask(book, by=SortedBy.WANTED_BY, falling=False) == ["soon", "late", "never"]


def test_stages_are_sorted_by_the_work(book: Book) -> None:
    for stage in reversed(Stage):
        keep(book, half(stage.value), stage=stage)
    assert ask(book, by=SortedBy.STAGE, falling=False) == [stage.value for stage in Stage]


def test_names_are_sorted_whatever_their_capitals_and_accents(book: Book) -> None:
    keep(book, half("Zebra"), half("ärmel"), half("Azur"), half("arm"))
    assert ask(book, by=SortedBy.TITLE, falling=False) == ["arm", "ärmel", "Azur", "Zebra"]


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("cot", ["Cot blanket"]),
        ("BLANKET", ["Pram blanket", "Cot blanket"]),
        ("quill cot", ["Cot blanket"]),
        ("zoe", ["Pram blanket"]),
        ("100%", []),
        ("_", []),
        ("50% w", ["A rug, 50% wool"]),
        ("  ", ["A rug, 50% wool", "Pram blanket", "Cot blanket"]),
        ("'; DROP TABLE orders; --", []),
    ],
)
def test_every_word_is_looked_for_in_title_and_buyer(
    book: Book, words: str, found: list[str]
) -> None:
    keep(
        book,
        half("Cot blanket", buyer="Rosalind Quill"),
        half("Pram blanket", buyer="Zoë Fenn"),
        half("A rug, 50% wool"),
    )
    assert ask(book, words=words) == found


def test_stages_choose_the_lines_and_are_counted_for_all_that_is_found(book: Book) -> None:
    keep(book, half("one"), half("two"), half("another"))
    keep(book, half("one more"), stage=Stage.AGREED)
    found = list_orders(book, OrderQuery(words="o", stages=(Stage.AGREED, Stage.FINISHED)))
    assert titles(found) == ["one more"]
    assert found.by_stage == {Stage.ASKED: 3, Stage.AGREED: 1}
    assert (found.found, found.pages) == (1, 1)


def test_pages_hold_every_order_once(book: Book) -> None:
    keep(book, *(half(str(number)) for number in range(7)))
    pages = [list_orders(book, OrderQuery(page=page, page_size=3)) for page in (1, 2, 3)]
    assert [title for page in pages for title in titles(page)] == list("6543210")
    assert {(page.found, page.pages) for page in pages} == {(7, 3)}


@pytest.mark.parametrize(("asked", "given"), [(99, 3), (0, 1), (-5, 1)])
def test_a_page_that_there_is_not_is_the_nearest(book: Book, asked: int, given: int) -> None:
    keep(book, *(half(str(number)) for number in range(7)))
    assert list_orders(book, OrderQuery(page=asked, page_size=3)).page == given


def test_equals_have_an_order_of_their_own(book: Book) -> None:
    for _ in range(5):
        create_order(book, priced("84.00"), now=NOW)
    for by in SortedBy:
        lines = list_orders(book, OrderQuery(by=by)).lines
        assert [line.id for line in lines] == [5, 4, 3, 2, 1]


def test_orders_are_sorted_and_found_by_the_numbers_of_their_quotes(book: Book) -> None:
    save_workshop(book, sample_workshop(), now=NOW)
    for title in ("One", "Two", "Three"):
        keep(book, half(title))
    for order_id in (2, 1):
        give(book, order_id)
    give(book, 2, title="Another")
    found = list_orders(book, OrderQuery(by=SortedBy.QUOTE, falling=False)).lines
    assert [(line.title, line.quote and str(line.quote.number)) for line in found] == [
        ("Two", "2026-001/2"),
        ("One", "2026-002"),
        ("Three", None),
    ]
    assert ask(book, words="2026-001") == ["Two"]
    assert ask(book, words="one 2026-002") == ["One"]
    assert ask(book, words="one 2026-001") == []


def test_the_quote_that_was_agreed_by_is_shown_before_a_later_one(book: Book) -> None:
    save_workshop(book, sample_workshop(), now=NOW)
    keep(book, half("One"))
    put_at(book, 1, Stage.AGREED)
    give(book, 1, title="Another")
    (line,) = list_orders(book, OrderQuery()).lines
    assert line.quote is not None
    assert (str(line.quote.number), line.quote.is_agreed) == ("2026-001", True)
