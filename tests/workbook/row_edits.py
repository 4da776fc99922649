# mypy: ignore-errors
"""Edits sheets in LibreOffice as a person does; run by the Python that has its `uno` module.

Reads jobs from standard input as JSON: `{"folder": ..., "jobs": [[file, [edit, ...]], ...]}`, and
writes each workbook, recalculated, into the folder `out`. Edits, rows counted from one:
`["copy", sheet, row, before]` puts a copy of a row before another, `["insert", sheet, before]` an
empty one, `["delete", sheet, row]`, `["set", sheet, address, value]`.
"""

import json
import sys
from pathlib import Path

from office_session import desktop_of, opened, stored, type_in


def main() -> None:
    asked = json.load(sys.stdin)
    folder = Path(asked["folder"])
    with desktop_of(asked["office"], folder) as desktop:
        for name, edits in asked["jobs"]:
            edit_file(desktop, folder, name, edits)


def edit_file(desktop, folder, name, edits):
    book = opened(desktop, folder / name)
    for what, sheet, *how in edits:
        EDITS[what](book.Sheets.getByName(sheet), *how)
    book.calculateAll()
    stored(book, folder / "out" / name)


def copy_row(sheet, row, before):
    """Put a copy of a row before another one."""
    sheet.Rows.insertByIndex(before - 1, 1)
    source = row - 1 if row < before else row
    cells = sheet.getCellRangeByPosition(0, source, 25, source)
    sheet.copyRange(sheet.getCellByPosition(0, before - 1).CellAddress, cells.RangeAddress)


def insert_row(sheet, before):
    """Put an empty row before another one."""
    sheet.Rows.insertByIndex(before - 1, 1)


def delete_row(sheet, row):
    """Take a row out."""
    sheet.Rows.removeByIndex(row - 1, 1)


def set_cell(sheet, address, value):
    """Type something into a cell."""
    type_in(sheet.getCellRangeByName(address), value)


EDITS = {"copy": copy_row, "insert": insert_row, "delete": delete_row, "set": set_cell}

if __name__ == "__main__":
    main()
