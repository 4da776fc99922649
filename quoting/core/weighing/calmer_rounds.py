"""Wider stripes from a centre that leave far fewer ends, in the same colours.

Rounds begin and end at their join, so a colour is cut wherever another follows: what makes fewer
ends is fewer changes, whatever their order.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from datetime import date

from quoting.core.ground.errors import Refused
from quoting.core.order.from_centre import FromCentre, RoundStripe
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.quote.quote import Quote
from quoting.core.weighing.alternatives import (
    Alternative,
    Nearby,
    check_size,
    first_that_keep,
    keeps_colours,
)

WIDER = (2, 3, 4, 5, 6, 8, 10)
"""How many times as wide stripes are tried, the nearest first; then each colour once."""

MOST_LEFT = 0.6
"""Of the ends: stripes twice as wide leave half of them, and those of a last one that is cut."""

ONE_ROUND = 1
"""What a colour of few rounds may be off by, of which a tenth is less than a round."""


def calmer_rounds(quote: Quote, *, today: date) -> tuple[Alternative, ...]:
    """Return up to three designs with at most so much of a quote's ends, the fewest ends first.

    The stripes are so many times as wide, or are worked once each; every colour keeps its rounds
    within a tenth, or one round. Of more, those that are nearest to what was asked. Nothing is
    offered where the ends are few. Errors: as `check_size`.
    """
    check_size(quote)
    body = quote.order.design.body
    assert isinstance(body, FromCentre), "told by its class"  # noqa: S101
    if quote.estimate.ends < MANY_ENDS or body.fitted:
        return ()

    def keeps(other: Quote) -> bool:
        few = other.estimate.ends <= MOST_LEFT * quote.estimate.ends
        return few and keeps_colours(other.plan, quote.plan, or_by=ONE_ROUND)

    return first_that_keep(quote, _wider(body), keeps, today=today)


def _wider(body: FromCentre) -> Iterator[Nearby]:
    """Yield the body in wider stripes, each striping once; those too wide for a body left out."""
    held = replace(body, rounds=body.whole_rounds, repeats=None)
    for times in WIDER:
        with suppress(Refused):
            stripes = tuple(replace(each, rounds=times * each.rounds) for each in body.stripes)
            yield Nearby(body=replace(held, stripes=stripes))
    yield Nearby(body=replace(held, fitted=True))
    with suppress(Refused):
        once = _once_each(body)
        if len(once) < len(body.stripes):
            yield Nearby(body=replace(held, fitted=True, stripes=once))


def _once_each(body: FromCentre) -> tuple[RoundStripe, ...]:
    """Return a stripe of each colour with all its rounds, in the order that they first come."""
    rounds: dict[str, int] = {}
    for stripe in body.stripes:
        rounds[stripe.colour] = rounds.get(stripe.colour, 0) + stripe.rounds
    return tuple(RoundStripe(colour=colour, rounds=count) for colour, count in rounds.items())
