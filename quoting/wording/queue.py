"""What is said of the orders that come before another, and of whether the days are kept."""

from __future__ import annotations

from quoting.core.quote.quote import Quote
from quoting.core.workshop.queue import Turn
from quoting.wording.phrases import listed
from quoting.wording.speech import Speech


def ahead_words(quote: Quote, speech: Speech) -> str:
    """Return what a quote's order waits for; empty where it waits for nothing.

    `It comes after 2 orders agreed before it (54 h at most) and 20 h promised elsewhere.`
    """
    ahead, elsewhere = quote.ahead, quote.workshop.calendar.hours_promised
    before = []
    if ahead.orders:
        orders = speech.count(ahead.orders, "order")
        before.append(f"{orders} agreed before it ({_hours(ahead.hours, speech)} at most)")
    if elsewhere:
        before.append(f"{_hours(elsewhere, speech)} promised elsewhere")
    return f"It comes after {listed(before, 'and')}." if before else ""


def wish_words(quote: Quote, speech: Speech) -> str:
    """Return that the day wanted can be kept; where it cannot, a caution says so."""
    wanted = quote.order.wanted_by
    if wanted is None or quote.ready_by > wanted:
        return ""
    return f"Wanted by {speech.day(wanted)}: it can be there in time."


def turn_words(turn: Turn, speech: Speech) -> str:
    """Return whether an order is in time: `in time`, `4 days later than promised`."""
    past = ((turn.days_past_promise, "promised"), (turn.days_past_wish, "wanted"))
    late = [f"{speech.count(days, 'day')} later than {day}" for days, day in past if days]
    return listed(late, "and") if late else "in time"


def weeks_description(turns: int, speech: Speech) -> str:
    """Return what the picture of the weeks shows, for whoever does not see it."""
    orders = speech.count(turns, "order that was agreed", "orders that were agreed")
    return (
        f"A bar for each of {orders}, over the days that it is made on; a line for drying and "
        "delivery; marks at the days that were promised and wanted. The table says the same."
    )


def _hours(hours: float, speech: Speech) -> str:
    return f"{speech.trimmed(hours, 1)}\u00a0h"
