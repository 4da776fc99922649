"""Saving a workbook so that it shows its figures where nothing calculates, and always alike."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from datetime import date, datetime
from typing import Any
from xml.etree.ElementTree import tostring

from openpyxl import Workbook
from openpyxl.worksheet._writer import WorksheetWriter
from openpyxl.worksheet.worksheet import Worksheet
from openpyxl.writer.excel import ExcelWriter

from exports.sheets.cells import Value
from exports.sheets.described_charts import DescribedDrawing
from exports.sheets.sheet_rows import rows_text

FIRST_DAY, LAST_DAY = date(1980, 1, 1), date(2107, 12, 31)
"""What the time stamp of a ZIP file can say (APPNOTE.TXT 4.4.6: years from 1980 in seven bits)."""

QUICK = 3
"""How hard the parts are packed: a tenth larger than at the usual 6, in half the time."""

NO_ROWS = "<sheetData></sheetData>"


def saved_bytes(book: Workbook, cached: Mapping[str, Mapping[str, Value]], day: date) -> bytes:
    """Return the workbook as a file, the value of each formula written beside it.

    `cached` holds the values by sheet title and address; `day` is the time stamp of all parts.
    """
    book.properties.created = book.properties.modified = datetime(day.year, day.month, day.day)  # noqa: DTZ001
    undated: Any = book
    undated._colors = []  # the palette of old programs, which no cell of ours uses
    out = io.BytesIO()
    with _Archive(out, day) as archive:
        _BookWriter(book, archive, cached).write_data()
    return out.getvalue()


class _Archive(zipfile.ZipFile):
    """An archive whose parts all bear one day, whatever the computer's clock says."""

    def __init__(self, out: io.BytesIO, day: date) -> None:
        super().__init__(out, "w")
        stamped = min(max(day, FIRST_DAY), LAST_DAY)
        self._stamp = (stamped.year, stamped.month, stamped.day, 0, 0, 0)

    def writestr(self, name: str | zipfile.ZipInfo, data: Any, *_: Any) -> None:
        """Write a part under its name."""
        part = zipfile.ZipInfo(str(name), self._stamp)
        super().writestr(part, data, zipfile.ZIP_DEFLATED, QUICK)


class _BookWriter(ExcelWriter):
    """Writes the parts of a workbook, its formulas with the values they come to."""

    def __init__(
        self, book: Workbook, archive: zipfile.ZipFile, cached: Mapping[str, Mapping[str, Value]]
    ) -> None:
        super().__init__(book, archive)
        self._parts, self._cached = archive, cached

    def write_worksheet(self, ws: Worksheet) -> None:
        """Write a sheet, and keep what belongs to it for its own parts."""
        sheet: Any = ws  # the library's stubs leave out what its own writer keeps there
        sheet._drawing = DescribedDrawing()
        sheet._drawing.charts = sheet._charts
        writer: Any = _SheetWriter(ws)
        self._parts.writestr(ws.path[1:], writer.text(self._cached.get(ws.title, {})))
        sheet._rels = writer._rels
        self.manifest.append(ws)

    def _write_charts(self) -> None:
        """Write the charts as text at once, which is quicker than byte by byte."""
        writer: Any = self
        for chart in writer._charts:
            self._parts.writestr(chart.path[1:], tostring(chart._write(), encoding="unicode"))
            self.manifest.append(chart)


class _SheetWriter(WorksheetWriter):
    """Has the library write all of a sheet but its rows, and puts these in their place."""

    def __init__(self, sheet: Worksheet) -> None:
        super().__init__(sheet, io.BytesIO())
        self._heights = sheet.row_dimensions

    def rows(self) -> list[Any]:
        """Return none of the rows, which are written apart."""
        return []

    def text(self, kept: Mapping[str, Value]) -> str:
        """Return the sheet's part of the file."""
        self.write()
        before, _, after = self.read().decode().partition(NO_ROWS)
        rows = rows_text(super().rows(), self._heights, kept)
        return f"{before}<sheetData>{rows}</sheetData>{after}"
