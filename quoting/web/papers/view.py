"""The papers of an order as its page shows them: what can be made now, and what was made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from quoting.core.making.money_due import MoneyDue, money_due
from quoting.core.papers.bill import Bill
from quoting.core.papers.head import PaperKind
from quoting.core.papers.payments import payments_in
from quoting.core.papers.receipt import Receipt
from quoting.core.papers.series import holding
from quoting.core.quote.given_number import GivenNumber
from quoting.store.papers import KeptPaper
from quoting.web.making.at_hand import AtHand
from quoting.wording import Speech
from quoting.wording.log_words import payment_words
from quoting.wording.papers import OrderPaper


@dataclass(frozen=True, slots=True, kw_only=True)
class PaymentRow:
    """A payment that came; `receipt` is the number of the one that it has, None if it has none."""

    line: int
    day: date
    words: str
    receipt: GivenNumber | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperRow:
    """A paper that was made: how it stands, what can be printed of it, whether it holds.

    `wrong` says that what it rests on was corrected since.
    """

    what: OrderPaper
    number: GivenNumber
    day: date
    state: str
    printed: tuple[OrderPaper, ...]
    holds: bool
    wrong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PapersView:
    """What the page shows; `record` is the number of the batch record that holds, if any."""

    payments: tuple[PaymentRow, ...]
    due: MoneyDue
    record: str
    papers: tuple[PaperRow, ...]


def papers_view(hand: AtHand, made: Sequence[KeptPaper], speech: Speech) -> PapersView:
    """Return the papers of an order, the latest first, and what can be made."""
    records = _holding(made, PaperKind.BATCH)
    return PapersView(
        payments=tuple(_payments(hand, made, speech)),
        due=money_due(hand.offer, hand.entries),
        record=str(records[-1].number) if records else "",
        papers=tuple(_rows(hand, made))[::-1],
    )


def _holding(made: Sequence[KeptPaper], kind: PaperKind) -> list[KeptPaper]:
    its = [paper for paper in made if paper.kind is kind]
    held = holding(paper.facts for paper in its)
    return [paper for paper in its if paper.facts in held]


def _payments(hand: AtHand, made: Sequence[KeptPaper], speech: Speech) -> Iterator[PaymentRow]:
    receipts = {
        paper.facts.line: paper.number
        for paper in _holding(made, PaperKind.RECEIPT)
        if isinstance(paper.facts, Receipt)
    }
    for line, paid in payments_in(hand.entries).items():
        if paid.amount > 0:
            words = payment_words(paid.amount, paid.currency, speech)
            yield PaymentRow(line=line, day=paid.day, words=words, receipt=receipts.get(line))


def _rows(hand: AtHand, made: Sequence[KeptPaper]) -> Iterator[PaperRow]:
    for kind in PaperKind:
        held = [paper.number for paper in _holding(made, kind)]
        for paper in (paper for paper in made if paper.kind is kind):
            holds, wrong = paper.number in held, _is_wrong(hand, paper)
            yield PaperRow(
                what=OrderPaper(kind.value),
                number=paper.number,
                day=paper.facts.head.day,
                state=_state(paper, made, wrong=holds and wrong),
                printed=tuple(
                    s for s in OrderPaper if s.kind is kind and (holds or not s.goes_along)
                ),
                holds=holds,
                wrong=holds and wrong,
            )


def _is_wrong(hand: AtHand, paper: KeptPaper) -> bool:
    """Return whether a receipt is for a payment that was corrected or taken back."""
    facts = paper.facts
    return isinstance(facts, Receipt) and facts.line not in payments_in(hand.entries)


def _follows(paper: KeptPaper) -> str:
    return paper.facts.follows if isinstance(paper.facts, Bill) else ""


def _state(paper: KeptPaper, made: Sequence[KeptPaper], *, wrong: bool) -> str:
    """Return how a paper stands to the others of its kind, nothing where it stands alone."""
    others = [other for other in made if other.kind is paper.kind]
    if paper.facts.head.cancels:
        return f"cancels {paper.facts.head.cancels}"
    for other in others:
        if other.facts.head.cancels == str(paper.number):
            return f"cancelled by {other.number}"
    for other in _holding(made, PaperKind.BILL):
        if _follows(other) == str(paper.number) and paper.kind is PaperKind.BILL:
            return f"followed by {other.number}"
    return "its payment was corrected since: cancel it" if wrong else ""
