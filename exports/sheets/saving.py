"""Saving a workbook so that it shows its figures where nothing calculates, and always alike."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Mapping
from datetime import date
from typing import Any
from xml.sax.saxutils import escape

from openpyxl import Workbook
from openpyxl.writer.excel import ExcelWriter

from exports.sheets.cells import Value

_FORMULA_CELL = re.compile(
    r'<c r="(?P<at>[A-Z]+[0-9]+)"(?P<style>[^>]*)>(?P<f><f>[^<]*</f>)<v\s*(?:/>|></v>)'
)
_STAMP = re.compile(r"(<dcterms:(?:created|modified)[^>]*>)[^<]*")


FIRST_DAY, LAST_DAY = date(1980, 1, 1), date(2107, 12, 31)
"""What the time stamp of a ZIP file can say (APPNOTE.TXT 4.4.6: years from 1980 in seven bits)."""


class _Undated(zipfile.ZipFile):
    """An archive that can be written whatever the computer's clock says."""

    def writestr(self, zinfo_or_arcname: str | zipfile.ZipInfo, data: Any, *more: Any) -> None:
        """Write a part, with no time of its own."""
        is_dated = isinstance(zinfo_or_arcname, zipfile.ZipInfo)
        part = zinfo_or_arcname if is_dated else zipfile.ZipInfo(str(zinfo_or_arcname))
        super().writestr(part, data, *more)


def saved_bytes(book: Workbook, cached: Mapping[str, Mapping[str, Value]], day: date) -> bytes:
    """Return the workbook as a file, the value of each formula written beside it.

    `cached` holds the values by sheet title and address; `day` is the time stamp of all parts.
    """
    plain = io.BytesIO()
    with _Undated(plain, "w", strict_timestamps=False) as archive:
        ExcelWriter(book, archive).save()
    paths = {
        f"xl/worksheets/sheet{number}.xml": cached.get(title, {})
        for number, title in enumerate(book.sheetnames, 1)
    }
    stamped = min(max(day, FIRST_DAY), LAST_DAY)
    stamp = (stamped.year, stamped.month, stamped.day, 0, 0, 0)
    out = io.BytesIO()
    with zipfile.ZipFile(plain) as source, zipfile.ZipFile(out, "w") as target:
        for name in source.namelist():
            part = zipfile.ZipInfo(name, stamp)
            part.compress_type = zipfile.ZIP_DEFLATED
            target.writestr(part, _finished(name, source.read(name), paths.get(name), day))
    return out.getvalue()


def _finished(name: str, content: bytes, values: Mapping[str, Value] | None, day: date) -> bytes:
    if name == "docProps/core.xml":
        return _STAMP.sub(rf"\g<1>{day:%Y-%m-%d}T00:00:00Z", content.decode()).encode()
    return _with_values(content.decode(), values).encode() if values else content


def _with_values(xml: str, values: Mapping[str, Value]) -> str:
    def filled(cell: re.Match[str]) -> str:
        value = values[cell["at"]]
        kind = ' t="str"' if isinstance(value, str) else ""
        text = escape(value) if isinstance(value, str) else number_text(value)
        return f'<c r="{cell["at"]}"{cell["style"]}{kind}>{cell["f"]}<v>{text}</v>'

    return _FORMULA_CELL.sub(filled, xml)


def number_text(value: Value) -> str:
    """Return a number as the file format writes it."""
    return repr(value) if isinstance(value, float) else str(value)
