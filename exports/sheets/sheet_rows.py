"""The rows of a sheet as its part of the file holds them (ECMA-376, part 1, 18.3.1.4 and .73).

The spreadsheet library builds a tree for every cell; a text is several times as quick, and has
room for the value that a formula comes to. Links, comments and rich texts it does not know.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from typing import Any

from openpyxl.cell.cell import Cell, MergedCell
from openpyxl.utils import get_column_letter
from openpyxl.utils.datetime import to_excel
from openpyxl.worksheet.dimensions import RowDimension

from exports.sheets.cells import Value
from exports.sheets.xml_text import xml_text

Cells = Iterable[Cell | MergedCell]


def rows_text(
    rows: Iterable[tuple[int, Cells]],
    heights: Mapping[int, RowDimension],
    kept: Mapping[str, Value],
) -> str:
    """Return rows of cells; `kept` is what formulas come to, by address."""
    numbers: dict[int, int] = {}
    texts = []
    for row, cells in rows:
        inside = _cells_text(row, cells, numbers, kept)
        texts.append(f'<row r="{row}"{_attributes(heights.get(row))}>{inside}</row>')
    return "".join(texts)


def _attributes(height: RowDimension | None) -> str:
    return "".join(f' {key}="{value}"' for key, value in height) if height else ""


def _cells_text(row: int, cells: Cells, numbers: dict[int, int], kept: Mapping[str, Value]) -> str:
    """Return the cells of a row; `numbers` are those of the styles that were looked up before."""
    texts = []
    for cell in cells:
        style = id(cell._style)  # type: ignore[union-attr] # left out by the library's stubs
        if style not in numbers:
            numbers[style] = cell.style_id
        at = f"{get_column_letter(cell.column or 1)}{row}"
        texts.append(f'<c r="{at}" s="{numbers[style]}"{_content(cell, kept.get(at))}')
    return "".join(texts)


def _content(cell: Cell | MergedCell, kept: Value | None) -> str:
    """Return the rest of a cell: its kind, and what is in it."""
    value: Any = cell.value
    if value is None:
        return "/>"
    if cell.data_type == "s":
        return f' t="inlineStr"><is><t xml:space="preserve">{xml_text(str(value))}</t></is></c>'
    if cell.data_type != "f":
        return _figure(value)
    formula = f"<f>{xml_text(str(value)[1:])}</f>"
    return _figure(kept, formula)


def _figure(value: Value | date | None, formula: str = "") -> str:
    """Return a figure, or what a formula comes to, after the formula itself."""
    if value is None:
        return f">{formula}</c>"
    if isinstance(value, str):
        return f' t="str">{formula}<v>{xml_text(value)}</v></c>'
    if isinstance(value, bool):
        return f' t="b">{formula}<v>{value:d}</v></c>'
    return f">{formula}<v>{number_text(value)}</v></c>"


def number_text(value: Value | date) -> str:
    """Return a number, or a day as the number of it, as the file format writes it."""
    if isinstance(value, date):
        return str(to_excel(value))  # type: ignore[no-untyped-call]
    return repr(value) if isinstance(value, float) else str(value)
