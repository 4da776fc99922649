"""How the body of each construction is drawn."""

from __future__ import annotations

from exports.drawing.bands import Draw, draw_rounds, draw_rows
from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares

DRAWN: dict[type[Body], Draw] = {
    InRows: draw_rows,
    FromCentre: draw_rounds,
    JoinedSquares: draw_rounds,
}
"""What draws each kind of body: rows as bands, rounds (`draw_rounds`) as frames."""
