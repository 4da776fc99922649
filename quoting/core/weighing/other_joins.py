"""Other joins that look like the one that was asked for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from quoting.core.order.bodies import Body
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod
from quoting.core.plan.parts import PartKind
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
    motif = [w.colour for w in plan.passes if plan.part_of(w).kind is PartKind.MOTIF]
    return motif[-1] if motif else None
