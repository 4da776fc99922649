"""The hours, the rows and the notes of a workbook, read by their headings and their names."""

from __future__ import annotations

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.ground.cautions import Reader
from quoting.core.ground.measures import Units
from quoting.core.ground.money import exact
from quoting.core.plan.passes import Edge, Work
from quoting.core.quote.quote import Quote
from quoting.wording import caution_sentence, part_words, speech_of, sureness_words
from tests.examples import sample_design, sample_order, sample_quote
from tests.workbook.reading import Line, as_at_home, block, sentences
from tests.workbook.recalculation import opened


def read(content: bytes) -> Workbook:
    return opened(content, values=True)


# -- hours -----------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", ["plain", "timed", "mixed, used"])
def test_every_task_is_its_count_by_its_minutes_with_how_sure_it_is(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    sheet, hours = read(written[name])["Hours"], all_quotes[name].estimate.hours
    speech = speech_of(all_quotes[name].workshop)
    lines = [*worked(block(sheet, "The stitches")), *worked(block(sheet, "The other work"))]
    stitches = [task for task in hours.tasks if task.timed_stitch]
    others = [task for task in hours.every_task if not task.timed_stitch]
    for line, task in zip(lines, [*stitches, *others], strict=True):
        assert line["part of the work"] == part_words(task.part, speech, all_quotes[name])
        assert line["how many"] == task.count
        assert line["minutes each"] == pytest.approx(task.minutes_each)
        assert line["minutes"] == pytest.approx(task.minutes)
        assert line["hours"] == pytest.approx(task.minutes / 60)
        assert line["how sure"] == sureness_words(task.sureness)
        if not task.timed_stitch:
            assert line["± minutes"] == pytest.approx(line["± share"] * task.minutes)
            assert line["± minutes"] == pytest.approx(task.half_width_min)


def test_the_work_on_the_ends_is_called_by_what_becomes_of_them(
    written: dict[str, bytes],
) -> None:
    for name, called in (
        ("plain", "Weaving in ends"),
        ("squares, slip stitch, by the gram", "Working over ends"),
        ("from the centre", "Weaving in ends"),
    ):
        book = read(written[name])
        for sheet in (book["Hours"], book["Actuals"]):
            assert called in [cell.value for cell in sheet["A"]], (name, sheet.title)


def test_the_sheet_of_rows_speaks_of_rows_only_where_there_are_some(
    written: dict[str, bytes],
) -> None:
    for name, told in (
        ("plain", ("Rows and rounds", "row or round")),
        ("from the centre", ("Rounds", "round")),
        ("squares as you go", ("Rounds and seams", "round or seam")),
    ):
        sheet = read(written[name])["Rows"]
        assert told[0] == sheet["A1"].value
        assert told[1] in [cell.value for cell in sheet["B"]]


def worked(lines: list[Line]) -> list[Line]:
    """Return the lines of a list of work without the one that closes it and the sum under it."""
    return [line for line in lines if "part of the work" in line]


@pytest.mark.parametrize("name", ["plain", "timed", "mixed, used"])
def test_hours_by_part_and_their_range_stand_beside_their_names(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    lines = {
        line["A"]: exact(line["hours"])
        for line in block(read(written[name])["Hours"], "Hours by part")
    }
    hours = all_quotes[name].estimate.hours
    office = lines["Admin: photos, packing, messages"]
    assert (lines["Making, all together"], office) == (hours.making, hours.office)
    assert lines["All hours"] == hours.total
    low, high = list(lines.values())[-2:]
    assert (low, high) == (hours.low, hours.high)
    parts = list(lines.values())[: list(lines).index("Making, all together")]
    assert sum(parts) == hours.total


# -- rows and rounds -------------------------------------------------------------------------------


def rows_of(content: bytes) -> list[Line]:
    """Return the lines of the sheet of rows by its headings."""
    sheet = read(content)["Rows"]
    (top,) = (cell.row for cell in sheet["B"] if cell.value == "row or round")
    heads = {cell.column_letter: as_at_home(cell.value) for cell in sheet[top] if cell.value}
    return [
        {heads[c.column_letter]: c.value for c in row if c.column_letter in heads}
        for row in sheet.iter_rows(min_row=top + 1)
    ]


@pytest.mark.parametrize(("name", "unit", "long"), [("plain", "cm", 1.0), ("inches", "in", 2.54)])
def test_the_height_so_far_is_in_the_workshops_unit_and_the_border_adds_at_both_ends(
    name: str, unit: str, long: float, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    """NIST Handbook 44, appendix C: an inch is 2.54 cm."""
    passes = all_quotes[name].plan.passes
    assert all_quotes[name].workshop.units is (Units.INCHES if unit == "in" else Units.METRIC)
    height, expected = 0.0, []
    for worked in passes:
        height += worked.height_cm * (2 if worked.work is Work.ROUND else 1)
        expected.append(pytest.approx(height / long))
    assert [line[f"length so far, {unit}"] for line in rows_of(written[name])] == expected


@pytest.mark.parametrize("name", ["plain", "inches", "mixed, used"])
def test_each_row_says_its_colour_its_stitches_its_chains_and_where_it_begins(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    quote = all_quotes[name]
    named_edge = {Edge.START: "right-hand edge", Edge.FAR: "left-hand edge"}
    chain, *rest = zip(rows_of(written[name]), quote.plan.passes, strict=True)
    assert (chain[0]["stitch"], chain[0]["chains"]) == ("ch", quote.plan.foundation_chain)
    for line, worked in rest:
        assert line["colour"] == worked.colour
        assert line["stitches"] == worked.stitches[worked.stitch]
        assert line["stitch"] == speech_of(quote.workshop).stitch(worked.stitch)
        assert line["begins at"] == named_edge[worked.starts]
    turned = {line["chains"] for line, worked in rest if worked.work is Work.ROW}
    assert turned - {None}


# -- notes -----------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", ["plain", "mixed, used", "inches"])
def test_what_the_maker_is_to_heed_and_what_to_tell_the_buyer_are_not_mixed(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    quote, sheet = all_quotes[name], read(written[name])["Notes"]
    for title, reader in (
        ("For you to note", Reader.MAKER),
        ("To tell the buyer", Reader.BUYER),
    ):
        own = [
            caution_sentence(caution, speech_of(quote.workshop))
            for caution in quote.cautions
            if caution.reader is reader
        ]
        assert own
        assert sentences(sheet, title) == own


def test_where_there_is_nothing_to_tell_the_buyer_there_is_no_such_block() -> None:
    large = sample_design(width_cm=130, height_cm=155)
    order = sample_order(title="Moorland throw", for_baby=False, notes="", design=large)
    quote = sample_quote(order)
    sheet = read(workbook_bytes(quote))["Notes"]
    assert not [caution for caution in quote.cautions if caution.reader is Reader.BUYER]
    assert sentences(sheet, "To tell the buyer") == []
    assert sentences(sheet, "The order says") == []
    assert sentences(sheet, "For you to note")


def test_what_the_order_says_is_in_the_notes(written: dict[str, bytes]) -> None:
    assert sentences(read(written["plain"])["Notes"], "The order says") == ["No wool: allergy"]
