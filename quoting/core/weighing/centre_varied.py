"""A piece from the centre with a round, or a stitch of its length, less and more.

What it closes on becomes the maker's own counts, of which one is varied; the size that is asked
stays as it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from quoting.core.order.design import Design
from quoting.core.order.from_centre import FromCentre
from quoting.core.quote.quote import Quote
from quoting.core.weighing.closing import starts_on
from quoting.core.weighing.variations import Variation, Varied, both_ways


def centre_varied(quote: Quote, body: FromCentre) -> Iterator[Variation]:
    """Yield a round, or an own repeat of the stripes, less and more; then shorter and longer."""
    design, held = quote.order.design, _centre_held(quote, body)
    rounds, own, longer_by = held.rounds or 0, body.repeats, starts_on(quote.plan)
    if own is not None:
        repeated = replace(held, rounds=None)
        yield from both_ways(
            Varied.ROUND_REPEAT,
            lambda by: replace(design, body=replace(repeated, repeats=own + by)),
        )
    else:
        yield from both_ways(
            Varied.ROUND, lambda by: replace(design, body=replace(held, rounds=rounds + by))
        )
    if longer_by:
        yield from both_ways(
            Varied.START, lambda by: replace(design, body=replace(held, starts_on=longer_by + by))
        )


def centre_held(quote: Quote, body: FromCentre, design: Design) -> Design:
    """Return a design of another border whose body has the rounds that it had."""
    return replace(design, body=_centre_held(quote, body))


def _centre_held(quote: Quote, body: FromCentre) -> FromCentre:
    rounds, longer_by = len(quote.plan.rows), starts_on(quote.plan)
    return replace(body, rounds=rounds, repeats=None, starts_on=longer_by or body.starts_on)
