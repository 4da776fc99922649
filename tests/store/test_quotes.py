"""A quote that is given is numbered, kept whole and never changed."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import partial

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.quote.given_number import GivenNumber
from quoting.core.quote.offer_rows import RowCode
from quoting.store.book import Book
from quoting.store.orders import create_order
from quoting.store.quote_content import FrozenQuote
from quoting.store.quotes import agreed_quote, give_quote, kept_quote, quotes_of
from quoting.store.workshops import save_workshop
from tests.examples import sample_workshop
from tests.store.contents import whole
from tests.store.given import DAY, frozen
from tests.store.moments import DESK, NOW, later
from tests.store.refusals import refused


@pytest.fixture
def order_id(book: Book) -> int:
    """Return an order in a book with a workshop."""
    save_workshop(book, sample_workshop(), now=NOW)
    return create_order(book, whole(), now=NOW, writer=DESK).id


def test_numbers_run_through_the_year_and_begin_anew_in_the_next(book: Book, order_id: int) -> None:
    other = create_order(book, whole(), now=NOW).id
    third = create_order(book, whole(), now=NOW).id
    given = [
        give_quote(book, order_id, frozen, revision=1, day=DAY, now=NOW),
        give_quote(book, other, frozen, revision=1, day=DAY, now=later(hours=1)),
        give_quote(
            book,
            third,
            lambda number: frozen(number, date(2027, 1, 4)),
            revision=1,
            day=date(2027, 1, 4),
            now=later(days=40),
        ),
    ]
    assert [str(quote.number) for quote in given] == ["2026-001", "2026-002", "2027-001"]


def test_what_was_given_comes_back_as_it_was(book: Book, order_id: int) -> None:
    given = give_quote(book, order_id, frozen, revision=1, day=DAY, now=NOW)
    kept = kept_quote(book, given.number)
    assert kept == given
    assert kept.frozen == replace(frozen(given.number), results=kept.frozen.results)
    total = kept.frozen.offer.row(RowCode.TOTAL)
    assert total is not None
    assert kept.frozen.reckoned_again().price.total == total.amount


def test_a_change_makes_the_next_version_of_the_number(book: Book, order_id: int) -> None:
    give_quote(book, order_id, frozen, revision=1, day=DAY, now=NOW)
    dearer = replace(sample_workshop(), hours_per_week=9)
    second = give_quote(
        book,
        order_id,
        lambda number: replace(frozen(number), workshop=dearer),
        revision=1,
        day=DAY,
        now=later(hours=1),
    )
    assert str(second.number) == "2026-001/2"
    assert [quote.number.version for quote in quotes_of(book, order_id)] == [2, 1]


def test_what_has_not_changed_is_not_given_twice_in_a_day(book: Book, order_id: int) -> None:
    first = give_quote(book, order_id, frozen, revision=1, day=DAY, now=NOW)
    assert give_quote(book, order_id, frozen, revision=1, day=DAY, now=later(seconds=1)) == first
    assert quotes_of(book, order_id) == (first,)


def test_an_order_that_was_changed_meanwhile_is_not_quoted(book: Book, order_id: int) -> None:
    late = partial(give_quote, book, order_id, frozen, revision=2, day=DAY, now=NOW)
    assert refused(late) == MistakeCode.ORDER_OVERTAKEN
    assert quotes_of(book, order_id) == ()


def test_what_fails_takes_no_number(book: Book, order_id: int) -> None:
    def fail(number: GivenNumber) -> FrozenQuote:
        raise ZeroDivisionError(number)

    with pytest.raises(ZeroDivisionError):
        give_quote(book, order_id, fail, revision=1, day=DAY, now=NOW)
    given = give_quote(book, order_id, frozen, revision=1, day=DAY, now=NOW)
    assert str(given.number) == "2026-001"


def test_what_is_not_there_is_told(book: Book, order_id: int) -> None:
    nobodys = partial(give_quote, book, order_id + 1, frozen, revision=1, day=DAY, now=NOW)
    assert refused(nobodys) == MistakeCode.ORDER_MISSING
    assert refused(lambda: kept_quote(book, GivenNumber(2026, 1))) == MistakeCode.QUOTE_MISSING
    assert agreed_quote(book, order_id) is None
