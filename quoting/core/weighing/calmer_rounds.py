"""Wider stripes from a centre that leave far fewer ends, in the same colours.

Rounds begin and end at their join, so a colour is cut wherever another follows: what makes fewer
ends is fewer changes, whatever their order.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from datetime import date
from itertools import zip_longest

from quoting.core.ground.errors import Refused
from quoting.core.order.from_centre import FromCentre, RoundStripe
from quoting.core.plan.passes import Plan
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.calmer_stripes import OFFERED, ROWS_DRIFT, Alternative, check_size

WIDER = (2, 3, 4, 5, 6, 8, 10)
"""How many times as wide stripes are tried, the nearest first; then each colour once."""

MOST_LEFT = 0.6
"""Of the ends: stripes twice as wide leave half of them, and those of a last one that is cut."""


def calmer_rounds(quote: Quote, *, today: date) -> tuple[Alternative, ...]:
    """Return up to three designs with at most so much of a quote's ends, the fewest ends first.

    The stripes are so many times as wide, or are worked once each; every colour keeps its rounds
    within a tenth. Of more, those that are nearest to what was asked. Nothing is offered where the
    ends are few. Errors: as `check_size`.
    """
    check_size(quote)
    body = quote.order.design.body
    assert isinstance(body, FromCentre), "told by its class"  # noqa: S101
    if quote.estimate.ends < MANY_ENDS or body.fitted:
        return ()
    offered: list[Alternative] = []
    for wider in _wider(body):
        with suppress(Refused):
            order = replace(quote.order, design=replace(quote.order.design, body=wider))
            other = quote_order(order, quote.workshop, today=today, ahead=quote.ahead)
            if other.estimate.ends <= MOST_LEFT * quote.estimate.ends and _keeps(
                other.plan, quote.plan
            ):
                distance = _distance(other.plan, quote.plan)
                offered.append(Alternative(quote=other, distance=distance))
        if len(offered) == OFFERED:
            break
    return tuple(sorted(offered, key=lambda found: found.quote.estimate.ends))


def _wider(body: FromCentre) -> Iterator[FromCentre]:
    """Yield the body in wider stripes, each striping once."""
    held = replace(body, rounds=body.whole_rounds, repeats=None)
    for times in WIDER:
        stripes = (replace(stripe, rounds=times * stripe.rounds) for stripe in body.stripes)
        yield replace(held, stripes=tuple(stripes))
    yield replace(held, fitted=True)
    once = _once_each(body)
    if len(once) < len(body.stripes):
        yield replace(held, fitted=True, stripes=once)


def _once_each(body: FromCentre) -> tuple[RoundStripe, ...]:
    """Return a stripe of each colour with all its rounds, in the order that they first come."""
    rounds: dict[str, int] = {}
    for stripe in body.stripes:
        rounds[stripe.colour] = rounds.get(stripe.colour, 0) + stripe.rounds
    return tuple(RoundStripe(colour=colour, rounds=count) for colour, count in rounds.items())


def _keeps(plan: Plan, asked: Plan) -> bool:
    """Return whether every colour has as many rounds, within a tenth."""
    rounds, wanted = plan.rows_by_colour, asked.rows_by_colour
    return rounds.keys() == wanted.keys() and all(
        abs(rounds[colour] - wanted[colour]) <= ROWS_DRIFT * wanted[colour] for colour in wanted
    )


def _distance(plan: Plan, asked: Plan) -> float:
    """Return the share of rounds, from the centre outwards, that are in another colour."""
    pairs = list(zip_longest(plan.rows, asked.rows))
    other: int = sum(a is None or b is None or a.colour != b.colour for a, b in pairs)
    return other / len(pairs)
