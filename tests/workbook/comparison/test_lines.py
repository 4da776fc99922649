"""Lines of a comparison copied and taken out in LibreOffice, as a maker does it.

All amounts are sums by hand of what the plain workbook says.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.comparison_workbook import comparison_bytes
from quoting.core.estimate.chores import Part
from quoting.core.ground.money import exact, round_hours
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote
from tests.workbook.comparison.figures import figures, shown
from tests.workbook.comparisons import COT, PRAM, compared
from tests.workbook.edited import Edit, broken_cells, edited
from tests.workbook.recalculation import named, opened

FOUND = compared(PRAM, COT)
PLAIN = comparison_bytes(FOUND)
ALL_WELL = "All checks are well."
Books = dict[str, tuple[Workbook, Workbook]]


def row_of(sheet: str, *words: str) -> int:
    """Return the first row in which all these words stand."""
    rows = opened(PLAIN)[sheet].iter_rows(values_only=True)
    return next(at for at, row in enumerate(rows, 1) if set(words) <= set(row))


def _edits() -> dict[str, list[Edit]]:
    box, oat = row_of("Terms", "Gift box"), row_of("Yarn", "60x75cm", "oat")
    ends = row_of("Hours", "60x75cm", "weaving in an end")
    pace = row_of("Hours", "minutes of one, as timed") + 1
    return {
        "an extra copied": [("copy", "Terms", box, box + 1)],
        "an extra taken out": [("delete", "Terms", box)],
        "a line of yarn copied": [("copy", "Yarn", oat, oat + 1), ("set", "Yarn", f"E{oat}", 1)],
        "a line of yarn taken out": [("delete", "Yarn", oat)],
        "a ball taken out": [("delete", "Yarn", row_of("Yarn", "400\u00a0g skeins"))],
        "the ball taken out": [("delete", "Yarn", row_of("Yarn", "100\u00a0g skeins"))],
        "a work copied": [("copy", "Hours", ends, ends + 1)],
        "a work taken out": [("delete", "Hours", ends)],
        "minutes taken out": [("delete", "Hours", row_of("Hours", "packing"))],
        "a pace taken out": [("delete", "Hours", pace)],
        "a size misspelt": [("set", "Yarn", f"A{oat}", "60x75")],
    }


@pytest.fixture(scope="module")
def books(tmp_path_factory: pytest.TempPathFactory) -> Books:
    jobs = {name: (PLAIN, edits) for name, edits in _edits().items()}
    return edited(jobs, tmp_path_factory.mktemp("lines"))


def pram() -> Quote:
    return FOUND.sizes[0].quote


def answers(book: Workbook) -> dict[str, Any]:
    """Return what the first sheet says of the first size, by its headings."""
    sheet, row = book["Sizes"], row_of("Sizes", "price of one", "an hour earns")
    titles = [cell.value for cell in sheet[row]]
    return dict(zip(titles, (cell.value for cell in sheet[row + 1]), strict=True))


@pytest.mark.parametrize("name", list(_edits()))
def test_no_cell_loses_what_it_read(name: str, books: Books) -> None:
    assert list(broken_cells(*books[name])) == []


def test_a_copied_extra_is_paid_for_once_more(books: Books) -> None:
    book = books["an extra copied"][0]
    assert exact(answers(book)["all costs"]) == pram().price.cost + Decimal("3.20")
    assert named(book, "state") == ALL_WELL


def test_an_extra_taken_out_costs_nothing(books: Books) -> None:
    book = books["an extra taken out"][0]
    assert exact(answers(book)["all costs"]) == pram().price.cost - Decimal("3.20")


def test_a_copied_line_of_yarn_is_a_further_skein_of_its_size(books: Books) -> None:
    """The line above the copy has one skein instead of its own two, at 4.60."""
    book = books["a line of yarn copied"][0]
    assert exact(answers(book)["all costs"]) == pram().price.cost + Decimal("4.60")
    assert named(book, "state") == ALL_WELL


def test_a_line_of_yarn_taken_out_is_not_paid_for(books: Books) -> None:
    book = books["a line of yarn taken out"][0]
    oat = pram().price.yarn_cost("oat")
    assert oat < pram().price.amount(LineKind.YARN)
    assert exact(answers(book)["all costs"]) == pram().price.cost - oat


@pytest.mark.parametrize(("name", "many"), [("a work copied", 2), ("a work taken out", 0)])
def test_work_counts_as_often_as_its_line_stands_there(name: str, many: int, books: Books) -> None:
    hours = pram().estimate.hours
    ends = sum(task.minutes for task in hours.tasks if task.part is Part.WEAVING_IN)
    wanted = hours.total - hours.of(Part.WEAVING_IN) + round_hours(many * ends)
    assert exact(answers(books[name][0])["hours"]) == wanted


def test_a_ball_that_no_size_takes_may_go(books: Books) -> None:
    book = books["a ball taken out"][0]
    assert shown(book, 2) == figures(FOUND)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("the ball taken out", "no such skein is among the prices"),
        ("minutes taken out", "no minutes of one are given for such work"),
        ("a pace taken out", "no such stitch is among your paces"),
        ("a size misspelt", "no such size is compared"),
    ],
)
def test_words_that_nothing_answers_to_are_told_on_top(name: str, said: str, books: Books) -> None:
    assert said in str(named(books[name][0], "state"))
