"""A bill in words."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.papers.bill import Bill
from quoting.core.quote.offer_rows import Due, Row, RowCode
from quoting.wording.catalogues import sentence
from quoting.wording.paper import Amounts, Block, Facts, Paper, SaidFact, SaidRow, Words
from quoting.wording.papers.parts import (
    buyers_speech,
    cancelled_words,
    order_facts,
    paper_of,
    titled,
)
from quoting.wording.speech import Speech

TAX_DIGITS = 3
"""Decimals of a rate of tax in per cent, where it has so many."""

_TITLE = sentence("Bill {number}")
_CANCELLING = sentence("Bill {number}, which cancels bill {cancelled}")
_CANCELLED = sentence("Bill {cancelled} no longer holds. This is what it said.")

_TAX_NAMES = {
    RowCode.TAX_ADDED: sentence("Tax, {rate}"),
    RowCode.TAX_INSIDE: sentence("Tax of {rate} within the total"),
}

_SHARES: dict[Due | None, str] = {
    Due.ON_ACCEPTING: sentence("Due since you accepted"),
    Due.AT_HALF: sentence("Due when half of it is made"),
    Due.BEFORE_SENDING: sentence("Due before it is sent"),
    Due.ON_DELIVERY: sentence("Due on delivery"),
    None: sentence("For the order"),
}


def bill_paper(bill: Bill) -> Paper:
    """Return a bill as its buyer reads it."""
    speech = buyers_speech(bill.head)
    title = titled(bill.head, speech, _TITLE, _CANCELLING)
    day = speech.day(bill.head.day)
    return paper_of(bill.head, speech, title, _blocks(bill, speech), heading=day)


def _blocks(bill: Bill, speech: Speech) -> Iterator[Block]:
    yield from cancelled_words(bill.head, speech, _CANCELLED)
    yield Facts(facts=tuple(_facts(bill, speech)))
    yield Amounts(
        heading=speech.worded(sentence("What was agreed")),
        rows=tuple(_agreed(row, bill, speech) for row in bill.rows),
    )
    yield Amounts(heading=speech.worded(sentence("What is paid")), rows=tuple(_paid(bill, speech)))
    yield Amounts(
        heading=speech.worded(sentence("What is still to pay")), rows=tuple(_due(bill, speech))
    )
    if bill.pay_by is not None:
        text = speech.worded(sentence("Please pay by {day}."))
        yield Words(texts=(text.format(day=speech.day(bill.pay_by)),))


def _facts(bill: Bill, speech: Speech) -> Iterator[SaidFact]:
    yield from order_facts(bill.head, speech)
    if bill.follows:
        name = speech.worded(sentence("In place of"))
        text = speech.worded(sentence("the bill {number}"))
        yield SaidFact(name=name, text=text.format(number=bill.follows))


def _agreed(row: Row, bill: Bill, speech: Speech) -> SaidRow:
    return SaidRow(
        name=_agreed_name(row, bill, speech),
        amount=speech.money(row.amount, row.currency),
        is_total=row.code is RowCode.TOTAL,
    )


def _agreed_name(row: Row, bill: Bill, speech: Speech) -> str:
    match row.code:
        case RowCode.TAX_ADDED | RowCode.TAX_INSIDE if row.share is not None:
            rate = speech.percent(row.share, TAX_DIGITS)
            return speech.worded(_TAX_NAMES[row.code]).format(rate=rate)
        case RowCode.DELIVERY:
            return speech.worded(sentence("Delivery"))
        case RowCode.TOTAL if row.currency != bill.head.currency:
            return speech.worded(sentence("Total in {currency}")).format(currency=row.currency)
        case RowCode.TOTAL:
            return speech.worded(sentence("Total"))
    if row.each is None:
        return speech.worded(sentence("The blanket"))
    blankets = speech.counted(bill.quantity, "{n} blanket", "{n} blankets")
    each = speech.money(row.each, row.currency)
    return speech.worded(sentence("{blankets}, each {price}")).format(blankets=blankets, price=each)


def _paid(bill: Bill, speech: Speech) -> Iterator[SaidRow]:
    for paid in bill.paid:
        came = paid.amount > 0
        name = sentence("Received on {day}") if came else sentence("Paid back on {day}")
        yield SaidRow(
            name=speech.worded(name).format(day=speech.day(paid.day)),
            amount=speech.money(paid.amount, paid.currency),
        )
    received = speech.money(bill.received, bill.account)
    yield SaidRow(name=speech.worded(sentence("Paid in all")), amount=received, is_total=True)


def _due(bill: Bill, speech: Speech) -> Iterator[SaidRow]:
    for share in bill.shares:
        amount = speech.money(share.amount, bill.account)
        yield SaidRow(name=speech.worded(_SHARES[share.when]), amount=amount)
    due = speech.money(bill.due, bill.account)
    yield SaidRow(name=speech.worded(sentence("To pay in all")), amount=due, is_total=True)
