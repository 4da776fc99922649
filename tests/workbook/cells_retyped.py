# mypy: ignore-errors
"""Types figures into an open workbook in LibreOffice; run by the Python that has its `uno` module.

Reads from standard input as JSON `{"folder": ..., "file": ..., "changes": {name: [[sheet, address,
value], ...]}}`. Writes `{name: {sheet: [[value, ...], ...]}}`: what all cells hold after each of
the changes, all of them made to the workbook as it was.
"""

import json
import sys
from pathlib import Path

from office_session import desktop_of, opened, type_in

ERRORS = 4
"""`com.sun.star.sheet.FormulaResult.ERROR`."""


def main() -> None:
    asked = json.load(sys.stdin)
    folder = Path(asked["folder"])
    with desktop_of(asked["office"], folder) as desktop:
        book = opened(desktop, folder / asked["file"])
        shown = {name: shown_after(book, typed) for name, typed in asked["changes"].items()}
        book.close(True)  # noqa: FBT003 - its own word for it
    json.dump(shown, sys.stdout)


def shown_after(book, typed):
    """Return what all sheets hold with some cells typed anew; then put back what was there."""
    cells = [(cell_of(book, *place), value) for *place, value in typed]
    before = [(cell, held_by(cell)) for cell, _ in cells]
    for cell, value in cells:
        type_in(cell, value)
    book.calculateAll()
    shown = {sheet.Name: values_of(sheet) for sheet in book.Sheets}
    for cell, (kind, held) in before:
        setattr(cell, kind, held)
    return shown


def cell_of(book, sheet, address):
    """Return a cell by its sheet and address."""
    return book.Sheets.getByName(sheet).getCellRangeByName(address)


def held_by(cell):
    """Return what a cell holds, and the attribute that it is put back by."""
    kind = {"VALUE": "Value", "TEXT": "String"}.get(cell.Type.value, "Formula")
    return kind, getattr(cell, kind)


def values_of(sheet):
    """Return the values of a sheet, from its first cell to the last used; errors as words."""
    cursor = sheet.createCursor()
    cursor.gotoEndOfUsedArea(False)  # noqa: FBT003 - no range is stretched
    last = cursor.RangeAddress
    used = sheet.getCellRangeByPosition(0, 0, last.EndColumn, last.EndRow)
    rows = [[None if value == "" else value for value in row] for row in used.getDataArray()]
    wrong = sheet.queryFormulaCells(ERRORS).Cells.createEnumeration()
    while wrong.hasMoreElements():
        cell = wrong.nextElement()
        rows[cell.CellAddress.Row][cell.CellAddress.Column] = cell.String
    return rows


if __name__ == "__main__":
    main()
