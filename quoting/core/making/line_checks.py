"""Whether a line of the log can be true of its order: rows, yarn, ends, money, days."""

from __future__ import annotations

import math
from datetime import date, datetime
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks, refuse
from quoting.core.ground.place import Place
from quoting.core.ground.sameness import NEAR
from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogEntry,
    LogLine,
    Payment,
    RowsReached,
    Session,
    YarnTaken,
    YarnUsed,
    standing,
)
from quoting.core.making.made_rows import made_rows
from quoting.core.making.progress import colour_in_estimate, of_colour, progress_of, received
from quoting.core.making.told import Dated, told
from quoting.core.making.yarn_in_hand import yarn_had
from quoting.core.quote.quote import Quote

SECONDS_A_MINUTE = 60

GRAM_PARTS = 10
"""Parts of a gram to which what is left is told."""


def check_line(
    quote: Quote,
    entries: tuple[LogEntry, ...],
    line: LogLine,
    *,
    today: date,
    corrects: int | None = None,
) -> None:
    """Refuse a line that cannot be true of an order whose log has these entries.

    `corrects` is the id of the line that it is to stand in the place of. Errors, all at once and
    each at the key of the line: `day-to-come`; `more-rows-than-there-are`; `colour-not-in-order`;
    `more-yarn-than-there-is`; `more-ends-than-there-are`; `currency-not-offered`;
    `paid-back-too-much`.
    """
    checks = Checks()
    others = _without(entries, corrects)
    if isinstance(line, Dated) and line.day > today:
        checks.add("day", MistakeCode.DAY_TO_COME, read=line.day, limit=today)
    match line:
        case Session(last_row=int(last)):
            _check_rows(quote, checks, "last_row", last)
        case RowsReached():
            _check_rows(quote, checks, "rows", line.rows)
        case YarnUsed():
            _check_rows(quote, checks, "rows", line.rows)
            _check_used(quote, others, line, checks)
        case YarnTaken():
            _check_colour(quote, checks, line.colour)
        case EndsWoven():
            _check_ends(quote, others, line, checks)
        case Payment():
            _check_payment(quote, others, line, checks)
    checks.done()


def rows_again(
    entries: tuple[LogEntry, ...], line: LogLine, *, corrects: int | None = None
) -> tuple[int, int] | None:
    """Return the first and last row that another session told already; None if there is none.

    That is no mistake: what was ripped back is worked again.
    """
    if not isinstance(line, Session) or not line.rows:
        return None
    first, last = line.first_row or 0, line.last_row or 0
    shared = [
        (max(first, other.first_row or 0), min(last, other.last_row or 0))
        for other in told(_without(entries, corrects), Session)
        if other.rows and other.doing is Doing.AT_THE_HOOK
    ]
    shared = [(begins, ends) for begins, ends in shared if begins <= ends]
    return (min(b for b, _ in shared), max(e for _, e in shared)) if shared else None


def is_paid_again(
    entries: tuple[LogEntry, ...], line: LogLine, *, corrects: int | None = None
) -> bool:
    """Return whether the log has the same amount of the same day already."""
    return isinstance(line, Payment) and line in told(_without(entries, corrects), Payment)


def minutes_between(began: datetime, ended: datetime, place: Place | str = "ended") -> float:
    """Return the minutes of a session from when it began until it ended.

    Errors: `ends-before-it-begins` at `place`, for no minutes at all, too.
    """
    if ended <= began:
        raise refuse(place, MistakeCode.ENDS_BEFORE_IT_BEGINS)
    return (ended - began).total_seconds() / SECONDS_A_MINUTE


def _without(entries: tuple[LogEntry, ...], corrects: int | None) -> tuple[LogEntry, ...]:
    return tuple(entry for entry in standing(entries) if entry.id != corrects)


def _check_rows(quote: Quote, checks: Checks, place: str, row: int) -> None:
    rows = made_rows(quote).all
    if row > rows:
        checks.add(place, MistakeCode.MORE_ROWS_THAN_THERE_ARE, read=row, limit=rows)


def _check_colour(quote: Quote, checks: Checks, colour: str) -> bool:
    if colour_in_estimate(quote, colour) is not None:
        return True
    known = tuple(some.colour for some in quote.estimate.colours)
    checks.add("colour", MistakeCode.COLOUR_NOT_IN_ORDER, read=colour, known=known)
    return False


def _check_used(quote: Quote, others: tuple[LogEntry, ...], line: YarnUsed, checks: Checks) -> None:
    """Check that no more of a colour is used than there is: taken, or else as was planned."""
    if not _check_colour(quote, checks, line.colour):
        return
    name = colour_in_estimate(quote, line.colour)
    colour = next(some for some in quote.estimate.colours if some.colour == name)
    taken = of_colour(quote, others, YarnTaken, colour.colour)
    had = yarn_had(colour, quote.workshop.yarn(colour.source.yarn), taken)
    used_g = progress_of(quote, others).used_g.get(colour.colour, 0.0)
    left_g = had.all_m / colour.metres_per_gram - used_g
    if line.used_g > left_g + NEAR * had.all_m:
        place = "grams" if line.balls is None else "balls"
        checks.add(
            place,
            MistakeCode.MORE_YARN_THAN_THERE_IS,
            read=line.used_g,
            limit=max(0.0, _told_down(left_g)),
            colour=colour.colour,
        )


def _told_down(grams: float) -> float:
    """Return grams to a tenth that is not more, so that what is told will do."""
    return math.floor(grams * GRAM_PARTS + NEAR) / GRAM_PARTS


def _check_ends(
    quote: Quote, others: tuple[LogEntry, ...], line: EndsWoven, checks: Checks
) -> None:
    """Check that there can be so many ends: a strand for each row, and each that was planned."""
    progress = progress_of(quote, others)
    left = progress.ends + 2 * progress.rows - progress.ends_woven
    if line.ends > left:
        checks.add("ends", MistakeCode.MORE_ENDS_THAN_THERE_ARE, read=line.ends, limit=left)


def _check_payment(
    quote: Quote, others: tuple[LogEntry, ...], line: Payment, checks: Checks
) -> None:
    price = quote.price
    known = [price.currency, *([price.exchange.currency] if price.exchange else [])]
    if line.currency not in known:
        checks.add(
            "currency", MistakeCode.CURRENCY_NOT_OFFERED, read=line.currency, known=tuple(known)
        )
        return
    there = received(others).get(line.currency, Decimal(0))
    if line.amount < 0 and -line.amount > there:
        checks.add(
            "amount",
            MistakeCode.PAID_BACK_TOO_MUCH,
            read=-line.amount,
            limit=max(Decimal(0), there),
            currency=line.currency,
        )
