"""Which colour each round from the centre has."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain, cycle, islice, repeat

from quoting.core.order.from_centre import FromCentre
from quoting.core.plan.fitted import fitted_rows


def round_colours(body: FromCentre, rounds: int) -> tuple[str, ...]:
    """Return the colour of each of so many rounds, from the centre outwards."""
    if not body.fitted:
        period = chain.from_iterable(repeat(s.colour, s.rounds) for s in body.stripes)
        return tuple(islice(cycle(tuple(period)), rounds))
    return tuple(chain.from_iterable(_fitted(body, rounds)))


def _fitted(body: FromCentre, rounds: int) -> Iterator[Iterator[str]]:
    """Yield the rounds of each stripe, worked once, in proportion to those that were typed."""
    typed = [stripe.rounds for stripe in body.stripes]
    parts = [each / sum(typed) for each in typed]
    counts = fitted_rows(parts, [1.0] * len(parts), float(rounds))
    for stripe, count in zip(body.stripes, counts, strict=True):
        yield repeat(stripe.colour, count)
