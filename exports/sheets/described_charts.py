"""Charts on a sheet, each with a name and with what it shows for whoever does not see it.

Source: ECMA-376, part 1, 20.5.2.8 (cNvPr): `name` and `descr`, the alternative text.
"""

from __future__ import annotations

from typing import Any

from openpyxl.chart._chart import ChartBase
from openpyxl.drawing.graphic import GraphicFrame
from openpyxl.drawing.spreadsheet_drawing import AnchorMarker, OneCellAnchor, SpreadsheetDrawing
from openpyxl.drawing.xdr import XDRPositiveSize2D
from openpyxl.utils.cell import coordinate_to_tuple
from openpyxl.worksheet.worksheet import Worksheet

from exports.sheets.cells import clean_text

EMU_PER_CM = 360_000
"""Source: ECMA-376, part 1, 20.1.10.16 (ST_Coordinate): English metric units."""


class DescribedPlace(OneCellAnchor):
    """Where a chart stands and how large it is, what it is called, and what it shows."""

    __elements__ = OneCellAnchor.__elements__

    def __init__(self, anchor: str, chart: ChartBase, name: str, described: str) -> None:
        row, column = coordinate_to_tuple(anchor)
        wide, high = (round(side * EMU_PER_CM) for side in (chart.width, chart.height))
        super().__init__(
            _from=AnchorMarker(col=column - 1, row=row - 1), ext=XDRPositiveSize2D(wide, high)
        )
        self.name, self.described = clean_text(name), clean_text(described)


class DescribedDrawing(SpreadsheetDrawing):
    """The charts of a sheet; the library's own drawing has no words for them."""

    __elements__ = SpreadsheetDrawing.__elements__

    def _chart_frame(self, number: int) -> GraphicFrame:
        frame: GraphicFrame = super()._chart_frame(number)  # type: ignore[misc] # left out of stubs
        place = self.charts[number - 1].anchor
        if isinstance(place, DescribedPlace):
            words: Any = frame.nvGraphicFramePr.cNvPr
            words.name, words.descr = place.name, place.described
        return frame


def add_chart(sheet: Worksheet, chart: ChartBase, anchor: str, name: str, described: str) -> None:
    """Put a chart on a sheet, its upper left corner in a cell; `described` says what it shows."""
    place: Any = DescribedPlace(anchor, chart, name, described)  # the stubs allow an address only
    sheet.add_chart(chart, place)
