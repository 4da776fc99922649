"""What is written down in the demo's book of orders that are made: nobody's, as all of the demo."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from quoting.core.ground.money import MINUTES_PER_HOUR
from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogLine,
    Payment,
    Session,
    YarnUsed,
)
from quoting.core.making.made_rows import MadeRows, made_rows
from quoting.core.order.stage import Stage
from quoting.core.quote.offer import offer_of
from quoting.core.quote.offer_rows import Due
from quoting.core.quote.quote import Quote

SITTINGS = (1.10, 1.02, 1.07, 0.98, 1.05, 1.12)
"""Times at the hook, days apart; each takes so many times as long as was estimated."""

ON_THE_HOOK_DONE = 3
"""Of these, those that an order on the hook has behind it."""

HUNGRIER = 1.03
"""How many times the yarn that was estimated it took."""


def demo_log(quote: Quote, stage: Stage, agreed: date) -> Iterator[LogLine]:
    """Yield what was written down of an order until it came to a stage."""
    day = agreed
    if stage in _PAID:
        yield from _paid(quote, Due.ON_ACCEPTING, agreed)
    for number in range(_sittings(stage)):
        day = agreed + timedelta(days=2 * number + 1)
        yield _sitting(quote, number, day)
    if stage in _MADE:
        yield from _finished(quote, day + timedelta(days=1))
    if stage is Stage.HANDED_OVER:
        yield from _paid(quote, Due.BEFORE_SENDING, day + timedelta(days=4))


_MADE = frozenset({Stage.FINISHED, Stage.HANDED_OVER})
_PAID = _MADE | {Stage.AGREED, Stage.ON_THE_HOOK}


def _sittings(stage: Stage) -> int:
    if stage is Stage.ON_THE_HOOK:
        return ON_THE_HOOK_DONE
    return len(SITTINGS) if stage in _MADE else 0


def _sitting(quote: Quote, number: int, day: date) -> Session:
    rows, hours = made_rows(quote), quote.estimate.hours
    first, last = (rows.all * at // len(SITTINGS) for at in (number, number + 1))
    share = _stitches(rows, first + 1, last) / _stitches(rows, 1, rows.all)
    planned = float(sum(hours.of(part) for part in Doing.AT_THE_HOOK.parts)) * MINUTES_PER_HOUR
    return Session(
        day=day,
        doing=Doing.AT_THE_HOOK,
        minutes=round(planned * share * SITTINGS[number]),
        first_row=first + 1,
        last_row=last,
    )


def _stitches(rows: MadeRows, first: int, last: int) -> int:
    """Return the stitches from one row to another: rounds take longer the further out they are."""
    worked = (rows.passes[place.pass_index] for place in rows.places(first, last))
    return sum(count for each in worked for count in each.stitches.values())


def _finished(quote: Quote, day: date) -> Iterator[LogLine]:
    """Yield the yarn that was used, the ends, and the rest of the work."""
    for colour in quote.estimate.colours:
        grams = round(colour.grams * HUNGRIER)
        yield YarnUsed(day=day, colour=colour.colour, rows=made_rows(quote).all, grams=grams)
    if quote.estimate.ends:
        yield EndsWoven(day=day, ends=quote.estimate.ends)
    for doing in (Doing.WEAVING_IN, Doing.FINISHING, Doing.OFFICE):
        hours = sum(quote.estimate.hours.of(part) for part in doing.parts)
        if hours:
            yield Session(day=day, doing=doing, minutes=round(hours * MINUTES_PER_HOUR))


def _paid(quote: Quote, due: Due, day: date) -> Iterator[Payment]:
    offer = offer_of(quote)
    for row in offer.rows:
        if row.due is due and row.currency == offer.currency:
            yield Payment(day=day, amount=row.amount, currency=row.currency)
