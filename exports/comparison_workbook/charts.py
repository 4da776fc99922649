"""The two charts of the sizes, drawn by the spreadsheet program, their values kept in the file."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Literal

from openpyxl.chart import BarChart, LineChart
from openpyxl.chart.axis import ChartLines
from openpyxl.chart.data_source import (
    AxDataSource,
    NumData,
    NumDataSource,
    NumRef,
    NumVal,
    StrData,
    StrRef,
    StrVal,
)
from openpyxl.chart.label import DataLabelList
from openpyxl.chart.marker import Marker
from openpyxl.chart.series import Series, SeriesLabel
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.colors import ColorChoice
from openpyxl.drawing.fill import PatternFillProperties
from openpyxl.drawing.line import LineProperties

from exports.sheets.cells import Ref
from exports.sheets.described_charts import add_chart
from exports.sheets.grid import Grid
from exports.sheets.number_formats import Shapes
from exports.sheets.sheet_rows import number_text
from exports.sheets.xml_text import uncoded
from quoting.wording import earnings_sentence, sizes_sentence

INK, PAPER, MID, PALE = "333333", "FFFFFF", "A6A6A6", "D9D9D9"
Hatching = Literal["ltUpDiag", "ltDnDiag", "ltHorz", "ltVert"]
PAID_FOR, EARNED = "What each price pays for", "What an hour earns"
HAIRLINE_EMU, LINE_EMU = 6350, 22225


@dataclass(frozen=True, slots=True)
class Fill:
    """How a part is filled: plain, or with lines on its ground."""

    ground: str
    lines: Hatching | None = None


FILLS = (
    Fill("404040"),
    Fill(PAPER, "ltUpDiag"),
    Fill(MID),
    Fill(PAPER),
    Fill("757575"),
    Fill(PALE, "ltDnDiag"),
    Fill(PAPER, "ltHorz"),
    Fill(PAPER, "ltVert"),
    Fill("E6E6E6"),
)
"""The greys and hatchings of the parts, by which they are told apart without colour."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where a chart stands, and how large it is."""

    anchor: str
    width_cm: int
    height_cm: float


def stacked_chart(
    grid: Grid, names: Sequence[Ref], parts: Sequence[Sequence[Ref]], place: Place, shapes: Shapes
) -> None:
    """Draw a column for each size, of the parts that it pays for; each part's title comes first."""
    chart = BarChart()
    chart.title = PAID_FOR
    chart.grouping, chart.overlap, chart.gapWidth = "stacked", 100, 60
    sizes = _texts(names)
    for at, (title, *amounts) in enumerate(parts):
        series = _series(title, amounts, sizes, shapes)
        series.graphicalProperties = _fill(FILLS[at % len(FILLS)])
        series.invertIfNegative = False
        chart.series.append(series)
    _finish(chart, place, shapes, "r")
    columns = [
        (str(name.value), [(str(part[0].value), _amount(part[at])) for part in parts])
        for at, name in enumerate(names, 1)
    ]
    described = sizes_sentence(columns, shapes.speech)
    add_chart(grid.sheet, chart, place.anchor, PAID_FOR, described)


def earned_chart(
    grid: Grid,
    names: Sequence[Ref],
    earned: Sequence[Ref],
    pay: Sequence[Ref],
    place: Place,
    shapes: Shapes,
) -> None:
    """Draw a column for what an hour of each size earns, and a line for the pay; titles first."""
    chart, line = BarChart(), LineChart()
    chart.title = EARNED
    chart.gapWidth = 60
    bars = _series(earned[0], earned[1:], _texts(names), shapes)
    bars.graphicalProperties = _fill(Fill(MID))
    bars.invertIfNegative = False
    bars.dLbls = DataLabelList(showVal=True, showSerName=False, showCatName=False)
    bars.dLbls.showLegendKey = bars.dLbls.showPercent = False
    bars.dLbls.numFmt = shapes.money
    chart.series.append(bars)
    wage = _series(pay[0], pay[1:], _texts(names), shapes)
    wage.graphicalProperties = GraphicalProperties(ln=LineProperties(solidFill=INK, w=LINE_EMU))
    wage.marker = Marker(symbol="diamond", size=8, spPr=GraphicalProperties(solidFill=INK))
    wage.smooth = False
    line.series.append(wage)
    chart += line
    _finish(chart, place, shapes, "b")
    sizes = [
        (str(name.value), _amount(hour), _amount(wanted))
        for name, hour, wanted in zip(names, earned[1:], pay[1:], strict=True)
    ]
    described = earnings_sentence(sizes, shapes.speech)
    add_chart(grid.sheet, chart, place.anchor, EARNED, described)


def _amount(ref: Ref) -> Decimal:
    return Decimal(str(ref.value))


def _finish(chart: BarChart, place: Place, shapes: Shapes, key: str) -> None:
    chart.type, chart.style = "col", 1
    chart.legend.position = key
    chart.width, chart.height = place.width_cm, place.height_cm
    chart.x_axis.delete = chart.y_axis.delete = False
    chart.x_axis.tickLblPos = "low"
    chart.y_axis.numFmt, chart.y_axis.number_format = None, shapes.money
    pale = LineProperties(solidFill=PALE, w=HAIRLINE_EMU)
    chart.y_axis.majorGridlines = ChartLines(spPr=GraphicalProperties(ln=pale))


@cache
def _fill(how: Fill) -> GraphicalProperties:
    outline = LineProperties(solidFill=INK, w=HAIRLINE_EMU)
    if how.lines is None:
        return GraphicalProperties(solidFill=how.ground, ln=outline)
    pattern = PatternFillProperties(prst=how.lines, fgClr=_colour(INK), bgClr=_colour(how.ground))
    return GraphicalProperties(pattFill=pattern, ln=outline)


def _colour(code: str) -> ColorChoice:
    return ColorChoice(srgbClr=code)  # type: ignore[arg-type] # a code is what it converts


def _series(title: Ref, amounts: Sequence[Ref], sizes: StrRef, shapes: Shapes) -> Series:
    """Return a series with its title, its sizes and its values kept."""
    numbers = [NumVal(idx=at, v=number_text(ref.value)) for at, ref in enumerate(amounts)]
    kept = NumData(formatCode=shapes.money, ptCount=len(numbers), pt=numbers)
    series = Series(
        val=NumDataSource(numRef=NumRef(f=_span(amounts), numCache=kept)),
        cat=AxDataSource(strRef=sizes),
    )
    series.tx = SeriesLabel(strRef=_texts([title]))
    return series


def _texts(refs: Sequence[Ref]) -> StrRef:
    texts = [StrVal(idx=at, v=uncoded(str(ref.value))) for at, ref in enumerate(refs)]
    return StrRef(f=_span(refs), strCache=StrData(ptCount=len(texts), pt=texts))


def _span(refs: Sequence[Ref]) -> str:
    """Return a column of cells as a chart names it."""
    first, last = refs[0], refs[-1]
    return f"{first.sheet}!${first.column}${first.row}:${last.column}${last.row}"
