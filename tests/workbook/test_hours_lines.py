"""Lines of the hours that are copied, filled and taken out, as a person does it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.estimate.chores import Part
from quoting.core.quote.quote import Quote
from quoting.core.workshop.timings import Timing
from tests.examples import sample_quote, sample_workshop
from tests.workbook.edited import Edit, broken_cells, edited
from tests.workbook.guessed_hours import guessed_quote
from tests.workbook.hour_changes import timings_called, with_minutes, with_more, with_shop
from tests.workbook.orders import quotes
from tests.workbook.recalculation import named, opened
from tests.workbook.test_recalculation import main_figures, shown

FURTHER = (
    Timing(stitch="hdc", stitches=450, minutes=26.0, rows=4),
    Timing(stitch="hdc", stitches=520, minutes=27.0, hands_on=True),
)


def timed() -> Quote:
    """Return a quote with three timings of one stitch, one of another, and measured other work."""
    return quotes()["timed"]


def promised() -> Quote:
    """Return a quote all of whose stitches rest on three timings."""
    session = Timing(stitch="hdc", stitches=500, minutes=27.0, rows=5)
    others = (replace(session, minutes=28.0), replace(session, minutes=25.5))
    return sample_quote(None, sample_workshop(timings=(session, *others)))


def row_of(quote: Quote, label: str, nth: int = 0) -> int:
    """Return the row of a line of the hours, by what it is called."""
    sheet = opened(workbook_bytes(quote))["Hours"]
    return [cell.row for cell in sheet["A"] if cell.value == label][nth]


def without_timing(quote: Quote, label: str, nth: int) -> Quote:
    gone = timings_called(quote, label)[nth]
    timings = [each for at, each in enumerate(quote.workshop.timings) if at != gone]
    return with_shop(quote, timings=tuple(timings))


def filled(quote: Quote) -> list[Edit]:
    """Return what is typed into the two spare lines of a stitch."""
    return [
        ("set", "Hours", f"{letter}{row_of(quote, 'further timing of hdc', at)}", value)
        for at, timing in enumerate(FURTHER)
        for letter, value in zip(
            "BCDE",
            (
                "yes" if timing.hands_on else "no",
                timing.stitches,
                timing.minutes,
                timing.rows,
            ),
            strict=True,
        )
    ]


def cases() -> dict[str, tuple[Quote, list[Edit], Quote]]:
    """Return edits of a quote's hours by name, and the quote that they should give."""
    quote, guessed = timed(), guessed_quote()
    session, spare = row_of(quote, "timing of hdc"), row_of(quote, "further timing of hdc")
    first = quote.workshop.timings[timings_called(quote, "timing of hdc")[0]]
    return {
        "a timing copied": (
            quote,
            [("copy", "Hours", session, spare)],
            with_more(quote, first),
        ),
        "a timing copied to the end": (
            quote,
            [("copy", "Hours", session, spare + 2)],
            with_more(quote, first),
        ),
        "a timing taken out": (
            quote,
            [("delete", "Hours", session + 1)],
            without_timing(quote, "timing of hdc", 1),
        ),
        "the first timing taken out": (
            quote,
            [("delete", "Hours", session)],
            without_timing(quote, "timing of hdc", 0),
        ),
        "spare lines filled": (quote, filled(quote), with_more(quote, *FURTHER)),
        "five timings of all": (promised(), filled(promised()), with_more(promised(), *FURTHER)),
        "an empty line put in": (quote, [("insert", "Hours", session + 1)], quote),
        "a task taken out": (
            quote,
            [("delete", "Hours", row_of(quote, "blocking"))],
            with_minutes(quote, wash=None),
        ),
        "frogging taken out": (
            quote,
            [("delete", "Hours", row_of(quote, "frogging"))],
            with_minutes(quote, rip_back=None),
        ),
        "turning taken out": (quote, [("delete", "Hours", row_of(quote, "turning a row"))], quote),
        "what was not given is given": (
            guessed,
            [("set", "Hours", f"E{row_of(guessed, 'blocking')}", 25)],
            with_minutes(guessed, wash=(25.0,)),
        ),
        "what was given is emptied": (
            guessed,
            [("set", "Hours", f"E{row_of(guessed, 'packing')}", "")],
            with_minutes(guessed, pack=None),
        ),
    }


CASES = cases()
AS_THE_PROGRAM = [name for name in CASES if name != "turning taken out"]
"""Turning cannot be taken out for the program and stay in the timings."""


@pytest.fixture(scope="module")
def after(tmp_path_factory: pytest.TempPathFactory) -> dict[str, tuple[Workbook, Workbook]]:
    jobs = {name: (workbook_bytes(quote), edits) for name, (quote, edits, _) in CASES.items()}
    return edited(jobs, tmp_path_factory.mktemp("hours"))


@pytest.mark.parametrize("name", AS_THE_PROGRAM)
def test_the_hours_are_those_of_the_program(
    name: str, after: dict[str, tuple[Workbook, Workbook]]
) -> None:
    figures = {
        figure: value
        for figure, value in main_figures(CASES[name][2]).items()
        if figure.endswith("hours")
    }
    assert shown(after[name][0], figures) == figures


@pytest.mark.parametrize("name", list(CASES))
def test_no_formula_loses_what_it_read(
    name: str, after: dict[str, tuple[Workbook, Workbook]]
) -> None:
    assert list(broken_cells(*after[name])) == []
    state = str(named(after[name][0], "state"))
    assert state == "All checks are well."


def words_on(book: Workbook, sheet: str = "Hours") -> list[Any]:
    return [cell.value for row in book[sheet].iter_rows() for cell in row]


def test_what_is_promised_follows_the_timings(
    after: dict[str, tuple[Workbook, Workbook]],
) -> None:
    before = opened(workbook_bytes(promised()), values=True)
    assert "roughly, no fewer than" in words_on(before)
    assert "Fewest, roughly" in words_on(before, "Summary")
    now = after["five timings of all"][0]
    assert {"Fewest, 19 times in 20", "Most, 19 times in 20"} <= {*words_on(now, "Summary")}
    said = words_on(now)
    assert "19 times in 20, no fewer than" in said
    assert "All minutes, 19 times in 20 within" in said


def test_what_no_minutes_are_given_for_follows_the_boxes(
    after: dict[str, tuple[Workbook, Workbook]],
) -> None:
    assert "blocking" in not_given(opened(workbook_bytes(guessed_quote()), values=True))
    assert not_given(after["what was not given is given"][0]) == ["messages with the buyer"]
    assert not_given(after["what was given is emptied"][0]) == [
        "blocking",
        "packing, messages with the buyer",
    ]


def not_given(book: Workbook) -> list[Any]:
    """Return the words under the heading of what no minutes are given for."""
    sheet = book["Hours"]
    (top,) = (cell.row for cell in sheet["E"] if cell.value == "no minutes are given for")
    return [
        sheet[f"E{row}"].value
        for row in range(top + 1, top + 1 + len(Part))
        if sheet[f"E{row}"].value
    ]
