"""Tails, carries and joins on the drawing: as many as the estimate counts, where it has them."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from exports.drawing.strand_marks import spread
from quoting.core.plan.passes import Edge
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits, Join
from tests.drawing.pictures import drawn, of_class, quote_of, sizes
from tests.examples import COLOURS, SMALL, band, sample_yarn, section, stripes

NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")

colours = st.sampled_from(sorted(COLOURS))
sections = st.builds(
    lambda names, rows: section(*names, rows=rows),
    st.lists(colours, min_size=1, max_size=5),
    st.integers(1, 4),
)
borders = st.lists(
    st.builds(
        lambda colour, stitch, rounds: band(stitch=stitch, colour=colour, rounds=rounds),
        colours,
        st.sampled_from(["sc", "hdc", "dc"]),
        st.integers(1, 3),
    ),
    max_size=3,
)
habits = st.builds(
    Habits,
    carry_rows=st.integers(0, 8),
    carry_height_cm=st.floats(0, 12),
    join=st.sampled_from(Join),
)


def numbers_of(element: ET.Element) -> list[float]:
    return [float(found) for found in NUMBER.findall(element.get("d") or "")]


def beside(picture: ET.Element, class_: str) -> list[ET.Element]:
    """Return the marks that are drawn in yarn, not upon it."""
    return [mark for mark in of_class(picture, class_) if mark.get("stroke") in COLOURS.values()]


@settings(max_examples=40)
@given(
    width=st.integers(40, 200),
    height=st.integers(100, 200),
    body=st.lists(sections, min_size=1, max_size=3),
    border=borders,
    custom=habits,
)
def test_count_the_tails_and_you_have_the_ends(
    width: int, height: int, body: list[object], border: list[object], custom: Habits
) -> None:
    quote = quote_of(
        workshop={"habits": custom},
        width_cm=width,
        height_cm=height,
        sections=tuple(body),
        border=tuple(border),
    )
    picture = drawn(quote)
    assert len(of_class(picture, "tail")) == quote.estimate.ends
    assert len(of_class(picture, "carry")) == quote.estimate.carries


def test_four_colours_in_single_rows_show_every_one_of_their_ends() -> None:
    four = section("teal", "rust", "oat", "plum")
    quote = quote_of(width_cm=70, height_cm=58, sections=(four,), first_rows=())
    picture = drawn(quote)
    assert quote.estimate.carries == 0
    tails = of_class(picture, "tail")
    assert len(tails) == quote.estimate.ends > 100
    assert len({tail.get("d") for tail in tails}) == len(tails)


def test_of_several_blankets_one_is_drawn_and_said_to_be_one_of_them() -> None:
    alone, three = quote_of(border=()), quote_of(quantity=3, border=())
    picture = drawn(three)
    first = [strand for strand in three.estimate.strands if strand.starts.blanket == 0]
    assert len(of_class(picture, "tail")) == 2 * len(first) < three.estimate.ends
    assert len(of_class(picture, "row")) == len(alone.plan.rows)
    description = " ".join(picture.itertext())
    assert f"This is one of 3 blankets. It has {2 * len(first)} ends to weave in." in description


@pytest.mark.parametrize(("rows", "last_at_right"), [(4, True), (5, False)])
def test_a_strand_hangs_from_the_chains_far_edge_and_ends_where_its_last_row_does(
    rows: int, *, last_at_right: bool
) -> None:
    quote = quote_of(
        sections=(section("teal", repeats=rows),), first_rows=(), border=(), width_cm=40
    )
    picture = drawn(quote)
    ((left, width),) = sizes(of_class(picture, "outline"), "x", "width")
    roots = sorted((numbers_of(tail)[:2] for tail in beside(picture, "tail")), reverse=True)
    tips = sorted(numbers_of(tail)[-2] for tail in beside(picture, "tail"))
    (x_last, y_last), (x_first, y_first) = sorted(roots, key=lambda root: root[1])
    assert x_first == pytest.approx(left, abs=1e-2)
    assert x_last == pytest.approx(left + width if last_at_right else left, abs=1e-2)
    assert y_last < y_first
    assert tips[0] < left
    assert (tips[-1] > left + width) is last_at_right


def test_a_tail_leaves_the_blanket_at_its_row() -> None:
    quote = quote_of(sections=(section("teal", rows=3), section("rust", rows=3)), border=())
    picture = drawn(quote)
    rows = sizes(of_class(picture, "row"), "y", "height")
    rust = next(s for s in quote.estimate.strands if s.colour == "rust")
    top, height = rows[quote.plan.passes[rust.starts.pass_index].number - 1]
    starts = [numbers_of(tail)[1] for tail in beside(picture, "tail")]
    assert any(top < y < top + height for y in starts)


def test_a_carry_climbs_from_the_row_it_left_to_the_row_it_takes() -> None:
    quote = quote_of(border=(), height_cm=30)
    picture = drawn(quote)
    rows = sizes(of_class(picture, "row"), "y", "height")
    carry = next(carry for strand in quote.estimate.strands for carry in strand.carries)
    low, high = rows[carry.from_pass - 1], rows[carry.to_pass - 1]
    drawn_ones = [numbers_of(path) for path in of_class(picture, "carry")]
    assert any(
        low[0] < numbers[1] < sum(low) and high[0] < numbers[-1] < sum(high)
        for numbers in drawn_ones
    )


def short_balls(join: Join) -> Quote:
    return quote_of(
        workshop={
            "habits": Habits(join=join),
            "yarns": (sample_yarn(put_ups=(SMALL,), stock=()),),
        },
        sections=(section("teal"),),
        first_rows=(),
        border=(),
    )


def test_a_ball_joined_within_a_row_is_a_dot_in_that_row_with_two_tails() -> None:
    quote = short_balls(Join.ANYWHERE)
    picture = drawn(quote)
    joins = of_class(picture, "join")
    on_yarn = [t for t in of_class(picture, "tail") if t not in beside(picture, "tail")]
    assert len(joins) == len(quote.estimate.strands) - 1 > 0
    assert len(on_yarn) == 2 * len(joins)
    rows = sizes(of_class(picture, "row"), "y", "height", "x", "width")
    within = [s for s in quote.estimate.strands if s.ends.edge is Edge.WITHIN]
    for (x, y), strand in zip(sizes(joins, "cx", "cy"), within, strict=True):
        worked = quote.plan.passes[strand.ends.pass_index]
        top, height, left, width = rows[worked.number - 1]
        share = strand.stretches[-1].ends
        along = share if worked.starts is Edge.FAR else 1 - share
        assert top < y < top + height
        assert x == pytest.approx(left + along * width, abs=1e-2)


def test_balls_joined_at_an_edge_leave_no_dot() -> None:
    quote = short_balls(Join.AT_AN_EDGE)
    picture = drawn(quote)
    assert len(quote.estimate.strands) > 1
    assert not of_class(picture, "join")
    assert len(beside(picture, "tail")) == quote.estimate.ends


def test_a_ball_joined_within_a_round_lies_on_the_border() -> None:
    quote = quote_of(
        workshop={"yarns": (sample_yarn(put_ups=(SMALL,), stock=()),)},
        sections=(section("teal"),),
        first_rows=stripes("teal"),
        border=(band(colour="rust", rounds=14),),
    )
    picture = drawn(quote)
    ((x, y, width, height),) = sizes(of_class(picture, "ground"), "x", "y", "width", "height")
    in_rounds = [
        s for s in quote.estimate.strands if s.colour == "rust" and s.ends.edge is Edge.WITHIN
    ]
    outside = [
        (cx, cy)
        for cx, cy in sizes(of_class(picture, "join"), "cx", "cy")
        if not (x <= cx <= x + width and y <= cy <= y + height)
    ]
    assert len(outside) == len(in_rounds) > 0


def test_tails_in_each_others_way_move_apart_and_no_further_than_they_must() -> None:
    assert spread([10, 10], 4, 0, 100) == pytest.approx([8, 12])
    assert spread([10, 50], 4, 0, 100) == pytest.approx([10, 50])
    assert spread([0, 0, 0], 4, 0, 100) == pytest.approx([0, 4, 8])
    assert spread([9, 9, 9], 40, 0, 10) == pytest.approx([0, 5, 10])
    assert spread([], 4, 0, 100) == []


@given(st.lists(st.floats(0, 400), max_size=60), st.floats(0.1, 20))
def test_spread_tails_keep_their_order_their_gap_and_the_picture(
    wanted: list[float], gap: float
) -> None:
    placed = spread(sorted(wanted), gap, 0, 400)
    room = min(gap, 400 / max(1, len(wanted) - 1))
    assert len(placed) == len(wanted)
    assert all(after - before >= room - 1e-6 for before, after in pairwise(placed))
    assert all(-1e-6 <= position <= 400 + 1e-6 for position in placed)
