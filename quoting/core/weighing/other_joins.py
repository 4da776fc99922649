"""Other joins that look like the one that was asked for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from quoting.core.order.bodies import Body
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod
from quoting.core.plan.layout_colours import layouts_made
from quoting.core.plan.passes import Plan

ALIKE = (
    (JoinMethod.AS_YOU_GO, JoinMethod.CONTINUOUS),
    (JoinMethod.WHIPSTITCH, JoinMethod.MATTRESS),
    (JoinMethod.SLIP_STITCH, JoinMethod.SINGLE_CROCHET),
)
"""Joins that look much alike: worked into the last round, sewn, crocheted (common practice)."""


def other_joins(body: Body, plan: Plan) -> Iterator[tuple[JoinMethod, JoinedSquares]]:
    """Yield the joins that look like a body's own, with the body joined so; of others, nothing."""
    if not isinstance(body, JoinedSquares):
        return
    for alike in ALIKE:
        for method in alike if body.join.method in alike else ():
            if method is not body.join.method:
                colour = body.join.colour or _last_colour(plan)
                join = replace(body.join, method=method, colour=colour, added_cm=None)
                yield method, replace(body, join=join)


def _last_colour(plan: Plan) -> str | None:
    """Return the colour that the motifs of the first layout end in."""
    layouts = layouts_made(plan)
    return layouts[0].own_colours[-1] if layouts else None
