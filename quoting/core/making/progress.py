"""How far the making of an order is, as its log tells it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import TypeVar

from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogEntry,
    Payment,
    RowsReached,
    Session,
    YarnTaken,
    YarnUsed,
)
from quoting.core.making.made_rows import MadeRows, made_rows
from quoting.core.making.told import happened, told
from quoting.core.quote.quote import Quote

YarnLine = TypeVar("YarnLine", YarnUsed, YarnTaken)


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """What is done of an order, and what was told of it.

    `rows` are what is ticked off of all blankets, `passes_done` counts their chains besides, and of
    motifs their rounds. `share` is the part that is done: of the rows, or of the stitches where
    rounds grow and motifs are made.
    `minutes` are told by what they were spent on, `used_g` and `taken_g` by the colour's name in
    the estimate, `received` by currency: what was never told is in none of them.
    """

    rows: int
    rows_done: int
    passes_done: int
    share: float
    minutes: Mapping[Doing, float]
    used_g: Mapping[str, float]
    taken_g: Mapping[str, float]
    ends: int
    ends_woven: int
    received: Mapping[str, Decimal]

    @property
    def rows_left(self) -> int:
        """The rows and rounds to come."""
        return self.rows - self.rows_done

    @property
    def ends_left(self) -> int:
        """The ends to weave in, of those that the estimate has."""
        return max(0, self.ends - self.ends_woven)


def progress_of(quote: Quote, entries: tuple[LogEntry, ...]) -> Progress:
    """Return how far an order is. Lines of a colour that is not in the quote are left out."""
    rows = made_rows(quote)
    done = min(rows.all, rows_done(entries))
    return Progress(
        rows=rows.all,
        rows_done=done,
        passes_done=sum(1 for _ in rows.places(1, done)),
        share=_share(rows, done),
        minutes=_minutes(told(entries, Session)),
        used_g=_grams(quote, ((used.colour, used.used_g) for used in told(entries, YarnUsed))),
        taken_g=_grams(quote, ((taken.colour, taken.grams) for taken in told(entries, YarnTaken))),
        ends=quote.estimate.ends,
        ends_woven=sum(woven.ends for woven in told(entries, EndsWoven)),
        received=received(entries),
    )


def _share(rows: MadeRows, done: int) -> float:
    """Return the part of the work that so many rows are."""
    if not any(worked.grows for worked in rows.passes):
        return done / rows.all
    stitches = [sum(worked.stitches.values()) for worked in rows.passes]
    worked = sum(stitches[place.pass_index] for place in rows.places(1, done))
    of_one = sum(stitches[place.pass_index] for place in rows.places(1, rows.of_one))
    return worked / (of_one * rows.blankets)


def rows_done(entries: tuple[LogEntry, ...]) -> int:
    """Return how many rows are done: the furthest that was told.

    Where a line says how many are done, what was told before it no longer counts, so that fewer
    can be told after ripping back.
    """
    done = 0
    for line in happened(entries):
        match line:
            case RowsReached():
                done = line.rows
            case Session(doing=Doing.AT_THE_HOOK, last_row=int(last)):
                done = max(done, last)
            case YarnUsed():
                done = max(done, line.rows)
    return done


def colour_in_estimate(quote: Quote, colour: str) -> str | None:
    """Return the name that an estimate has for a colour of the design; None if it has none.

    Two names that come from one yarn's colour are one there.
    """
    source = quote.order.design.source_of(colour)
    names = (some.colour for some in quote.estimate.colours if some.source == source)
    return next(names, None)


def of_colour(
    quote: Quote, entries: tuple[LogEntry, ...], kind: type[YarnLine], colour: str
) -> list[YarnLine]:
    """Return the lines of one kind that are about a colour, by its name in the estimate."""
    return [
        line for line in told(entries, kind) if colour_in_estimate(quote, line.colour) == colour
    ]


def received(entries: tuple[LogEntry, ...]) -> dict[str, Decimal]:
    """Return the money that came, less what was paid back, by currency."""
    sums: dict[str, Decimal] = {}
    for payment in told(entries, Payment):
        sums[payment.currency] = sums.get(payment.currency, Decimal(0)) + payment.amount
    return sums


def _minutes(sessions: Iterable[Session]) -> dict[Doing, float]:
    told_of: dict[Doing, list[float]] = {}
    for session in sessions:
        told_of.setdefault(session.doing, []).append(session.minutes)
    return {doing: math.fsum(minutes) for doing, minutes in told_of.items()}


def _grams(quote: Quote, lines: Iterable[tuple[str, float]]) -> dict[str, float]:
    grams: dict[str, float] = {}
    for colour, weight in lines:
        name = colour_in_estimate(quote, colour)
        if name is not None:
            grams[name] = grams.get(name, 0.0) + weight
    return grams
