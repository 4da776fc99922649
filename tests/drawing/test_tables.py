"""The tables behind the drawing say what it shows."""

from __future__ import annotations

from dataclasses import astuple, replace

import pytest

from exports.drawing import drawing_table, rows_table
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote
from quoting.wording import speech_of
from tests.drawing.pictures import drawn, of_class, quote_of
from tests.examples import COLOURS, band, sample_quote, section, stripes
from tests.motif_examples import (
    FIVE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_squares,
    squares_order,
)

OTHER = ("plum", "moss", "teal", "rust", "oat")


def squares() -> Quote:
    """Return a quote of squares in two layouts, joined line by line."""
    body = sample_squares(FIVE, OTHER, method=JoinMethod.SINGLE_CROCHET)
    return sample_quote(squares_order(body=body), motif_workshop())


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


def test_of_motifs_the_strands_of_one_round_of_one_layout_are_one_line() -> None:
    quote = squares()
    table = drawing_table(quote, speech_of(quote.workshop))
    assert 2 * sum(row.times for row in table) == quote.estimate.ends
    assert len(table) < 40
    first = table[0]
    assert (first.starts, first.starts_edge) == ("Layout 1, round 1", "the join")
    assert (first.ends, first.colour, first.times) == ("Layout 1, round 1", "teal", 44)


def test_the_yarn_of_strands_alike_is_that_of_each() -> None:
    quote = squares()
    table = drawing_table(quote, speech_of(quote.workshop))
    whole = sum(strand.yarn_m for strand in quote.estimate.strands)
    assert abs(sum(row.yarn_m * row.times for row in table) - whole) < 1e-6


def test_a_seam_ends_at_its_end() -> None:
    quote = squares()
    table = drawing_table(quote, speech_of(quote.workshop))
    seams = [(row.starts, row.starts_edge, row.times) for row in table if "Seam" in row.starts]
    assert ("Seams 1–7", "its beginning", 7) in seams


@pytest.mark.parametrize("order", [squares_order(), centre_order()], ids=["squares", "centre"])
def test_where_nothing_has_rows_a_border_begins_and_ends_at_its_join(order: Order) -> None:
    bordered = replace(order, design=replace(order.design, border=(band(rounds=2),)))
    quote = sample_quote(bordered, motif_workshop())
    table = drawing_table(quote, speech_of(quote.workshop))
    first = next(row for row in table if row.starts.startswith("Border"))
    assert {first.starts_edge, table[-1].ends_edge} <= {"the join", "within the round"}
    assert table[-1].ends_edge == "the join"


def test_needlefuls_are_told_with_the_seams_that_they_sew() -> None:
    body = sample_squares(FIVE, OTHER, method=JoinMethod.MATTRESS)
    quote = sample_quote(squares_order(body=body), motif_workshop())
    labels = [line.label for line in rows_table(quote)]
    assert {"Seams 1–7, needlefuls 1–3", "Seams 8–17, needlefuls 1–2"} <= set(labels)


def test_rounds_of_motifs_are_told_by_layout_and_how_often_they_are_worked() -> None:
    lines = [(line.label, line.colour, line.times) for line in rows_table(squares())]
    assert lines[:2] == [("Layout 1, round 1", "teal", 44), ("Layout 1, round 2", "rust", 44)]
    assert ("Layout 2, round 1", "plum", 44) in lines
    assert [line for line in lines if "Seam" in line[0]] == [
        ("Seams 1–7", "oat", 7),
        ("Seams 8–17", "oat", 10),
    ]


def test_rounds_from_the_centre_and_of_the_border_are_not_one_run() -> None:
    body = sample_centre("oat", rounds=3)
    order = centre_order(body=body, border=(band("dc", rounds=2),))
    lines = [line.label for line in rows_table(sample_quote(order, motif_workshop()))]
    assert lines == ["Rounds 1–3", "Border rounds 1–2"]
