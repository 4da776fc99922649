"""Designs near the one asked for: which orders they are tried for, and those that are offered."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date
from itertools import zip_longest

from quoting.core.estimate.estimate import work_of
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.order.bodies import Body
from quoting.core.order.design import Design
from quoting.core.plan.passes import Plan
from quoting.core.quote.quote import Quote, quote_order

OFFERED = 3

MOST_VARIED = 1_500
"""Of work, as `work_of` has it, for which other designs are tried at all."""

ROWS_DRIFT = 0.10
"""How far the rows, or rounds, of each colour may be off from what was asked."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Alternative:
    """A design near the one asked for. `distance` is the share of its rows in another colour."""

    quote: Quote
    distance: float

    @property
    def design(self) -> Design:
        """The design."""
        return self.quote.order.design


@dataclass(frozen=True, slots=True, kw_only=True)
class Nearby:
    """A body to try. `distance` is that of the alternative, where it is known before the plan."""

    body: Body
    distance: float | None = None


def check_size(quote: Quote, place: str = "") -> None:
    """Refuse to try changes of a large order, each of which takes as long as the order itself.

    Errors: `too-large-to-vary`, at `place`.
    """
    if work_of(quote.plan, quote.order.quantity) > MOST_VARIED:
        raise refuse(place, MistakeCode.TOO_LARGE_TO_VARY)


def first_that_keep(
    quote: Quote, tried: Iterable[Nearby], keeps: Callable[[Quote], bool], *, today: date
) -> tuple[Alternative, ...]:
    """Return the first three that can be made and keep what is to be kept, the fewest ends first.

    No more are tried than it takes to find them.
    """
    found: list[Alternative] = []
    for nearby in tried:
        with suppress(Refused):
            order = replace(quote.order, design=replace(quote.order.design, body=nearby.body))
            other = quote_order(order, quote.workshop, today=today, ahead=quote.ahead)
            if keeps(other):
                distance = nearby.distance
                if distance is None:
                    distance = rows_elsewhere(other.plan, quote.plan)
                found.append(Alternative(quote=other, distance=distance))
        if len(found) == OFFERED:
            break
    return tuple(sorted(found, key=lambda alternative: alternative.quote.estimate.ends))


def rows_elsewhere(plan: Plan, asked: Plan) -> float:
    """Return the share of rows, counted from the first, that are in another colour than asked."""
    pairs = list(zip_longest(plan.rows, asked.rows))
    other: int = sum(
        mine is None or his is None or mine.colour != his.colour for mine, his in pairs
    )
    return other / len(pairs)


def keeps_colours(plan: Plan, asked: Plan, *, or_by: int = 0) -> bool:
    """Return whether every colour has as many rows as asked, within a tenth, or by so many."""
    rows, wanted = plan.rows_by_colour, asked.rows_by_colour
    return rows.keys() == wanted.keys() and all(
        abs(rows[colour] - wanted[colour]) <= max(or_by, ROWS_DRIFT * wanted[colour])
        for colour in wanted
    )
