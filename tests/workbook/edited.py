"""Workbooks whose rows are copied, put in and taken out in LibreOffice, as a person does it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

import openpyxl
from openpyxl.workbook import Workbook

from tests.workbook.office_script import run_in_office

Edit = tuple[object, ...]
"""As `tests/workbook/row_edits.py` reads it."""


def edited(
    jobs: Mapping[str, tuple[bytes, Sequence[Edit]]], folder: Path
) -> dict[str, tuple[Workbook, Workbook]]:
    """Return each workbook after its edits: its values, reckoned anew, and its formulas."""
    (folder / "out").mkdir()
    for name, (content, _) in jobs.items():
        (folder / f"{name}.xlsx").write_bytes(content)
    asked = [(f"{name}.xlsx", edits) for name, (_, edits) in jobs.items()]
    run_in_office("row_edits.py", folder, jobs=asked)
    return {name: _both(folder / "out" / f"{name}.xlsx") for name in jobs}


def _both(path: Path) -> tuple[Workbook, Workbook]:
    return openpyxl.load_workbook(path, data_only=True), openpyxl.load_workbook(path)


def broken_cells(values: Workbook, formulas: Workbook) -> Iterator[tuple[str, str, object]]:
    """Yield every cell that shows an error, or whose formula has lost what it read."""
    for sheet in values:
        for row in sheet.iter_rows():
            for cell in row:
                formula = formulas[sheet.title][cell.coordinate].value
                if cell.data_type == "e" or "#REF!" in str(formula):
                    yield sheet.title, cell.coordinate, formula
