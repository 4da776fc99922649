"""The rows of an offer in words: what each amount is, and when a payment is due."""

from __future__ import annotations

from quoting.core.quote.offer import Offer
from quoting.core.quote.offer_rows import Due, Row, RowCode
from quoting.core.workshop.exchange import ExchangeRate
from quoting.wording.catalogues import sentence
from quoting.wording.paper import SaidRow
from quoting.wording.speech import Speech

TAX_DIGITS = 3
"""Decimals of a rate of tax in per cent, where it has so many."""

_NAMES = {
    RowCode.BLANKETS: sentence("The blanket"),
    RowCode.RUSH: sentence("Rush"),
    RowCode.DISCOUNT: sentence("Discount"),
    RowCode.MINIMUM: sentence("Up to the minimum charge"),
    RowCode.TOGETHER: sentence("Together"),
    RowCode.DELIVERY: sentence("Delivery"),
    RowCode.TAX_ADDED: sentence("Tax"),
    RowCode.TOTAL: sentence("Total"),
    RowCode.TAX_INSIDE: sentence("Tax inside it"),
    RowCode.WHOLE: sentence("All of it"),
    RowCode.DEPOSIT: sentence("Deposit"),
    RowCode.BALANCE: sentence("Balance"),
}

_SHARES = {
    RowCode.RUSH: sentence("Rush, {share}"),
    RowCode.DISCOUNT: sentence("Discount, {share}"),
    RowCode.TAX_ADDED: sentence("Tax, {share}"),
    RowCode.TAX_INSIDE: sentence("Tax inside it, {share}"),
}
"""The names of amounts that are a share of another, where it is told which."""

_DUE = {
    Due.ON_ACCEPTING: sentence("{payment}, when you accept"),
    Due.BEFORE_SENDING: sentence("{payment}, before it is sent"),
}

_ABROAD = sentence("{name} in {currency}")
_AT_A_RATE = (
    sentence("{name} in {currency}, at {rate} for {per} {own}, the rate of {day}"),
    sentence(
        "{name} in {currency}, at {rate} for {per} {own}, the rate of {day}, and {cushion} "
        "against its moving"
    ),
)


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
    if row.share is not None and row.code in _SHARES:
        share = speech.percent(row.share, TAX_DIGITS)
        return speech.worded(_SHARES[row.code]).format(share=share)
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
    rate = offer.exchange
    text = speech.worded(_AT_A_RATE[bool(rate.cushion)])
    return text.format(**told, **_rate_told(rate, offer.currency, speech))


def _rate_told(rate: ExchangeRate, own: str, speech: Speech) -> dict[str, str]:
    return {
        "rate": speech.number(rate.rate),
        "per": speech.number(rate.per),
        "own": own,
        "day": speech.day(rate.day),
        "cushion": speech.percent(rate.cushion),
    }
