"""How the body of each construction is drawn."""

from __future__ import annotations

from exports.drawing.bands import Draw, draw_rows
from quoting.core.order.bodies import Body
from quoting.core.order.in_rows import InRows

DRAWN: dict[type[Body], Draw] = {InRows: draw_rows}
"""What draws each kind of body: rows as bands, rounds (`draw_rounds`) as frames."""
