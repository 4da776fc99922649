# mypy: ignore-errors
"""Edits sheets in LibreOffice as a person does; run by the Python that has its `uno` module.

Reads jobs from standard input as JSON: `{"folder": ..., "jobs": [[file, [edit, ...]], ...]}`, and
writes each workbook, recalculated, into the folder `out`. Edits, rows counted from one:
`["copy", sheet, row, before]` puts a copy of a row before another, `["insert", sheet, before]` an
empty one, `["delete", sheet, row]`, `["set", sheet, address, value]`.
"""

import json
import os
import subprocess
import sys
import time
from pathlib import Path

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

SECONDS, PAUSE = 60, 0.2
HIDDEN = PropertyValue("Hidden", 0, True, 0)  # noqa: FBT003 - a name, a number, a value, a state


def main() -> None:
    asked = json.load(sys.stdin)
    folder = Path(asked["folder"])
    pipe = f"pipe,name=rows{os.getpid()}"
    office = subprocess.Popen(
        [
            asked["office"],
            f"-env:UserInstallation={(folder / 'profile').as_uri()}",
            "--headless",
            "--norestore",
            f"--accept={pipe};urp;",
        ]
    )
    try:
        desktop = reached(pipe)
        for name, edits in asked["jobs"]:
            edit_file(desktop, folder, name, edits)
        desktop.terminate()
        office.wait(SECONDS)
    finally:
        office.kill()


def reached(pipe):
    """Return the desktop of the office, once it answers."""
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext(
        "com.sun.star.bridge.UnoUrlResolver", local
    )
    until = time.monotonic() + SECONDS
    while True:
        try:
            context = resolver.resolve(f"uno:{pipe};urp;StarOffice.ComponentContext")
            manager = context.ServiceManager
            return manager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
        except NoConnectException:
            if time.monotonic() > until:
                raise
            time.sleep(PAUSE)


def edit_file(desktop, folder, name, edits):
    book = desktop.loadComponentFromURL((folder / name).as_uri(), "_blank", 0, (HIDDEN,))
    for what, sheet, *how in edits:
        EDITS[what](book.Sheets.getByName(sheet), *how)
    book.calculateAll()
    kind = PropertyValue("FilterName", 0, "Calc MS Excel 2007 XML", 0)
    book.storeToURL((folder / "out" / name).as_uri(), (kind,))
    book.close(True)  # noqa: FBT003 - its own word for it


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
    """Type a number or a word into a cell."""
    cell = sheet.getCellRangeByName(address)
    if isinstance(value, str):
        cell.String = value
    else:
        cell.Value = value


EDITS = {"copy": copy_row, "insert": insert_row, "delete": delete_row, "set": set_cell}

if __name__ == "__main__":
    main()
