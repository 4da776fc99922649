"""A rate of exchange in words."""

from __future__ import annotations

from quoting.core.workshop.exchange import ExchangeRate
from quoting.wording.catalogues import sentence
from quoting.wording.speech import Speech

_RATE = sentence("{rate} for {per} {currency}")
_OF_DAY = sentence("{exchange}, the rate of {day}")
_WITH_CUSHION = sentence("{exchange}, the rate of {day}, and {cushion} against its moving")


def exchange_rate(rate: ExchangeRate, speech: Speech) -> str:
    """Return a rate of exchange as it was typed or published: `1.17 for 1 GBP`."""
    return speech.worded(_RATE).format(
        rate=speech.number(rate.rate), per=speech.number(rate.per), currency=speech.currency
    )


def exchange_words(rate: ExchangeRate, speech: Speech) -> str:
    """Return what an amount in another currency was worked out by, its day and its cushion."""
    return speech.worded(_WITH_CUSHION if rate.cushion else _OF_DAY).format(
        exchange=exchange_rate(rate, speech),
        day=speech.day(rate.day),
        cushion=speech.percent(rate.cushion),
    )
