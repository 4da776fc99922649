"""What is said in the place of a figure that is not as its maker wished it."""

from __future__ import annotations

from quoting.core.quote.quote import Quote
from quoting.wording.speech import Speech


def earning_short(quote: Quote, speech: Speech) -> str:
    """Return by what an hour earns too little: `less than your £14.00`; empty where it does not."""
    price = quote.price
    return "" if price.pays_the_hour else f"less than your {speech.money(price.pay_per_hour)}"


def ready_late(quote: Quote, speech: Speech) -> str:
    """Return the day that it is wanted where it is ready later: `wanted 5 Dec 2026`."""
    wanted = quote.order.wanted_by
    return f"wanted {speech.short_day(wanted)}" if wanted and quote.ready_by > wanted else ""


def price_low(quote: Quote, speech: Speech) -> str:
    """Return the minimum charge where the price of one blanket is under it."""
    least = quote.workshop.pricing.minimum
    under = least is not None and quote.price.each < least
    return f"less than your minimum charge, {speech.money(least)}" if least and under else ""
