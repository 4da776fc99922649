"""What the sheets say of motifs, rounds and seams, read by their headings; sums are by hand."""

from __future__ import annotations

import math
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from tests.workbook.constructions import (
    AS_YOU_GO,
    CENTRE,
    DRAWN,
    SEWN,
    SUN,
    construction_quotes,
)
from tests.workbook.reading import Line, block, by
from tests.workbook.recalculation import opened

QUOTES = construction_quotes()


def read(name: str) -> Workbook:
    return opened(workbook_bytes(QUOTES[name]), values=True)


def rows_of(book: Workbook) -> list[Line]:
    """Return the lines of the sheet of rows by its headings, the sum under them too."""
    sheet = book["Rows"]
    (top,) = (cell.row for cell in sheet["B"] if cell.value in ("round", "round or seam"))
    titles = {cell.column_letter: cell.value for cell in sheet[top] if cell.value}
    lines = sheet.iter_rows(min_row=top + 1)
    return [
        {titles[cell.column_letter]: cell.value for cell in line if cell.column_letter in titles}
        for line in lines
    ]


def first_sheet(book: Workbook) -> dict[Any, Any]:
    return {row[0].value: row[1].value for row in book["Summary"].iter_rows()}


# -- the first sheet -------------------------------------------------------------------------------


def test_the_first_sheet_counts_motifs_and_rounds() -> None:
    squares = first_sheet(read(AS_YOU_GO))
    assert (squares["Motifs"], squares["Across × down"]) == ("20", "4 × 5")
    rounds = first_sheet(read(CENTRE))["Rounds"]
    assert rounds == str(len(QUOTES[CENTRE].plan.rows))


# -- rows and rounds -------------------------------------------------------------------------------


def test_each_round_of_each_layout_stands_once_with_how_many_motifs_have_it() -> None:
    """Twenty motifs of two layouts, five of them in the second, with four rounds of clusters."""
    lines = rows_of(read(AS_YOU_GO))
    told = [(line["round or seam"], line["how often"], line["stitches"]) for line in lines[:-2]]
    assert told == [
        *((f"layout 1, round {number}", 15, 12 * number) for number in (1, 2, 3, 4)),
        *((f"layout 2, round {number}", 5, 12 * number) for number in (1, 2, 3, 4)),
    ]
    assert lines[-2]["round or seam"] == "border round 1"


@pytest.mark.parametrize("name", [name for name in QUOTES if name.startswith("squares")])
def test_the_stitches_of_all_lines_are_those_that_the_yarn_is_counted_for(name: str) -> None:
    quote = QUOTES[name]
    *lines, foot = rows_of(read(name))
    each = [line["stitches and chains in all"] or 0 for line in lines]
    counted = sum(sum(colour.yarn.counts.values()) for colour in quote.estimate.colours)
    assert sum(each) == foot["stitches and chains in all"] == counted / quote.order.quantity


def test_what_is_sewn_says_how_much_yarn_a_needleful_is() -> None:
    """A line of five motifs of 12 cm takes 2½ times its length, a needleful being 150 cm."""
    sewn = [line for line in rows_of(read(SEWN)) if line["stitch"] == "sewn"]
    said = [(line["round or seam"], line["how often"]) for line in sewn]
    assert said == [("each seam", 3), ("each seam", 4)]
    for line, metres in zip(sewn, ("1.5", "1.2"), strict=True):
        assert str(line["what to do with the yarn"]).startswith(
            f"Sew with {metres}\u00a0m. Start rust"
        )


def test_each_motif_is_fastened_off_after_its_last_round() -> None:
    lines = rows_of(read(AS_YOU_GO))
    last = [line for line in lines if str(line["round or seam"]).endswith("round 4")]
    assert [line["what to do with the yarn"] for line in last] == [
        "Start oat at the join; fasten off at the join."
    ] * 2


def test_a_round_from_the_centre_begins_at_its_join_and_has_no_hands_edge() -> None:
    lines = rows_of(read(CENTRE))
    assert {line["begins at"] for line in lines} == {"the join"}
    assert not [line for line in lines if "hand edge" in str(line["what to do with the yarn"])]


# -- yarn ------------------------------------------------------------------------------------------


def test_the_stitches_of_a_motif_take_all_of_its_yarn_and_no_more() -> None:
    """Rounds 1 to 4 of clusters have 120 stitches and 8 chains at corners each, 24 between."""
    lines = by(block(read(AS_YOU_GO)["Yarn"], "The yarn in one stitch"), "stitch")
    parts = [lines[f"{stitch} in {SUN.name}"]["of one motif"] for stitch in ("dc", "ch")]
    assert 120 * parts[0] + (4 * 8 + 24) * parts[1] == pytest.approx(1)


def test_a_motif_stands_with_what_was_weighed() -> None:
    """58 g of six at 2 m a gram are 19.33 m each; a scale of 1 g leaves 1/√12 g (JCGM 100)."""
    (line,) = (
        line for line in block(read(AS_YOU_GO)["Yarn"], "The yarn in one motif") if "yarn" in line
    )
    assert (line["weighed together"], line["their weight, g"]) == (6, 58)
    assert line["m each"] == pytest.approx(58 * 2 / 6)
    assert line["off by"] == pytest.approx(1 / math.sqrt(12) / 58)


def test_the_yarn_that_is_sewn_with_has_a_line_of_its_own() -> None:
    """Three lines of 60 cm and four of 48 cm, at 2½ cm a centimetre."""
    lines = block(read(SEWN)["Yarn"], "The yarn that is sewn with")
    (line,) = (line for line in lines if "yarn" in line)
    assert line["m"] == pytest.approx((3 * 0.60 + 4 * 0.48) * 2.5)


def test_a_pools_colours_say_what_chance_leaves_open_and_others_do_not() -> None:
    lines = block(read(DRAWN)["Yarn"], "Colours mixed by chance")
    told = {line["colour"]: line["off by"] for line in lines if "off by" in line}
    wanted = {c.colour: c.yarn.chance for c in QUOTES[DRAWN].estimate.colours if c.yarn.chance}
    assert set(told) == {"rust", "moss", "plum"}
    assert told == pytest.approx(wanted)


# -- hours -----------------------------------------------------------------------------------------


def test_motifs_that_were_timed_whole_are_lines_beside_the_stitches_of_the_border() -> None:
    lines = by(block(read(AS_YOU_GO)["Hours"], "The stitches and motifs"), "A")
    assert lines[SUN.name]["how many"] == 20 * QUOTES[AS_YOU_GO].order.quantity
    assert lines[SUN.name]["times the timed one"] == 1
    assert "how many" not in lines["all of them"]
    assert "sc" in lines


def test_a_motifs_own_timings_are_in_motifs_and_have_no_turns() -> None:
    sheet = read(AS_YOU_GO)["Hours"]
    (head,) = (row for row in sheet.iter_rows() if row[0].value == f"{SUN.name} in {SUN.yarn}")
    assert [cell.value for cell in head[1:6]] == [
        "stopped at every pause",
        "motifs",
        "minutes",
        None,
        "minutes, rest in",
    ]
    first, second = (
        row for row in sheet.iter_rows() if str(row[0].value).startswith("timing of s")
    )
    assert [cell.value for cell in first[1:4]] == ["no", 4, 66]
    assert [cell.value for cell in second[1:4]] == ["yes", 3, 47.5]


def test_minutes_that_are_usual_are_said_to_be_and_the_makers_own_are_not() -> None:
    lines = by(block(read(AS_YOU_GO)["Hours"], "The other work"), "A")
    assert lines["laying out a motif"]["how sure"] == "as is usual"
    assert lines["laying motifs out"]["how sure"] == "timed once"


def test_work_of_motifs_has_a_part_of_its_own() -> None:
    parts = by(block(read(AS_YOU_GO)["Hours"], "Hours by part"), "A")
    assert parts["Laying out and joining motifs"]["hours"] > 0


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("squares, slip stitch, by the gram", "working over an end"),
        (CENTRE, "weaving in an end"),
        ("squares, braided, in inches", "weaving in an end"),
        (AS_YOU_GO, "weaving in an end"),
    ],
)
def test_ends_take_the_minutes_of_what_becomes_of_them(name: str, said: str) -> None:
    lines = by(block(read(name)["Hours"], "The other work"), "A")
    assert lines[said]["how many"] == QUOTES[name].estimate.ends
