"""The papers of an order as a series: which hold, which is the same again, which names another."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.papers.batch import BatchRecord
from quoting.core.papers.bill import Bill
from quoting.core.papers.head import PaperKind
from quoting.core.papers.receipt import Receipt

PaperFacts = Receipt | Bill | BatchRecord

_KINDS: dict[type, PaperKind] = {
    Receipt: PaperKind.RECEIPT,
    Bill: PaperKind.BILL,
    BatchRecord: PaperKind.BATCH,
}


def kind_of(paper: PaperFacts) -> PaperKind:
    """Return the kind of a paper."""
    return _KINDS[type(paper)]


def holding(papers: Iterable[PaperFacts]) -> list[PaperFacts]:
    """Return the papers of one kind that hold: none that was cancelled, and none that cancels."""
    told = list(papers)
    cancelled = {paper.head.cancels for paper in told}
    return [
        paper for paper in told if not paper.head.cancels and paper.head.number not in cancelled
    ]


def same_again(paper: PaperFacts, papers: Iterable[PaperFacts]) -> PaperFacts | None:
    """Return the paper of an order's that says what a new one would; None where there is none.

    A payment has one receipt, whatever else has changed; `papers` are those of its kind, the
    earliest first. Errors: `paper-holds` where blankets have a record that says otherwise.
    """
    held = holding(papers)
    if isinstance(paper, Receipt):
        return next((made for made in held if _line(made) == paper.line), None)
    last = held[-1] if held else None
    if last is None or _undated(last) == _undated(paper):
        return last
    if isinstance(paper, BatchRecord):
        raise refuse("", MistakeCode.PAPER_HOLDS, number=last.head.number)
    return None


def numbered(paper: PaperFacts, number: str, papers: Iterable[PaperFacts]) -> PaperFacts:
    """Return a paper under its number; a bill takes the place of the last that holds."""
    head = replace(paper.head, number=number)
    if isinstance(paper, Bill):
        last = next((made.head.number for made in reversed(holding(papers))), "")
        return replace(paper, head=head, follows=last)
    return replace(paper, head=head)


def cancelling(paper: PaperFacts, number: str, day: date) -> PaperFacts:
    """Return the paper that cancels another, under a number and of a day of its own.

    Errors: `paper-cancels` where that one itself cancels.
    """
    if paper.head.cancels:
        raise refuse("", MistakeCode.PAPER_CANCELS, number=paper.head.cancels)
    head = replace(paper.head, number=number, day=day, cancels=paper.head.number)
    return replace(paper, head=head)


def _line(paper: PaperFacts) -> int | None:
    return paper.line if isinstance(paper, Receipt) else None


def _undated(paper: PaperFacts) -> PaperFacts:
    """Return a paper without what differs when it is made once more: its number and its day."""
    head = replace(paper.head, number="", day=date.min)
    if isinstance(paper, Bill):
        return replace(paper, head=head, follows="")
    return replace(paper, head=head)
