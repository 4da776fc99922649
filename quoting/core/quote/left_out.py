"""What an order would cost less without an extra that its buyer may leave out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from quoting.core.estimate.again import estimate_again
from quoting.core.ground.errors import Refused
from quoting.core.price.price import price_estimate
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """An extra, and how much less the whole order is without it, in its quote's currency."""

    what: str
    less: Decimal


def left_out(quote: Quote) -> Iterator[LeftOut]:
    """Yield the extras that the buyer may leave out, where the total is less without them.

    Each is left out by itself: the steps that prices are rounded in may make two together more or
    less than their sum.
    """
    for index, extra in enumerate(quote.order.extras):
        less = _less_without(index, quote) if extra.optional else Decimal(0)
        if less > 0:
            yield LeftOut(what=extra.what, less=less)


def _less_without(index: int, quote: Quote) -> Decimal:
    """Return how much less is paid without an extra; nothing where there is no price then."""
    extras = quote.order.extras
    order = replace(quote.order, extras=(*extras[:index], *extras[index + 1 :]))
    try:
        estimate = estimate_again(quote.estimate, quote.plan, order, quote.workshop)
        return quote.price.total - price_estimate(order, estimate, quote.workshop).total
    except Refused:
        return Decimal(0)
