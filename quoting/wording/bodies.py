"""How the body of a design is told in words."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares


def _sections(body: InRows) -> tuple[str, ...]:
    return tuple(
        ", ".join(f"{stripe.rows} {stripe.colour}" for stripe in section.stripes)
        for section in body.sections
    )


def _rounds(body: FromCentre) -> tuple[str, ...]:
    return (", ".join(f"{stripe.rounds} {stripe.colour}" for stripe in body.stripes),)


def _layouts(body: JoinedSquares) -> tuple[str, ...]:
    if body.pool is not None:
        return (", ".join((*body.pool.colours, *body.pool.outer)),)
    return tuple(", ".join(layout.colours) for layout in body.layouts)


TOLD: dict[type[Body], Callable[[Any], tuple[str, ...]]] = {
    InRows: _sections,
    FromCentre: _rounds,
    JoinedSquares: _layouts,
}
"""What tells each kind of body, which takes that kind alone."""


def body_words(body: Body) -> tuple[str, ...]:
    """Return the stripes of a body, by section or layout, in the order worked: `2 teal, 1 oat`."""
    return TOLD[type(body)](body)
