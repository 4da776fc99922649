"""Every boxed figure of the sheet of hours, changed in turn, gives what the program gives for it.

Where the program may have to choose another timing to rest on, the line says so.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.ground.money import exact
from quoting.core.quote.quote import Quote
from tests.workbook.edited import Edit, edited
from tests.workbook.hour_changes import Figures, expected
from tests.workbook.inputs import Input, inputs_of
from tests.workbook.orders import quotes
from tests.workbook.recalculation import named, opened

NAMES = ("making_hours", "office_hours", "all_hours", "fewest_hours", "most_hours")
QUOTES = ("timed", "guessed hours")
"""One with several timings and readings, one with guesses and work without minutes."""

BAD: dict[str, Any] = {"words": "some", "below nothing": -1, "emptied": ""}


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
    def is_spare(self) -> bool:
        return self.each.label.startswith("further timing")


def figures_of(quote: Quote) -> Figures:
    """Return the hours by the names of their cells."""
    hours = quote.estimate.hours
    figures = (hours.making, hours.office, hours.total, hours.low, hours.high)
    return dict(zip(NAMES, figures, strict=True))


def figures_in(book: Workbook) -> Figures:
    return {name: exact(named(book, name)) for name in NAMES}


def flag_of(book: Workbook, address: str) -> str:
    """Return what the line of a cell says is wrong with it."""
    row = int("".join(letter for letter in address if letter.isdigit()))
    return str(book["Hours"][f"K{row}"].value or "")


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
) -> dict[str, Workbook]:
    """Return a workbook for each change, and for each kind of bad input all over the sheet."""
    jobs: dict[str, tuple[bytes, list[Edit]]] = {
        change.job: (
            contents[change.quote],
            [("set", "Hours", change.each.address, change.each.other)],
        )
        for change in every_change
    }
    for name in QUOTES:
        boxed = [change.each.address for change in every_change if change.quote == name]
        for kind, bad in BAD.items():
            typed: list[Edit] = [("set", "Hours", address, bad) for address in boxed]
            jobs[f"{name} {kind}"] = (contents[name], typed)
    both = edited(jobs, tmp_path_factory.mktemp("hours"))
    return {job: values for job, (values, _) in both.items()}


def test_each_gives_what_the_program_gives_or_says_that_it_may_not(
    mine: dict[str, Quote], every_change: list[Changed], anew: dict[str, Workbook]
) -> None:
    wrong = {}
    for change in every_change:
        found = figures_in(anew[change.job])
        if change.is_spare:
            wanted = figures_of(mine[change.quote])
        else:
            wanted = expected(mine[change.quote], change.each, change.line, figures_of)
        if found != wanted:
            wrong[change.job, change.each.label, str(change.each.other)] = (found, wanted)
    assert wrong == {}


def test_only_a_half_filled_timing_and_a_choice_the_program_may_make_anew_are_flagged(
    every_change: list[Changed], anew: dict[str, Workbook]
) -> None:
    for change in every_change:
        said = flag_of(anew[change.job], change.each.address)
        choosing = change.each.label.startswith(("Time of ", "A stitch by", "A yarn", "A pattern"))
        if change.is_spare and change.each.column != "B":
            assert said == "a timing wants both its stitches and its minutes: it is not counted"
        elif choosing:
            assert said == "the program may let a stitch rest on another timing now"
        else:
            assert said == "", change.job
        state = str(named(anew[change.job], "state"))
        assert state.startswith("Look here: The lines of Hours") is bool(said)


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
    name: str, kind: str, every_change: list[Changed], anew: dict[str, Workbook]
) -> None:
    book = anew[f"{name} {kind}"]
    silent = [
        change.each.address
        for change in every_change
        if change.quote == name and not flag_of(book, change.each.address)
    ]
    assert silent == []
    assert errors_on(book) == []
    assert str(named(book, "state")).startswith("Look here")


@pytest.mark.parametrize("name", QUOTES)
def test_an_emptied_sheet_says_where_to_look(name: str, anew: dict[str, Workbook]) -> None:
    book = anew[f"{name} emptied"]
    assert errors_on(book) == []
    assert exact(named(book, "all_hours")) == 0
    said = [str(cell.value) for cell in book["Hours"]["K"] if cell.value]
    assert "no timing of this stitch is left: its hours are missing" in said
    assert str(named(book, "state")).startswith("Look here")


def errors_on(book: Workbook) -> list[str]:
    return [
        cell.coordinate
        for row in book["Hours"].iter_rows()
        for cell in row
        if cell.data_type == "e"
    ]
