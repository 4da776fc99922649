"""How the body of each construction is drawn, and what outline a blanket has."""

from __future__ import annotations

from exports.drawing.bands import Draw, draw_rounds, draw_rows
from exports.drawing.motifs import draw_motifs
from exports.drawing.outlines import CIRCLE, HEXAGON, RECTANGLE, Outline
from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.plan.passes import Plan
from quoting.core.workshop.rounds import Counting

DRAWN: dict[type[Body], Draw] = {
    InRows: draw_rows,
    FromCentre: draw_rounds,
    JoinedSquares: draw_motifs,
}
"""What draws each kind of body: rows as bands, rounds as frames, motifs in a grid."""

_OUTLINES: dict[Counting, Outline] = {Counting.CIRCLE: CIRCLE, Counting.HEXAGON: HEXAGON}


def outline_of(plan: Plan) -> Outline:
    """Return the outline of a blanket: by how its rounds grow, if they grow from its centre."""
    return RECTANGLE if plan.centre is None else _OUTLINES.get(plan.centre, RECTANGLE)
