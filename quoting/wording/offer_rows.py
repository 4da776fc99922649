"""The rows of an offer in words: what each amount is, and when a payment is due."""

from __future__ import annotations

from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.offer import Offer
from quoting.core.quote.offer_rows import Due, Row, RowCode
from quoting.wording.catalogues import sentence
from quoting.wording.exchange import exchange_words
from quoting.wording.lines import move_words
from quoting.wording.paper import SaidRow
from quoting.wording.speech import Speech

TAX_DIGITS = 3
"""Decimals of a rate of tax in per cent, where it has so many."""

_NAMES = {
    RowCode.BLANKETS: sentence("The blanket"),
    RowCode.TOGETHER: sentence("Together"),
    RowCode.DELIVERY: sentence("Delivery"),
    RowCode.TAX_ADDED: sentence("Tax"),
    RowCode.TOTAL: sentence("Total"),
    RowCode.TAX_INSIDE: sentence("Tax inside it"),
    RowCode.WHOLE: sentence("All of it"),
    RowCode.DEPOSIT: sentence("Deposit"),
    RowCode.AT_HALF: sentence("Part payment"),
    RowCode.BALANCE: sentence("Balance"),
}

_TAXES = {
    RowCode.TAX_ADDED: sentence("Tax, {rate}"),
    RowCode.TAX_INSIDE: sentence("Tax inside it, {rate}"),
}

_MOVES = frozenset({RowCode.RUSH, RowCode.DISCOUNT, RowCode.MINIMUM})
"""What moves a price, which a costing tells by the same words."""

_DUE = {
    Due.ON_ACCEPTING: sentence("{payment}, when you accept"),
    Due.AT_HALF: sentence("{payment}, when half is made"),
    Due.BEFORE_SENDING: sentence("{payment}, before it is sent"),
    Due.ON_DELIVERY: sentence("{payment}, on delivery"),
}

_ABROAD = sentence("{name} in {currency}")
_AT_A_RATE = sentence("{name} in {currency}, at {exchange}")


def said_row(row: Row, offer: Offer, speech: Speech) -> SaidRow:
    """Return a row of an offer in words."""
    name = _own_name(row, offer, speech)
    if row.currency != offer.currency:
        name = _name_abroad(row, offer, speech)
    amount = speech.money(row.amount, row.currency)
    return SaidRow(name=name, amount=amount, is_total=row.code is RowCode.TOTAL)


def _own_name(row: Row, offer: Offer, speech: Speech) -> str:
    if row.each is not None and row.code in {RowCode.BLANKETS, RowCode.TOGETHER}:
        return _name_of_several(row.code, speech.money(row.each), offer, speech)
    if row.code in _MOVES:
        return move_words(LineKind(row.code.value), row.share, speech)
    if row.share is not None and row.code in _TAXES:
        return speech.worded(_TAXES[row.code]).format(rate=speech.percent(row.share, TAX_DIGITS))
    name = speech.worded(_NAMES[row.code])
    return name if row.due is None else speech.worded(_DUE[row.due]).format(payment=name)


def _name_of_several(code: RowCode, each: str, offer: Offer, speech: Speech) -> str:
    if code is RowCode.TOGETHER:
        return speech.worded(sentence("Together, each {each}")).format(each=each)
    return speech.counted(
        offer.quantity, "{n} blanket, each {each}", "{n} blankets, each {each}", each=each
    )


def _name_abroad(row: Row, offer: Offer, speech: Speech) -> str:
    told = {"name": speech.worded(_NAMES[row.code]), "currency": row.currency}
    if row.code is not RowCode.TOTAL or offer.exchange is None:
        return speech.worded(_ABROAD).format(**told)
    exchange = exchange_words(offer.exchange, speech)
    return speech.worded(_AT_A_RATE).format(**told, exchange=exchange)
