"""Where the price goes: a table that adds up to the total, and a chart of it."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from openpyxl.chart import BarChart, Reference
from openpyxl.chart.data_source import NumData, NumDataSource, NumRef, NumVal
from openpyxl.chart.label import DataLabelList
from openpyxl.chart.layout import Layout, ManualLayout
from openpyxl.chart.series import Series
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.chart.text import RichText, Text
from openpyxl.chart.title import Title
from openpyxl.drawing.text import (
    CharacterProperties,
    Paragraph,
    ParagraphProperties,
    RegularTextRun,
)

from exports.costing_workbook.costing.costs_block import FOOT_GAP
from exports.costing_workbook.costing.result_block import ResultRefs, Sums
from exports.price_parts import part_amounts
from exports.sheets.cells import Cell, Formula, Look, Ref, beside, heads, reckoned, total_of, words
from exports.sheets.checks import Check
from exports.sheets.described_charts import add_chart
from exports.sheets.grid import Fault, Grid
from exports.sheets.number_formats import ROUGH_SHARE, Shapes
from exports.sheets.sheet_rows import number_text
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote
from quoting.wording import parts_sentence

KINDS = {
    "Yarn": (LineKind.YARN,),
    "Making": (LineKind.MAKING,),
    "Admin: photos, packing, messages": (LineKind.OFFICE,),
    "Overhead": (LineKind.OVERHEAD,),
    "Extras": (LineKind.EXTRA,),
    "Packaging and delivery": (LineKind.PACKAGING, LineKind.DELIVERY),
}
PARTS = (*KINDS, "Fees", "Sales tax", "Profit")
TITLE = "Where the price goes"
INK_GREY = "595959"
SMALL_PRINT, TITLE_PRINT = 800, 1000
"""In hundredths of a point."""

WIDTH_CM, HEIGHT_CM = 11, 5.2
PLOT = ManualLayout(layoutTarget="inner", xMode="edge", yMode="edge", x=0.4, y=0.16, w=0.45, h=0.82)


def shares_block(grid: Grid, quote: Quote, sums: Sums, result: ResultRefs, shapes: Shapes) -> Check:
    """Write what each part of the price pays for, and its chart; return the check of their sum."""
    grid.block(TITLE)
    grid.line(*heads("", "", "", "", "share", "amount", figures_from=4))
    total = sums.paid.total
    refs = []
    for label, expression, value in _parts(quote, sums, result):
        row = grid.next_row
        share = f"IF({total}=0,0,{beside('F', row)}/{total})"
        line = grid.line(
            words(label),
            None,
            None,
            None,
            reckoned(share, quote.price.sold.share(value), ROUGH_SHARE),
            reckoned(expression, value, shapes.money),
        )
        refs.append((line[0], line[2]))
    amounts = [amount for _, amount in refs]
    adds_up = f"ROUND({total_of(amounts)}-{total},{shapes.digits})=0"
    said = Formula(
        f'IF({adds_up},"adds up to the total","does not add up")', "adds up to the total"
    )
    check = Cell(said, Look.TOTAL)
    ref = grid.line(words("Check", Look.FOOT), *FOOT_GAP, check)[-1]
    grid.name("check", ref)
    _chart(grid, [label for label, _ in refs], amounts, shapes)
    return Check(
        "Where the price goes",
        Fault(f"NOT({adds_up})", '"costs, fees, tax and profit do not add up to the total"'),
    )


def _parts(quote: Quote, sums: Sums, result: ResultRefs) -> Iterator[tuple[str, str, Decimal]]:
    costs = (sums.costs.of(*kinds) for kinds in KINDS.values())
    cells = (*costs, str(sums.fees), str(sums.paid.tax), str(result.profit))
    yield from zip(PARTS, cells, part_amounts(quote.price, KINDS.values()), strict=True)


def _chart(grid: Grid, labels: list[Ref], amounts: list[Ref], shapes: Shapes) -> None:
    """Draw the table as bars, one to each part, the first on top, with its amount beside it."""
    first, last = labels[0].row, labels[-1].row
    chart = BarChart()
    chart.type, chart.style, chart.gapWidth, chart.legend = "bar", 1, 40, None
    chart.title = _title(TITLE)
    chart.width, chart.height = WIDTH_CM, HEIGHT_CM
    chart.add_data(Reference(grid.sheet, min_col=6, min_row=first, max_row=last))
    chart.set_categories(Reference(grid.sheet, min_col=1, min_row=first, max_row=last))
    chart.x_axis.scaling.orientation = "maxMin"
    chart.x_axis.delete, chart.y_axis.delete = False, True
    chart.y_axis.majorGridlines = None
    series = chart.series[0]
    series.graphicalProperties = GraphicalProperties(solidFill=INK_GREY)
    series.invertIfNegative = False
    series.dLbls = DataLabelList(showVal=True, showSerName=False, showCatName=False)
    series.dLbls.showLegendKey = series.dLbls.showPercent = False
    series.dLbls.numFmt = shapes.bare_money
    chart.x_axis.txPr = series.dLbls.txPr = small_print()
    chart.layout = Layout(manualLayout=PLOT)
    _keep_values(series, amounts, shapes)
    parts = [Decimal(str(ref.value)) for ref in amounts]
    named = zip((str(label.value) for label in labels), parts, strict=True)
    described = parts_sentence(sum(parts, Decimal(0)), named, shapes.speech)
    add_chart(grid.sheet, chart, f"B{first - 1}", TITLE, described)


def _title(text: str) -> Title:
    """Return a title over a chart, larger than its small print."""
    bold = CharacterProperties(sz=TITLE_PRINT, b=True)
    line = Paragraph(pPr=ParagraphProperties(defRPr=bold), r=[RegularTextRun(rPr=bold, t=text)])
    return Title(tx=Text(rich=RichText(p=[line])), overlay=False)


def small_print() -> RichText:
    """Return text small enough for a bar's name and its amount."""
    small = CharacterProperties(sz=SMALL_PRINT)
    return RichText(p=[Paragraph(pPr=ParagraphProperties(defRPr=small), endParaRPr=small)])


def _keep_values(series: Series, amounts: list[Ref], shapes: Shapes) -> None:
    """Write the values into the chart, for programs that show it without calculating."""
    numbers = [NumVal(idx=at, v=number_text(ref.value)) for at, ref in enumerate(amounts)]
    kept = NumData(formatCode=shapes.money, ptCount=len(numbers), pt=numbers)
    source = f"Costing!$F${amounts[0].row}:$F${amounts[-1].row}"
    series.val = NumDataSource(numRef=NumRef(f=source, numCache=kept))
