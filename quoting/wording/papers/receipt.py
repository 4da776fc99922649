"""A receipt in words."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.papers.receipt import Receipt
from quoting.wording.catalogues import sentence
from quoting.wording.paper import Amounts, Block, Facts, Paper, SaidFact, SaidRow
from quoting.wording.papers.parts import (
    buyers_speech,
    cancelled_words,
    order_facts,
    paper_of,
    titled,
)
from quoting.wording.speech import Speech

_TITLE = sentence("Receipt {number}")
_CANCELLING = sentence("Receipt {number}, which cancels receipt {cancelled}")
_CANCELLED = sentence("Receipt {cancelled} no longer holds. This is what it said.")
_DEPOSIT = sentence("Received now, as a deposit")
_PAYMENT = sentence("Received now")


def receipt_paper(receipt: Receipt) -> Paper:
    """Return a receipt as its buyer reads it."""
    speech = buyers_speech(receipt.head)
    title = titled(receipt.head, speech, _TITLE, _CANCELLING)
    day = speech.day(receipt.head.day)
    return paper_of(receipt.head, speech, title, _blocks(receipt, speech), heading=day)


def _blocks(receipt: Receipt, speech: Speech) -> Iterator[Block]:
    yield from cancelled_words(receipt.head, speech, _CANCELLED)
    received_on = SaidFact(
        name=speech.worded(sentence("Received on")), text=speech.day(receipt.paid.day)
    )
    yield Facts(facts=(*order_facts(receipt.head, speech), received_on))
    yield Amounts(rows=tuple(_rows(receipt, speech)))


def _rows(receipt: Receipt, speech: Speech) -> Iterator[SaidRow]:
    paid, account = receipt.paid, receipt.account
    total, before = speech.money(receipt.total, account), speech.money(receipt.before, account)
    yield SaidRow(name=speech.worded(sentence("Total of the order")), amount=total)
    yield SaidRow(name=speech.worded(sentence("Paid before")), amount=before)
    yield SaidRow(
        name=speech.worded(_DEPOSIT if receipt.for_deposit else _PAYMENT),
        amount=speech.money(paid.amount, paid.currency),
        is_total=True,
    )
    due = speech.money(receipt.due, account)
    yield SaidRow(name=speech.worded(sentence("Still to pay")), amount=due)
