"""Papers are only added to: what is wrong is cancelled, and what says the same is made once."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.making.log_lines import LogLine
from quoting.core.papers.batch import BatchAsked, batch_of
from quoting.core.papers.bill import Bill, BillAsked, bill_of
from quoting.core.papers.head import PaperKind
from quoting.core.papers.receipt import receipt_of
from quoting.core.papers.series import (
    PaperFacts,
    cancelling,
    holding,
    kind_of,
    numbered,
    same_again,
)
from tests.core.making.logs import DAY, log, paid
from tests.core.papers.accounts import offered

OFFER = offered()
NEXT_DAY = date(2026, 12, 2)


def receipt(number: str, *lines: LogLine, line: int = 1, day: date = DAY) -> PaperFacts:
    made = receipt_of(OFFER, log(*(lines or (paid("50"),))), line, day=day)
    return numbered(made, number, [])


def bill(number: str, *lines: LogLine, before: tuple[PaperFacts, ...] = ()) -> PaperFacts:
    return numbered(bill_of(OFFER, log(*lines), BillAsked(), day=DAY), number, before)


def batch(number: str, **asked: float) -> PaperFacts:
    wish = BatchAsked(finished=DAY, **asked)
    return numbered(batch_of(OFFER, (), {}, wish, makers_locale="en_GB", day=DAY), number, [])


def test_each_paper_is_of_the_kind_whose_numbers_it_takes() -> None:
    kinds = [kind_of(paper) for paper in (receipt("1"), bill("1"), batch("1"))]
    assert kinds == [PaperKind.RECEIPT, PaperKind.BILL, PaperKind.BATCH]


def test_what_was_cancelled_and_what_cancels_hold_no_longer() -> None:
    first, second = receipt("1"), receipt("2", paid("50"), paid("20"), line=2)
    wrong = cancelling(first, "3", NEXT_DAY)
    assert holding([first, second, wrong]) == [second]
    assert (wrong.head.cancels, wrong.head.number, wrong.head.day) == ("1", "3", NEXT_DAY)
    assert replace(wrong, head=first.head) == first


def test_what_cancels_is_not_cancelled() -> None:
    wrong = cancelling(receipt("1"), "2", DAY)
    with pytest.raises(Refused) as refusal:
        cancelling(wrong, "3", DAY)
    assert refusal.value.mistakes[0].code == MistakeCode.PAPER_CANCELS


def test_a_payment_has_one_receipt_on_whatever_day_it_is_asked() -> None:
    first, other = receipt("1"), receipt("2", paid("50"), paid("20"), line=2)
    assert same_again(receipt("", day=NEXT_DAY), [first, other]) is first
    assert same_again(receipt(""), [other]) is None
    assert same_again(receipt(""), [first, cancelling(first, "3", DAY)]) is None


def test_a_bill_that_says_the_same_as_the_last_is_that_one() -> None:
    first = bill("1")
    second = bill("2", paid("50"), before=(first,))
    assert same_again(bill(""), [first]) is first
    assert same_again(bill("", paid("50")), [first, second]) is second
    assert same_again(bill(""), [first, second]) is None


def test_a_further_bill_names_the_last_that_holds() -> None:
    first, second = bill("1"), bill("2", paid("50"))
    further = bill("4", before=(first, second, cancelling(second, "3", DAY)))
    assert isinstance(further, Bill)
    assert further.follows == "1"


def test_blankets_have_one_record_until_it_is_cancelled() -> None:
    first = batch("1")
    assert same_again(batch(""), [first]) is first
    with pytest.raises(Refused) as refusal:
        same_again(batch("", weight_g=600.0), [first])
    (mistake,) = refusal.value.mistakes
    assert (mistake.code, mistake.facts) == (MistakeCode.PAPER_HOLDS, {"number": "1"})
    after = [first, cancelling(first, "2", DAY)]
    assert same_again(batch("", weight_g=600.0), after) is None
