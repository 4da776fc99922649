"""One round of LibreOffice for all the tests of this folder."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.quote.quote import Quote
from tests.workbook.changes import Change, changes
from tests.workbook.constructions import DRAWN, SEWN
from tests.workbook.orders import SURER, WIDENED, quotes
from tests.workbook.recalculation import opened, place_of, recalculated, saved

FIRST_FEE = ("D", "E", "B")
SESSION = ("C", "D", "E")
MOTIF_SESSION = ("C", "D")


UNSURE = {
    "surer of the yarn": "mixed, used",
    "surer of the squares": SEWN,
    "surer by chance": DRAWN,
}
"""Quotes by a maker who then wants to be surer of her yarn."""


@pytest.fixture(scope="session")
def all_quotes() -> dict[str, Quote]:
    return quotes()


@pytest.fixture(scope="session")
def written(all_quotes: dict[str, Quote]) -> dict[str, bytes]:
    return {name: workbook_bytes(quote) for name, quote in all_quotes.items()}


@pytest.fixture(scope="session")
def all_changes() -> dict[str, Change]:
    return changes()


@pytest.fixture(scope="session")
def reckoned_anew(
    written: dict[str, bytes],
    all_changes: dict[str, Change],
    tmp_path_factory: pytest.TempPathFactory,
) -> dict[str, Workbook]:
    """Return every workbook, and every changed one as `changed …`, reckoned by LibreOffice."""
    altered = {
        f"changed {name}": _altered(written[change.quote], change.inputs)
        for name, change in all_changes.items()
    }
    surer = {"tension": SURER.tension, "confidence": SURER.confidence, "yarn_widened": WIDENED}
    for name, quote in UNSURE.items():
        altered[name] = _altered(written[quote], surer)
    return recalculated({**written, **altered}, tmp_path_factory.mktemp("office"))


def _altered(content: bytes, inputs: Mapping[str, object]) -> bytes:
    """Return the workbook with some inputs set anew, and without any kept value of a formula."""
    book = opened(content)
    for name, value in inputs.items():
        _set(book, name, value)
    return saved(book)


def _set(book: Workbook, name: str, value: Any) -> None:
    if name == "fee":
        _set_row(book, "Costing", "Card payment", dict(zip(FIRST_FEE, value, strict=True)))
    elif name == "session":
        at = _row_of(book, "Hours", "stopped at every pause", column="B")
        _set_cells(book, "Hours", at + 1, dict(zip(SESSION, value, strict=True)))
    elif name in book.defined_names:
        sheet, address = place_of(book, name)
        book[sheet][address].value = value
    elif isinstance(value, tuple):
        _set_row(book, "Hours", name, dict(zip(MOTIF_SESSION, value, strict=True)))
    else:
        _set_row(book, "Hours", name, {"E": value})


def _set_row(
    book: Workbook, sheet: str, label: str, values: Mapping[str, Any], column: str = "A"
) -> None:
    _set_cells(book, sheet, _row_of(book, sheet, label, column=column), values)


def _row_of(book: Workbook, sheet: str, label: str, *, column: str) -> int:
    return next(cell.row for cell in book[sheet][column] if cell.value == label)


def _set_cells(book: Workbook, sheet: str, row: int, values: Mapping[str, Any]) -> None:
    for letter, value in values.items():
        book[sheet][f"{letter}{row}"].value = value
