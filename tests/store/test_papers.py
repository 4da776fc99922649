"""A paper that is made is numbered among its kind, kept whole and never changed."""

from __future__ import annotations

from datetime import date
from functools import partial

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.papers.bill import Bill
from quoting.core.papers.head import PaperKind
from quoting.core.papers.series import PaperFacts
from quoting.core.quote.given_number import GivenNumber
from quoting.store.book import Book
from quoting.store.log import add_line, log_of
from quoting.store.orders import create_order
from quoting.store.papers import KeptPaper, cancel_paper, kept_paper, make_paper, papers_of
from tests.core.making.logs import paid
from tests.store.contents import half
from tests.store.given import DAY
from tests.store.made_papers import bill, receipt, record
from tests.store.moments import NOW, later
from tests.store.refusals import refused

FIRST = GivenNumber(2026, 1)
NEXT_YEAR = date(2027, 1, 4)


@pytest.fixture
def order_id(book: Book) -> int:
    """Return an order in a book."""
    return create_order(book, half(), now=NOW).id


def make(book: Book, order_id: int, paper: PaperFacts) -> KeptPaper:
    """Make a paper that rests on the log as it is."""
    entries = log_of(book, order_id)
    return make_paper(book, order_id, paper, seen=entries[-1].id if entries else 0, now=NOW)


def pay(book: Book, order_id: int, amount: str) -> PaperFacts:
    """Write money down, and return the receipt of it."""
    line = add_line(book, order_id, paid(amount, day=DAY), now=NOW)
    return receipt(log_of(book, order_id), line.id)


def test_each_kind_is_numbered_through_the_year_and_begins_anew_in_the_next(
    book: Book, order_id: int
) -> None:
    other = create_order(book, half(), now=NOW).id
    made = [
        make(book, order_id, bill()),
        make(book, other, bill()),
        make(book, order_id, record()),
        make(book, order_id, pay(book, order_id, "50")),
        make(book, other, record(day=NEXT_YEAR)),
    ]
    assert [(paper.kind, str(paper.number)) for paper in made] == [
        (PaperKind.BILL, "2026-001"),
        (PaperKind.BILL, "2026-002"),
        (PaperKind.BATCH, "2026-001"),
        (PaperKind.RECEIPT, "2026-001"),
        (PaperKind.BATCH, "2027-001"),
    ]
    assert [paper.facts.head.number for paper in made] == [str(paper.number) for paper in made]


def test_what_was_made_comes_back_as_it_was(book: Book, order_id: int) -> None:
    made = make(book, order_id, pay(book, order_id, "50"))
    assert kept_paper(book, PaperKind.RECEIPT, made.number) == made
    assert (made.order_id, made.made_at) == (order_id, NOW)
    further = make(book, order_id, record())
    assert papers_of(book, order_id) == (made, further)


def test_the_same_payment_gets_one_receipt_whatever_came_since(book: Book, order_id: int) -> None:
    of_deposit = pay(book, order_id, "50")
    first = make(book, order_id, of_deposit)
    second = make(book, order_id, pay(book, order_id, "20"))
    again = receipt(log_of(book, order_id), log_of(book, order_id)[0].id, day=NEXT_YEAR)
    assert make(book, order_id, again) == first
    assert papers_of(book, order_id) == (first, second)


def test_a_further_bill_names_the_one_before_it(book: Book, order_id: int) -> None:
    make(book, order_id, bill())
    pay(book, order_id, "50")
    further = make(book, order_id, bill(log_of(book, order_id)))
    assert isinstance(further.facts, Bill)
    assert further.facts.follows == "2026-001"


def test_a_paper_that_rests_on_an_older_log_is_not_made(book: Book, order_id: int) -> None:
    draft = pay(book, order_id, "50")
    seen = log_of(book, order_id)[-1].id
    pay(book, order_id, "20")
    late = partial(make_paper, book, order_id, draft, seen=seen, now=NOW)
    assert refused(late) == MistakeCode.LOG_OVERTAKEN
    assert papers_of(book, order_id) == ()


def test_what_is_refused_takes_no_number(book: Book, order_id: int) -> None:
    make(book, order_id, record())
    heavier = partial(make, book, order_id, record(weight_g=700.0))
    assert refused(heavier) == MistakeCode.PAPER_HOLDS
    other = create_order(book, half(), now=NOW).id
    assert str(make(book, other, record()).number) == "2026-002"


def test_a_paper_is_cancelled_once_by_the_next_of_its_kind(book: Book, order_id: int) -> None:
    first = make(book, order_id, record())
    cancel = partial(cancel_paper, book, PaperKind.BATCH, FIRST, day=DAY, now=later(days=1))
    wrong = cancel()
    assert (str(wrong.number), wrong.facts.head.cancels) == ("2026-002", "2026-001")
    assert cancel() == wrong
    assert kept_paper(book, PaperKind.BATCH, FIRST) == first
    assert str(make(book, order_id, record(weight_g=700.0)).number) == "2026-003"
    twice = partial(cancel_paper, book, PaperKind.BATCH, wrong.number, day=DAY, now=NOW)
    assert refused(twice) == MistakeCode.PAPER_CANCELS


def test_what_is_not_there_is_told(book: Book, order_id: int) -> None:
    nobodys = partial(make_paper, book, order_id + 1, bill(), seen=0, now=NOW)
    assert refused(nobodys) == MistakeCode.ORDER_MISSING
    make(book, order_id, bill())
    for kind, number in (
        (PaperKind.RECEIPT, FIRST),
        (PaperKind.BILL, GivenNumber(2026, 2)),
        (PaperKind.BILL, GivenNumber(2026, 1, 2)),
    ):
        assert refused(partial(kept_paper, book, kind, number)) == MistakeCode.PAPER_MISSING
        gone = partial(cancel_paper, book, kind, number, day=DAY, now=NOW)
        assert refused(gone) == MistakeCode.PAPER_MISSING
