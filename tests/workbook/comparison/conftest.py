"""One round of LibreOffice for all the comparisons of this folder."""

from __future__ import annotations

from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.comparison_workbook import comparison_bytes
from quoting.core.weighing.comparison import Comparison
from tests.workbook.comparison.blocks import INPUTS, row_under
from tests.workbook.comparisons import Change, changes, comparisons
from tests.workbook.recalculation import opened, place_of, recalculated, saved


@pytest.fixture(scope="session")
def all_comparisons() -> dict[str, Comparison]:
    return comparisons()


@pytest.fixture(scope="session")
def all_changes() -> dict[str, Change]:
    return changes()


@pytest.fixture(scope="session")
def written(all_comparisons: dict[str, Comparison]) -> dict[str, bytes]:
    return {name: comparison_bytes(found) for name, found in all_comparisons.items()}


@pytest.fixture(scope="session")
def reckoned_anew(
    written: dict[str, bytes],
    all_changes: dict[str, Change],
    tmp_path_factory: pytest.TempPathFactory,
) -> dict[str, Workbook]:
    altered = {
        f"changed {name}": _altered(written["plain"], change)
        for name, change in all_changes.items()
    }
    return recalculated({**written, **altered}, tmp_path_factory.mktemp("office"))


def _altered(content: bytes, change: Change) -> bytes:
    """Return the workbook with some inputs set anew, and without any kept value of a formula."""
    book = opened(content)
    for name, value in change.inputs.items():
        _set(book, name, value)
    first = row_under(book, INPUTS)
    for letter, values in change.columns.items():
        for at, each in enumerate(values):
            book["Sizes"][f"{letter}{first + at}"].value = each
    return saved(book)


def _set(book: Workbook, name: str, value: Any) -> None:
    if name == "fee":
        row = next(cell.row for cell in book["Terms"]["A"] if cell.value == "Card payment")
        for letter, part in zip("DEB", value, strict=True):
            book["Terms"][f"{letter}{row}"].value = part
        return
    sheet, address = place_of(book, name)
    book[sheet][address].value = value
