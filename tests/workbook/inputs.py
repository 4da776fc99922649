"""All inputs of a sheet, found by how they look, and what else might be typed into each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from openpyxl.cell.cell import Cell
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from exports.sheets.cells import Look

INPUTS = (Look.INPUT.value, Look.WRITTEN.value)
KEYS = (Look.INPUT_KEY.value,)


@dataclass(frozen=True, slots=True)
class Input:
    """A cell that may be changed: what its line is called, and what stands in it."""

    sheet: str
    address: str
    label: str
    column: str
    value: object
    choices: tuple[str, ...]
    kind: str

    @property
    def other(self) -> object:
        """Something else that may stand there."""
        if self.choices:
            return next(word for word in self.choices if word != self.value)
        if self.kind == "textLength":
            return "another name"
        number = self.value if isinstance(self.value, (int, float)) else 0
        return number + 1 if self.kind == "whole" else round(number * 1.1 + 0.01, 4)


def inputs_of(book: Workbook, title: str, labels: str = "A") -> Iterator[Input]:
    """Yield every input of a sheet of a workbook that was opened with its formulas."""
    sheet = book[title]
    for row in sheet.iter_rows():
        for cell in row:
            if isinstance(cell, Cell) and is_input(cell):
                yield _input(sheet, cell, labels)


def is_input(cell: Cell) -> bool:
    """Return whether a cell is boxed as one to change."""
    return cell.style.startswith(INPUTS) and not cell.style.startswith(KEYS)


def _input(sheet: Worksheet, cell: Cell, labels: str) -> Input:
    rules = [
        rule for rule in sheet.data_validations.dataValidation if cell.coordinate in rule.sqref
    ]
    assert len(rules) == 1, f"{sheet.title}!{cell.coordinate} is checked once"
    (rule,) = rules
    assert rule.showErrorMessage
    assert rule.error
    words = str(rule.formula1).strip('"').split(",") if rule.type == "list" else ()
    return Input(
        sheet=sheet.title,
        address=cell.coordinate,
        label=str(sheet[f"{labels}{cell.row}"].value or ""),
        column=cell.column_letter,
        value=cell.value,
        choices=tuple(words),
        kind=str(rule.type),
    )
