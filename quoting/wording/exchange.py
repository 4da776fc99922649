"""A rate of exchange in words."""

from __future__ import annotations

from quoting.core.workshop.exchange import ExchangeRate
from quoting.wording.speech import Speech


def exchange_rate(rate: ExchangeRate, speech: Speech) -> str:
    """Return a rate of exchange as it was typed or published: `1.17 for 1 GBP`."""
    return f"{speech.number(rate.rate)} for {speech.number(rate.per)} {speech.currency}"


def exchange_words(rate: ExchangeRate, speech: Speech) -> str:
    """Return what an amount in another currency was worked out by, its day and its cushion."""
    one = f"{exchange_rate(rate, speech)}, the rate of {speech.day(rate.day)}"
    cushion = f", and {speech.percent(rate.cushion)} against its moving" if rate.cushion else ""
    return one + cushion
