"""The tables behind the drawing say what it shows."""

from __future__ import annotations

from dataclasses import astuple

from exports.drawing import drawing_table, rows_table
from quoting.wording import speech_of
from tests.drawing.pictures import drawn, of_class, quote_of
from tests.examples import COLOURS, band, section, stripes


def test_the_strands_table_has_two_ends_to_a_line_and_all_the_carries() -> None:
    quote = quote_of()
    table = drawing_table(quote, speech_of(quote.workshop))
    picture = drawn(quote)
    assert 2 * len(table) == len(of_class(picture, "tail"))
    assert sum(row.carried for row in table) == len(of_class(picture, "carry"))


def test_a_strand_says_where_it_starts_and_ends_and_why() -> None:
    quote = quote_of(sections=(section("teal", repeats=4),), first_rows=(), border=(), width_cm=40)
    (row,) = drawing_table(quote, speech_of(quote.workshop))
    (strand,) = quote.estimate.strands
    assert row.colour == "teal"
    assert (row.starts, row.starts_edge) == ("Foundation chain", "the left-hand edge")
    assert (row.ends, row.ends_edge) == ("Row 4", "the right-hand edge")
    assert (row.carried, row.why) == (0, "fastened off")
    assert row.yarn_m == strand.yarn_m
    assert row.yarn.endswith("m")


def test_a_join_in_a_border_is_within_the_round() -> None:
    quote = quote_of(border=(band(colour="rust", rounds=30),))
    edges = {
        row.starts_edge
        for row in drawing_table(quote, speech_of(quote.workshop))
        if row.starts.startswith("Border round")
    }
    assert "within the round" in edges
    assert "within the row" not in edges


def test_rows_of_one_colour_are_one_line_with_their_first_and_last_number() -> None:
    quote = quote_of(
        first_rows=stripes("oat"),
        sections=(section("teal", "rust", rows=3, repeats=1),),
        border=(band(colour="plum", rounds=2), band(colour="oat")),
    )
    lines = [(row.label, row.colour, row.code, row.passes) for row in rows_table(quote)]
    assert lines == [
        ("Foundation chain", "oat", COLOURS["oat"], 1),
        ("Row 1", "oat", COLOURS["oat"], 1),
        ("Rows 2–4", "teal", COLOURS["teal"], 3),
        ("Rows 5–7", "rust", COLOURS["rust"], 3),
        ("Border rounds 1–2", "plum", COLOURS["plum"], 2),
        ("Border round 3", "oat", COLOURS["oat"], 1),
    ]


def test_the_lines_of_rows_cover_every_pass_and_the_whole_height() -> None:
    quote = quote_of()
    lines = rows_table(quote)
    assert sum(line.passes for line in lines) == len(quote.plan.passes)
    above = sum(line.height_cm for line in lines)
    assert abs(above + quote.plan.border_depth_cm - quote.plan.height_cm) < 1e-9


def test_of_several_blankets_the_table_has_the_strands_of_the_one_drawn() -> None:
    one, three = quote_of(border=()), quote_of(quantity=3, border=())
    table = drawing_table(three, speech_of(three.workshop))
    assert len(table) < len(three.estimate.strands)
    assert {row.colour for row in table} == {s.colour for s in one.estimate.strands}
    assert all("blanket 2" not in str(astuple(row)) for row in table)
