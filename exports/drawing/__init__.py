"""The drawing of a blanket: its plan to scale, its strands, and tables that say the same."""

from __future__ import annotations

from exports.drawing.blanket import draw_blanket
from exports.drawing.side_by_side import draw_side_by_side
from exports.drawing.tables import RowsRow, StrandRow, drawing_table, rows_table

__all__ = [
    "RowsRow",
    "StrandRow",
    "draw_blanket",
    "draw_side_by_side",
    "drawing_table",
    "rows_table",
]
