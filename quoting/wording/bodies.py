"""How the body of a design is told in words."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import groupby
from typing import Any

from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares


def _sections(body: InRows) -> tuple[str, ...]:
    return tuple(
        _fit_or_not(
            ", ".join(f"{each.rows} {each.colour}" for each in section.stripes),
            fitted=section.fitted,
        )
        for section in body.sections
    )


def _rounds(body: FromCentre) -> tuple[str, ...]:
    told = ", ".join(f"{stripe.rounds} {stripe.colour}" for stripe in body.stripes)
    return (_fit_or_not(told, fitted=body.fitted),)


def _fit_or_not(told: str, *, fitted: bool) -> str:
    """Return stripes, and of such as are worked once that their numbers are but shares."""
    return f"{told}, each once, fit to the size" if fitted else told


def _layouts(body: JoinedSquares) -> tuple[str, ...]:
    if body.pool is not None:
        mixed = f"{', '.join(body.pool.colours)} mixed"
        return ("; then ".join(filter(None, [mixed, ", ".join(body.pool.outer)])),)
    return tuple(_in_runs(layout.colours) for layout in body.layouts)


def _in_runs(colours: Sequence[str]) -> str:
    runs = ((colour, sum(1 for _ in run)) for colour, run in groupby(colours))
    return ", ".join(f"{rounds} {colour}" for colour, rounds in runs)


TOLD: dict[type[Body], Callable[[Any], tuple[str, ...]]] = {
    InRows: _sections,
    FromCentre: _rounds,
    JoinedSquares: _layouts,
}
"""What tells each kind of body, which takes that kind alone."""


def body_words(body: Body) -> tuple[str, ...]:
    """Return the stripes of a body, by section or layout: `2 teal, 1 oat`."""
    return TOLD[type(body)](body)
