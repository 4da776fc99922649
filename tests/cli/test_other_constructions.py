"""Squares and a piece from the centre: what the table and the JSON of the demo's orders say."""

from __future__ import annotations

import shutil
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest

from quoting.cli import main
from quoting.cli.body_facts import body_facts
from quoting.core.quote.quote import Quote
from quoting.places import demo_centre, demo_squares
from quoting.wording import speech_of
from quoting.wording.motif_words import LAYOUTS_TOLD
from tests.cli.running import change, record_of, refusals
from tests.examples import sample_quote
from tests.motif_examples import FIVE, motif_workshop, sample_squares, squares_order

MOTIFS = 88


@pytest.fixture
def others(demo: Path) -> Path:
    """Return the folder of the demo with its other orders."""
    shutil.copy(demo_squares(), demo / "squares.toml")
    shutil.copy(demo_centre(), demo / "centre.toml")
    return demo


def said(capsys: pytest.CaptureFixture[str], *argv: str) -> str:
    assert main(["quote", *argv]) == 0
    return " ".join(capsys.readouterr().out.replace("\u00a0", " ").split())


def test_eighty_eight_squares_leave_their_ends_and_take_their_hours(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    """88 motifs of five colours have 880 ends; 2 more are for each ball joined, and the border.

    Hours and price are those of an invented motif of 19 minutes, its ends worked over.
    """
    record = record_of(capsys, str(others / "squares.toml"))
    strands = record["strands"]
    assert strands["ends"] == 880 + 2 + 2 * strands["joins"]
    assert 40 <= record["hours"]["total"] <= 55
    assert 680 <= float(record["price"]["total"]) <= 920
    parts = sum(record["hours"][part] for part in ("stitching", "assembling", "weaving_in"))
    assert parts < record["hours"]["total"]


def test_the_yarn_of_each_colour_is_by_the_rounds_that_it_is_worked_in(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    """Rounds of clusters take 7.0, 13.5, 20.0, 26.5 and 33.0 % of the yarn (constructions, 2).

    By hand: a motif of 9 g is 18 m; teal is worked in rounds 1 and 4 of half the motifs each.
    """
    record = record_of(capsys, str(others / "squares.toml"))
    metres = {entry["colour"]: entry["metres"] for entry in record["yarn"]}
    tails = 2 * 0.15 * MOTIFS
    for colour, shares in (
        ("teal", (0.070, 0.265)),
        ("rust", (0.135, 0.070)),
        ("heather", (0.200, 0.135)),
        ("cream", (0.265, 0.200)),
    ):
        worked = MOTIFS / 2 * 18 * sum(shares)
        assert metres[colour] == pytest.approx(worked + tails, rel=0.02), colour
    assert metres["oat"] > MOTIFS * 18 * 0.33 + tails


def test_the_json_tells_motifs_layouts_and_the_join(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    """8 × 11: 157 edges on 17 lines."""
    blanket = record_of(capsys, str(others / "squares.toml"))["blanket"]
    squares = blanket["squares"]
    assert (blanket["construction"], blanket["stitch"]) == ("squares", "dc")
    assert (squares["columns"], squares["rows"], squares["motifs"]) == (8, 11, MOTIFS)
    assert (squares["edges"], squares["seam_lines"]) == (157, 17)
    assert squares["join"] == {"method": "as you go", "colour": None}
    assert [layout["count"] for layout in squares["layouts"]] == [44, 44]
    assert [layout["layout"] for layout in squares["layouts"]] == [0, 1]
    assert {len(layout["colours"]) for layout in squares["layouts"]} == {squares["rounds"]}
    placed = squares["placed"]
    assert sorted(placed) == [0] * 44 + [1] * 44
    assert blanket["rows"] == sum(blanket["rows_by_colour"].values()) == 5 * MOTIFS
    assert blanket["ends_become"] == "worked over"


def test_layouts_of_a_continuous_join_tell_the_colours_of_all_rounds(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    """The last round joins all motifs, and is yet one of the five that each has."""
    file = others / "squares.toml"
    change(file, 'method = "as you go"', 'method = "continuous"\ncolour = "oat"')
    blanket = record_of(capsys, str(file))["blanket"]
    squares = blanket["squares"]
    assert squares["rounds"] == 5
    assert blanket["rows"] == 5 * MOTIFS
    assert blanket["rows_by_colour"]["oat"] == MOTIFS
    for layout in squares["layouts"]:
        assert len(layout["colours"]) == 5
        assert layout["colours"][-1] == "oat"
    assert "44 of teal, rust, heather, cream, oat" in said(capsys, str(file))


def test_every_strand_tells_its_part_and_which_motif_of_it(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    record = record_of(capsys, str(others / "squares.toml"))
    parts, strands = record["blanket"]["parts"], record["strands"]["list"]
    assert [part["kind"] for part in parts] == ["motif", "motif", "border"]
    assert len(strands) == record["strands"]["count"]
    for strand in strands:
        for point in (strand["starts"], strand["ends"]):
            part = parts[point["part"]]
            assert 0 <= point["copy"] < part["count"]
            first = part["first_pass"]
            assert first <= point["pass"] < first + part["passes"]


def test_a_piece_from_the_centre_tells_its_rounds(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    blanket: Any = record_of(capsys, str(others / "centre.toml"))["blanket"]
    assert blanket["construction"] == "centre"
    assert blanket["centre"] == {
        "counting": "clusters",
        "rounds": blanket["rows"],
        "starts_on": 0,
        "turned": False,
    }
    assert blanket["closing"]["rounds"] == blanket["rows"]
    assert set(blanket["rows_by_colour"].values()) == {blanket["rows"] // 5}


def test_what_goes_by_its_width_has_no_length_that_could_be_off(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    text = (others / "centre.toml").read_text("utf-8").replace('"clusters"', '"circle"')
    kept = [line for line in text.splitlines() if not line.startswith("motif = ")]
    (others / "centre.toml").write_text("\n".join(kept), "utf-8")
    closing = record_of(capsys, str(others / "centre.toml"))["blanket"]["closing"]
    assert closing["off_height_cm"] is None
    assert closing["off_width_cm"] is not None


def test_rows_are_told_as_ever_with_what_they_close_on(
    capsys: pytest.CaptureFixture[str],
) -> None:
    blanket = record_of(capsys, "--demo")["blanket"]
    assert blanket["construction"] == "rows"
    assert not {"squares", "centre"} & set(blanket)
    off = {"off_width_cm": -0.333, "off_height_cm": -0.883}
    assert blanket["closing"] == {"stitches": 98, "rows": 103, "border_rounds": 1, **off}


def test_the_table_tells_motifs_and_rounds(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    squares = said(capsys, str(others / "squares.toml"))
    for text in (
        "Against asked 4.3 cm narrower, 0.7 cm longer",
        "Motifs 8 × 11 = 88 motifs: ottermoor square",
        "Each motif 5 rounds, the last of 60 dc; 15 cm a side",
        "44 of teal, rust, heather, cream, oat",
        "Joined as you go: 157 edges on 17 lines",
        "Rounds 440: teal 88",
        "Laying out and joining motifs",
    ):
        assert text in squares
    centre = said(capsys, str(others / "centre.toml"))
    assert "From the centre clusters: 30 rounds" in centre
    assert "Last round 360 dc" in centre


def test_a_crocheted_join_is_told_with_its_colour_and_many_layouts_in_short(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    file = others / "squares.toml"
    change(file, 'method = "as you go"', 'method = "single crochet"\ncolour = "oat" # or')
    layout = '[[blanket.squares.layouts]]\ncolours = ["oat", "oat", "oat", "oat", "oat"]\n'
    change(file, "[blanket.squares.join]", layout * 9 + "[blanket.squares.join]")
    told = said(capsys, str(file))
    assert "Joined single crochet in oat" in told
    assert "; and 3 more" in told


def test_neighbours_are_told_where_they_are_asked_for(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    file = str(others / "squares.toml")
    assert "A little larger or smaller" not in said(capsys, file)
    told = said(capsys, file, "--near")
    assert "One column of motifs less 110.7 × 170.7" in told
    assert "7 × 11 = 77 motifs, 3 border rounds; 19.3 cm narrower, 0.7 cm longer" in told
    assert "Whole motifs do not meet both sides here." in told
    assert "Whole motifs" not in said(capsys, "--demo", "--near")


def test_neighbours_are_in_the_json_where_they_are_asked_for(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert "near" not in record_of(capsys, "--demo")
    near = record_of(capsys, "--demo", "--near")["near"]
    assert [(each["varied"], each["by"]) for each in near] == [
        ("stitches", -1),
        ("stitches", 1),
        ("repeat", -1),
        ("repeat", 1),
        ("border-round", -1),
        ("border-round", 1),
    ]
    for each in near:
        assert set(each) >= {"what", "width_cm", "height_cm", "closing", "hours", "ends", "total"}


def test_a_quote_that_was_given_has_no_neighbours(capsys: pytest.CaptureFixture[str]) -> None:
    status, told = refusals(capsys, "quote", "--order", "2026-001", "--near")
    assert status == 2
    assert "--near" in told


def test_sizes_are_compared_by_motifs(capsys: pytest.CaptureFixture[str], others: Path) -> None:
    sizes = ("--size", "100x130cm", "--size", "130x170cm")
    assert main(["compare", str(others / "squares.toml"), *sizes]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "Across × down 6 × 8 8 × 11" in told
    assert "Motifs 48 88" in told
    assert main(["compare", str(others / "centre.toml"), *sizes]) == 0
    assert "Stitches at the end" in capsys.readouterr().out


def test_of_very_many_layouts_the_first_are_told_and_the_others_counted() -> None:
    quote = squares_quote(LAYOUTS_TOLD + 2)
    told = dict(body_facts(quote, speech_of(quote.workshop)))["Colours"].split("; ")
    assert len(told) == LAYOUTS_TOLD + 1
    assert told[-1] == "and 2 more"
    few = squares_quote(LAYOUTS_TOLD)
    assert "more" not in dict(body_facts(few, speech_of(few.workshop)))["Colours"]


def squares_quote(layouts: int) -> Quote:
    """Return the quote of squares in so many layouts."""
    orders = list(permutations(FIVE))[:layouts]
    return sample_quote(squares_order(body=sample_squares(*orders)), motif_workshop())


def test_a_pool_is_told_as_mixed_beside_what_comes_of_it(
    capsys: pytest.CaptureFixture[str], others: Path
) -> None:
    head, tail = demo_squares().read_text("utf-8").split("[[blanket.squares.layouts]]", 1)
    pool = '[blanket.squares.pool]\ncolours = ["teal", "rust"]\nouter = ["oat"]\n\n'
    join = "[blanket.squares.join]"
    (others / "squares.toml").write_text(head + pool + join + tail.split(join)[1], "utf-8")
    told = said(capsys, str(others / "squares.toml"))
    assert "From a pool teal, rust mixed; then oat" in told
    assert "44 of teal, rust, teal, rust, oat" in told
