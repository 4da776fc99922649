"""What was answered before there is a workshop, as it was typed; the first workshop ends it."""

from __future__ import annotations

from dataclasses import dataclass

from sqlalchemy import delete, insert, select

from quoting.store.book import Book
from quoting.store.order_content import Typed
from quoting.store.records import typed_of, typed_record
from quoting.store.tables import FIRST_ANSWERS

_ONLY = 1
"""The number of the only row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstAnswers:
    """The fields of all questions so far, and the word of the one that comes next."""

    asks: str
    typed: Typed


def keep_answers(book: Book, answers: FirstAnswers) -> None:
    """Keep what was answered, in place of what was before. Errors: as `Book.writing`."""
    row = {"number": _ONLY, "asks": answers.asks, "typed": typed_record(answers.typed)}
    with book.writing() as connection:
        connection.execute(delete(FIRST_ANSWERS))
        connection.execute(insert(FIRST_ANSWERS).values(row))


def kept_answers(book: Book) -> FirstAnswers | None:
    """Return what was answered last; None where nothing was, or a workshop came of it."""
    with book.reading() as connection:
        row = connection.execute(select(FIRST_ANSWERS)).one_or_none()
    return None if row is None else FirstAnswers(asks=row.asks, typed=typed_of(row.typed))
