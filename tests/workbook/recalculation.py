"""Workbooks opened and reckoned anew in LibreOffice, as a maker's own program would."""

from __future__ import annotations

import io
import subprocess
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import openpyxl
from openpyxl.workbook import Workbook

from tests.programs import require_program

ALWAYS = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""
"""Without this the program trusts the values in the file, and a test would prove nothing."""

SECONDS = 400


def opened(content: bytes, *, values: bool = False) -> Workbook:
    """Return a workbook as the spreadsheet library reads it: its formulas, or its values."""
    return openpyxl.load_workbook(io.BytesIO(content), data_only=values)


def saved(book: Workbook) -> bytes:
    """Return a workbook as a file, without any kept value of a formula."""
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def recalculated(workbooks: Mapping[str, bytes], folder: Path) -> dict[str, Workbook]:
    """Return each workbook with the values that LibreOffice reckons; one call for all of them."""
    program = require_program("soffice", "libreoffice")
    settings = folder / "profile" / "user"
    settings.mkdir(parents=True)
    (settings / "registrymodifications.xcu").write_text(ALWAYS, encoding="utf-8")
    (folder / "in").mkdir()
    for name, content in workbooks.items():
        (folder / "in" / f"{name}.xlsx").write_bytes(content)
    command: list[Any] = [program, f"-env:UserInstallation={(folder / 'profile').as_uri()}"]
    command += ["--headless", "--convert-to", "xlsx", "--outdir", folder / "out"]
    command += sorted((folder / "in").iterdir())
    subprocess.run(command, check=True, capture_output=True, timeout=SECONDS)
    return {
        name: openpyxl.load_workbook(folder / "out" / f"{name}.xlsx", data_only=True)
        for name in workbooks
    }


def place_of(book: Workbook, name: str) -> tuple[str, str]:
    """Return the sheet and the address of a named cell."""
    text = book.defined_names[name].attr_text
    assert text is not None
    sheet, address = text.replace("$", "").split("!")
    return sheet, address


def named(book: Workbook, name: str) -> Any:
    """Return what a named cell holds."""
    sheet, address = place_of(book, name)
    return book[sheet][address].value


def formula_cells(content: bytes) -> Iterator[tuple[str, str]]:
    """Yield the sheet and the address of every formula."""
    for sheet in opened(content):
        for row in sheet.iter_rows():
            for cell in row:
                if cell.data_type == "f":
                    yield sheet.title, cell.coordinate


def differing(content: bytes, anew: Workbook) -> dict[tuple[str, str], tuple[Any, Any]]:
    """Return the formulas whose kept value is not the one reckoned anew, with both."""
    kept = opened(content, values=True)
    values = {
        (sheet, at): (kept[sheet][at].value, anew[sheet][at].value)
        for sheet, at in formula_cells(content)
    }
    return {place: both for place, both in values.items() if not same(*both)}


def same(kept: Any, reckoned: Any) -> bool:
    """Return whether two values are one figure to a billionth, or one text."""
    if isinstance(kept, (int, float)) and isinstance(reckoned, (int, float)):
        return abs(kept - reckoned) <= 1e-9 * max(1.0, abs(kept))
    return (kept or "") == (reckoned or "")
