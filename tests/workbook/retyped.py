"""A workbook in which figures are typed anew in LibreOffice, as a person does it.

It is opened once: to save and open it for each figure takes twenty times as long.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from pathlib import Path

from openpyxl.workbook import Workbook
from openpyxl.workbook.defined_name import DefinedNameDict

from tests.workbook.office_script import run_in_office
from tests.workbook.recalculation import opened

Typed = Mapping[tuple[str, str], object]
"""What is typed into cells by their sheet and address; None empties one."""

Rows = Iterable[Iterable[object]]


def retyped(content: bytes, changes: Mapping[str, Typed], folder: Path) -> dict[str, Workbook]:
    """Return the values of a workbook after each of some changes, made to it as it was written."""
    (folder / "written.xlsx").write_bytes(content)
    asked = {
        name: [[*place, value] for place, value in typed.items()] for name, typed in changes.items()
    }
    said = run_in_office("cells_retyped.py", folder, file="written.xlsx", changes=asked)
    names = opened(content).defined_names
    return {name: _book(sheets, names) for name, sheets in json.loads(said).items()}


def _book(sheets: Mapping[str, Rows], names: DefinedNameDict) -> Workbook:
    book = Workbook()
    for sheet in book.worksheets:
        book.remove(sheet)
    for title, rows in sheets.items():
        sheet = book.create_sheet(title)
        for row in rows:
            sheet.append(row)
    book.defined_names = names
    return book
