"""The papers of orders in the book: numbered as they are made, and never changed afterwards."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, func, insert, select

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.papers.head import PaperKind
from quoting.core.papers.series import PaperFacts, cancelling, kind_of, numbered, same_again
from quoting.core.quote.given_number import GivenNumber
from quoting.schema.paper_shapes import paper_record, read_paper
from quoting.store.book import Book
from quoting.store.log import log_in
from quoting.store.making import last_of
from quoting.store.tables import PAPERS


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPaper:
    """A paper in the book, of the first and only version of its number."""

    order_id: int
    kind: PaperKind
    number: GivenNumber
    made_at: datetime
    facts: PaperFacts


def make_paper(
    book: Book, order_id: int, paper: PaperFacts, *, seen: int, now: datetime
) -> KeptPaper:
    """Give a paper the next number of its kind and year, and keep it.

    Where one of the order's says the same, that is the one. `seen` is the last line of the log
    that the paper rests on, 0 of an empty one. Errors: `order-missing`; `log-overtaken` where more
    was written since; as `same_again`; then no number is taken.
    """
    with book.writing() as connection:
        if last_of(log_in(connection, order_id)) != seen:
            raise refuse("", MistakeCode.LOG_OVERTAKEN)
        made = _papers(connection, order_id, kind_of(paper))
        facts = [kept.facts for kept in made]
        again = same_again(paper, facts)
        if again is not None:
            return next(kept for kept in made if kept.facts is again)
        number = _next_number(connection, kind_of(paper), paper.head.day.year)
        return _keep(connection, order_id, numbered(paper, str(number), facts), number, now)


def cancel_paper(
    book: Book, kind: PaperKind, number: GivenNumber, *, day: date, now: datetime
) -> KeptPaper:
    """Keep a further paper of a kind that cancels one; what was cancelled stays so.

    Errors: `paper-missing`; as `cancelling`.
    """
    with book.writing() as connection:
        wrong = _numbered(connection, kind, number)
        for made in _papers(connection, wrong.order_id, kind):
            if made.facts.head.cancels == str(number):
                return made
        following = _next_number(connection, kind, day.year)
        right = cancelling(wrong.facts, str(following), day)
        return _keep(connection, wrong.order_id, right, following, now)


def papers_of(book: Book, order_id: int) -> tuple[KeptPaper, ...]:
    """Return every paper of an order, as they were made."""
    with book.reading() as connection:
        return _papers(connection, order_id)


def kept_paper(book: Book, kind: PaperKind, number: GivenNumber) -> KeptPaper:
    """Return the paper of a kind and number. Errors: `paper-missing`."""
    with book.reading() as connection:
        return _numbered(connection, kind, number)


def _papers(connection: Connection, order_id: int, *kinds: PaperKind) -> tuple[KeptPaper, ...]:
    wanted = [kind.value for kind in kinds or PaperKind]
    its = select(PAPERS).where(PAPERS.c.order_id == order_id, PAPERS.c.kind.in_(wanted))
    return tuple(map(_paper_in, connection.execute(its.order_by(PAPERS.c.id))))


def _numbered(connection: Connection, kind: PaperKind, number: GivenNumber) -> KeptPaper:
    is_it = (PAPERS.c.year == number.year) & (PAPERS.c.running == number.running)
    its = select(PAPERS).where(PAPERS.c.kind == kind.value, is_it)
    row = connection.execute(its).one_or_none() if number.version == 1 else None
    if row is None:
        raise refuse("", MistakeCode.PAPER_MISSING)
    return _paper_in(row)


def _next_number(connection: Connection, kind: PaperKind, year: int) -> GivenNumber:
    """Return the first number of a year that no paper of a kind bears; none is free below it."""
    its = (PAPERS.c.kind == kind.value) & (PAPERS.c.year == year)
    last = connection.scalar(select(func.max(PAPERS.c.running)).where(its))
    return GivenNumber(year, (last or 0) + 1)


def _keep(
    connection: Connection, order_id: int, paper: PaperFacts, number: GivenNumber, now: datetime
) -> KeptPaper:
    row = {
        "order_id": order_id,
        "kind": kind_of(paper).value,
        "year": number.year,
        "running": number.running,
        "day": paper.head.day,
        "made_at": now,
        "record": json.dumps(paper_record(paper)),
    }
    connection.execute(insert(PAPERS).values(**row))
    return _numbered(connection, kind_of(paper), number)


def _paper_in(row: Row[Any]) -> KeptPaper:
    return KeptPaper(
        order_id=row.order_id,
        kind=PaperKind(row.kind),
        number=GivenNumber(row.year, row.running),
        made_at=row.made_at,
        facts=read_paper(row.kind, json.loads(row.record)),
    )
