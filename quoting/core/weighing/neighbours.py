"""The next smaller and the next larger blankets of a design, count by count, each quoted."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from quoting.core.estimate.estimate import work_of
from quoting.core.ground.errors import Refused
from quoting.core.order.bodies import Body
from quoting.core.order.design import Design
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.order.resizing import own_size
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.alternatives import MOST_VARIED, check_size
from quoting.core.weighing.centre_varied import centre_held, centre_varied
from quoting.core.weighing.closing import Closing, closing_of
from quoting.core.weighing.rows_varied import rows_held, rows_varied
from quoting.core.weighing.squares_varied import squares_held, squares_varied
from quoting.core.weighing.variations import Variation, Varied, both_ways, with_border_rounds


@dataclass(frozen=True, slots=True, kw_only=True)
class Neighbour:
    """A blanket with one less or one more of something; its closing is off from what was asked."""

    varied: Varied
    more: bool
    quote: Quote
    closing: Closing


@dataclass(frozen=True, slots=True, kw_only=True)
class Near:
    """How a construction is varied, and how its body is held where the border is varied."""

    varied: Callable[[Quote, Any], Iterator[Variation]]
    held: Callable[[Quote, Any, Design], Design]


NEAR: dict[type[Body], Near] = {
    InRows: Near(varied=rows_varied, held=lambda quote, _, design: rows_held(quote, design)),
    FromCentre: Near(varied=centre_varied, held=centre_held),
    JoinedSquares: Near(varied=squares_varied, held=squares_held),
}
"""What each kind of body has one less and one more of; any other has no neighbours."""


def has_neighbours(quote: Quote) -> bool:
    """Return whether a quote's neighbours are worked out at all."""
    small = work_of(quote.plan, quote.order.quantity) <= MOST_VARIED
    return small and type(quote.order.design.body) in NEAR


def neighbours(quote: Quote, *, today: date) -> tuple[Neighbour, ...]:
    """Return a quote's neighbours, those that are refused or come out alike left out.

    Errors: as `check_size`.
    """
    check_size(quote)
    near = NEAR.get(type(quote.order.design.body))
    return () if near is None else tuple(_neighbours(quote, near, today))


def _neighbours(quote: Quote, near: Near, today: date) -> Iterator[Neighbour]:
    for variation in (
        *near.varied(quote, quote.order.design.body),
        *_borders(quote, near),
    ):
        with suppress(Refused):
            order = replace(quote.order, design=variation.design)
            other = quote_order(order, quote.workshop, today=today, ahead=quote.ahead)
            closing = closing_of(other, own_size(quote.order))
            if _is_another(other, quote, more=variation.more):
                yield Neighbour(
                    varied=variation.varied, more=variation.more, quote=other, closing=closing
                )


def _borders(quote: Quote, near: Near) -> Iterator[Variation]:
    design, body = quote.order.design, quote.order.design.body
    if not design.border:
        return

    def changed(by: int) -> Design | None:
        bordered = with_border_rounds(design, by)
        return None if bordered is None else near.held(quote, body, bordered)

    yield from both_ways(Varied.BORDER_ROUND, changed)


def _is_another(other: Quote, quote: Quote, *, more: bool) -> bool:
    """Return whether it comes out larger, or smaller, as it was meant to."""
    larger = other.plan.width_cm + other.plan.height_cm - quote.plan.width_cm - quote.plan.height_cm
    return larger > 0 if more else larger < 0
