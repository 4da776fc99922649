"""Designs near the one asked for that leave fewer ends, where a construction can be varied."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.quote.quote import Quote
from quoting.core.weighing.alternatives import Alternative
from quoting.core.weighing.calmer_layouts import calmer_layouts
from quoting.core.weighing.calmer_rounds import calmer_rounds
from quoting.core.weighing.calmer_stripes import calmer_stripes

CALMER: dict[type[Body], Callable[[Quote, date], tuple[Alternative, ...]]] = {
    InRows: lambda quote, today: calmer_stripes(quote, today=today),
    FromCentre: lambda quote, today: calmer_rounds(quote, today=today),
    JoinedSquares: lambda quote, today: calmer_layouts(quote, today=today),
}
"""What varies each kind of body; a construction that stands not here has no stripes to calm."""


def can_be_calmed(body: Body) -> bool:
    """Return whether designs near this one are looked for at all."""
    return type(body) in CALMER


def calmer_designs(quote: Quote, *, today: date) -> tuple[Alternative, ...]:
    """Return up to three designs with fewer ends than a quote's, the fewest ends first.

    Errors: as `check_size`.
    """
    vary = CALMER.get(type(quote.order.design.body))
    return vary(quote, today) if vary else ()
