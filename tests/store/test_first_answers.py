"""What is answered before there is a workshop is kept as typed, until there is one."""

from __future__ import annotations

from quoting.store.book import Book, open_book
from quoting.store.first_answers import FirstAnswers, keep_answers, kept_answers
from quoting.store.workshops import save_workshop
from tests.examples import sample_workshop
from tests.store.moments import NOW

NAMED = FirstAnswers(asks="yarn", typed={"workshop.name": ("Hollin Edge",)})
HALF = FirstAnswers(asks="end", typed={"yarns.1.name": ("",), "removed": ("a\x00", "1OO 🧶")})


def test_a_new_book_has_no_answers(book: Book) -> None:
    assert kept_answers(book) is None


def test_the_latest_answers_take_the_place_of_the_earlier(book: Book) -> None:
    keep_answers(book, NAMED)
    keep_answers(book, HALF)
    assert kept_answers(book) == HALF


def test_answers_are_there_when_the_book_is_opened_again(address: str) -> None:
    with open_book(address, now=NOW) as book:
        keep_answers(book, NAMED)
    with open_book(address, now=NOW) as again:
        assert kept_answers(again) == NAMED


def test_a_workshop_ends_them(book: Book) -> None:
    keep_answers(book, NAMED)
    save_workshop(book, sample_workshop(), now=NOW)
    assert kept_answers(book) is None
