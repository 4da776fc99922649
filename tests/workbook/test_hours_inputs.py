"""Every boxed figure of the sheet of hours, changed in turn, gives what the program gives for it.

Where the program may have to choose another timing to rest on, the line says so.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from itertools import product
from typing import Any

import pytest
from openpyxl.worksheet.worksheet import Worksheet

from exports.costing_workbook import workbook_bytes
from quoting.core.ground.money import exact
from quoting.core.quote.quote import Quote
from tests.workbook.constructions import AS_YOU_GO, DRAWN
from tests.workbook.hour_changes import Figures, expected
from tests.workbook.inputs import Input, inputs_of
from tests.workbook.orders import quotes
from tests.workbook.recalculation import opened, place_of, recalculated, saved

NAMES = ("making_hours", "office_hours", "all_hours", "fewest_hours", "most_hours")
QUOTES = ("timed", "guessed hours", AS_YOU_GO, DRAWN)
"""Some with several timings and readings, with guesses, with work without minutes, with motifs."""

Typed = dict[str, Any]
"""What is typed, by the address that it is typed into."""

HALF_FILLED = [
    f"a timing wants both its {many} and its minutes: it is not counted"
    for many in ("stitches", "motifs")
]
COUNTED = "motifs with other rounds were counted by it: the program counts anew"

OTHERS = {"A range should hold": 0.9, "Timings of which a range is promised": 2}
BAD: dict[str, Any] = {"words": "some", "below nothing": -1, "emptied": None}


@dataclass(frozen=True, slots=True)
class Changed:
    """One boxed figure of a quote's workbook, and which of the lines of its label it is in."""

    quote: str
    each: Input
    line: int

    @property
    def job(self) -> str:
        return f"{self.quote} {self.each.address}"

    @property
    def other(self) -> Any:
        """Something else that the program takes there, too."""
        return OTHERS.get(self.each.label, self.each.other)

    @property
    def is_spare(self) -> bool:
        return self.each.label.startswith("further timing")


def figures_of(quote: Quote) -> Figures:
    """Return the hours by the names of their cells."""
    hours = quote.estimate.hours
    figures = (hours.making, hours.office, hours.total, hours.low, hours.high)
    return dict(zip(NAMES, figures, strict=True))


def figures_in(sheet: Worksheet, places: dict[str, str]) -> Figures:
    """Return the same figures of a copy of the sheet, by where they stand."""
    return {name: exact(sheet[at].value) for name, at in places.items()}


def flag_of(sheet: Worksheet, address: str) -> str:
    """Return what the line of a cell says is wrong with it."""
    row = int("".join(letter for letter in address if letter.isdigit()))
    return str(sheet[f"K{row}"].value or "")


def changes_of(name: str, content: bytes) -> list[Changed]:
    found, lines = [], Counter[tuple[str, str]]()
    for each in inputs_of(opened(content), "Hours"):
        found.append(Changed(name, each, lines[each.label, each.column]))
        lines[each.label, each.column] += 1
    return found


@pytest.fixture(scope="module")
def mine() -> dict[str, Quote]:
    every = quotes()
    return {name: every[name] for name in QUOTES}


@pytest.fixture(scope="module")
def contents(mine: dict[str, Quote]) -> dict[str, bytes]:
    return {name: workbook_bytes(quote) for name, quote in mine.items()}


@pytest.fixture(scope="module")
def every_change(contents: dict[str, bytes]) -> list[Changed]:
    return [change for name, content in contents.items() for change in changes_of(name, content)]


@pytest.fixture(scope="module")
def anew(
    contents: dict[str, bytes],
    every_change: list[Changed],
    tmp_path_factory: pytest.TempPathFactory,
) -> dict[str, Worksheet]:
    """Return the sheet for each change, and for each kind of bad input all over it."""
    jobs: dict[str, dict[str, Typed]] = {name: {} for name in QUOTES}
    for change in every_change:
        jobs[change.quote][change.job] = {change.each.address: change.other}
    for name, kind in product(QUOTES, BAD):
        boxed = [change.each.address for change in every_change if change.quote == name]
        jobs[name][f"{name} {kind}"] = dict.fromkeys(boxed, BAD[kind])
    books = {name: with_copies(content, jobs[name]) for name, content in contents.items()}
    reckoned = recalculated(books, tmp_path_factory.mktemp("hours"))
    return {job: reckoned[name][job] for name in QUOTES for job in jobs[name]}


def with_copies(content: bytes, jobs: dict[str, Typed]) -> bytes:
    """Return a workbook of nothing but copies of the sheet of hours, each otherwise filled."""
    book = opened(content)
    others = book.worksheets
    for title, typed in jobs.items():
        copy = book.copy_worksheet(book["Hours"])
        copy.title = title
        copy["A2"].value = None
        for address, value in typed.items():
            copy[address].value = value
    for sheet in others:
        book.remove(sheet)
    book.defined_names.clear()
    return saved(book)


def test_each_gives_what_the_program_gives_or_says_that_it_may_not(
    mine: dict[str, Quote],
    contents: dict[str, bytes],
    every_change: list[Changed],
    anew: dict[str, Worksheet],
) -> None:
    books = {name: opened(content) for name, content in contents.items()}
    places = {
        name: {figure: place_of(book, figure)[1] for figure in NAMES}
        for name, book in books.items()
    }
    wrong = {}
    for change in every_change:
        found = figures_in(anew[change.job], places[change.quote])
        if change.is_spare:
            wanted = figures_of(mine[change.quote])
        else:
            wanted = expected(
                mine[change.quote], change.each, change.other, change.line, figures_of
            )
        if found != wanted and flag_of(anew[change.job], change.each.address) != COUNTED:
            wrong[change.job, change.each.label, str(change.other)] = (found, wanted)
    assert wrong == {}


def test_only_a_half_filled_timing_and_a_choice_the_program_may_make_anew_are_flagged(
    mine: dict[str, Quote], every_change: list[Changed], anew: dict[str, Worksheet]
) -> None:
    for change in every_change:
        timed = {timing.timed for timing in mine[change.quote].workshop.timings}
        said = flag_of(anew[change.job], change.each.address)
        choosing = change.each.label.startswith(("Time of ", "A stitch by", "A yarn", "A pattern"))
        if change.is_spare and change.each.column != "B":
            assert said in HALF_FILLED
        elif said == COUNTED:
            assert change.each.label.startswith("Time of ")
        elif choosing and len(timed) > 1:
            assert said == "the program may let a stitch rest on another timing now"
        else:
            assert said == "", change.job


def test_every_boxed_figure_is_read_by_some_formula(
    contents: dict[str, bytes], every_change: list[Changed]
) -> None:
    formulas = {
        name: [
            str(cell.value)
            for row in opened(content)["Hours"].iter_rows(max_col=10)
            for cell in row
            if cell.data_type == "f"
        ]
        for name, content in contents.items()
    }
    for change in every_change:
        letter, row = change.each.column, change.each.address.lstrip("ABCDEFGHIJ")
        told = (f"${letter}${row}", f"{letter}{row})", f"{letter}{row}=")
        assert any(at in text for at in told for text in formulas[change.quote]), change.job


@pytest.mark.parametrize("kind", ["words", "below nothing"])
@pytest.mark.parametrize("name", QUOTES)
def test_what_cannot_stand_in_a_box_is_said_beside_it_and_breaks_no_formula(
    name: str, kind: str, every_change: list[Changed], anew: dict[str, Worksheet]
) -> None:
    sheet = anew[f"{name} {kind}"]
    silent = [
        change.each.address
        for change in every_change
        if change.quote == name and not flag_of(sheet, change.each.address)
    ]
    assert silent == []
    assert errors_on(sheet) == []


@pytest.mark.parametrize("name", QUOTES)
def test_an_emptied_sheet_says_where_to_look(name: str, anew: dict[str, Worksheet]) -> None:
    sheet = anew[f"{name} emptied"]
    assert errors_on(sheet) == []
    said = [str(cell.value) for cell in sheet["K"] if cell.value]
    assert "no timing of this stitch is left: its hours are missing" in said


def errors_on(sheet: Worksheet) -> list[str]:
    return [cell.coordinate for row in sheet.iter_rows() for cell in row if cell.data_type == "e"]
