"""The drawing: to scale, in order, in true colours, and safe whatever names it is given."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from exports.drawing import draw_blanket
from exports.drawing.rulers import ticks
from quoting.core.ground.cautions import Reader
from quoting.core.ground.measures import CM_PER_INCH, Units
from quoting.core.order.in_rows import Section, Stripe
from quoting.wording import speech_of
from tests.drawing.pictures import SVG, drawn, of_class, quote_of, sizes, with_colours, words_of
from tests.examples import COLOURS, band, sample_order, sample_quote, section

SCRIPT = "<script>alert(1)</script>"


def test_every_row_is_a_band_of_its_colour_from_the_bottom_up() -> None:
    quote = quote_of(height_cm=40)
    rows = of_class(drawn(quote), "row")
    assert [row.get("fill") for row in rows] == [COLOURS[row.colour] for row in quote.plan.rows]
    bottoms = [top + height for top, height in sizes(rows, "y", "height")]
    assert bottoms == sorted(bottoms, reverse=True)


def test_bands_lie_on_each_other_without_a_gap() -> None:
    boxes = sizes(of_class(drawn(quote_of()), "row"), "y", "height")
    for (top, _), (above, height) in pairwise(boxes):
        assert above + height == pytest.approx(top, abs=2e-3)


def test_bands_are_as_high_as_their_rows_are_to_the_blanket() -> None:
    tall = (Stripe(colour="rust"), Stripe(colour="teal", rows=2, stitch="dc"))
    quote = quote_of(sections=(Section(stripes=tall),), height_cm=30)
    assert len({row.height_cm for row in quote.plan.rows}) == 2
    picture = drawn(quote)
    ((whole_width, whole),) = sizes(of_class(picture, "outline"), "width", "height")
    plan = quote.plan
    assert whole_width / whole == pytest.approx(plan.width_cm / plan.height_cm, rel=1e-4)
    heights = [height for (height,) in sizes(of_class(picture, "row"), "height")]
    expected = [row.height_cm / plan.height_cm * whole for row in plan.rows]
    assert heights == pytest.approx(expected, rel=1e-3)


def test_the_heights_of_rows_and_border_add_up_to_the_blanket() -> None:
    quote = quote_of(border=(band(rounds=3), band(stitch="hdc", colour="teal")))
    picture = drawn(quote)
    ((whole,),) = sizes(of_class(picture, "outline"), "height")
    rows = sum(height for (height,) in sizes(of_class(picture, "row"), "height"))
    scale = whole / quote.plan.height_cm
    border = 2 * scale * sum(worked.height_cm for worked in quote.plan.rounds)
    assert rows + border == pytest.approx(whole, rel=1e-3)


def test_rounds_are_frames_in_the_order_worked_each_inside_the_next() -> None:
    border = (band(colour="rust", rounds=2), band(colour="teal"), band(colour="plum", rounds=2))
    picture = drawn(quote_of(border=border))
    painted = of_class(picture, "round")
    colours = [COLOURS[name] for name in ("rust", "rust", "teal", "plum", "plum")]
    assert [frame.get("fill") for frame in reversed(painted)] == colours
    boxes = sizes(painted, "x", "y", "width", "height")
    ground = sizes(of_class(picture, "ground"), "x", "y", "width", "height")
    for outer, inner in pairwise(boxes + ground):
        depth = inner[0] - outer[0]
        assert depth > 0
        assert inner[1] - outer[1] == pytest.approx(depth, abs=2e-3)
        assert outer[2] - inner[2] == pytest.approx(2 * depth, abs=2e-3)
        assert outer[3] - inner[3] == pytest.approx(2 * depth, abs=2e-3)


def test_the_outermost_round_is_as_large_as_the_blanket() -> None:
    picture = drawn(quote_of(border=(band(rounds=4),)))
    places = ("x", "y", "width", "height")
    outermost = sizes(of_class(picture, "round")[:1], *places)[0]
    assert outermost == pytest.approx(sizes(of_class(picture, "outline"), *places)[0], abs=2e-3)


def test_a_blanket_without_a_border_has_no_frame() -> None:
    picture = drawn(quote_of(border=()))
    assert not of_class(picture, "round")
    assert len(of_class(picture, "chain")) == 1


def test_a_colour_that_comes_from_another_yarns_colour_is_drawn_in_that() -> None:
    picture = drawn(quote_of(sections=(section("cream", "teal"),), first_rows=()))
    assert of_class(picture, "row")[0].get("fill") == COLOURS["oat"]


@pytest.mark.parametrize(("height_cm", "rows"), [(13.5, 12), (381, 400)])
def test_few_rows_and_many_keep_every_colour_change(height_cm: float, rows: int) -> None:
    quote = quote_of(
        height_cm=height_cm,
        width_cm=min(height_cm, 200),
        sections=(section("teal", "oat", rows=2), section("plum", "moss", rows=3)),
    )
    assert len(quote.plan.rows) == pytest.approx(rows, abs=5)
    changes = [row.colour for row in quote.plan.rows]
    changes = [colour for colour, after in pairwise([*changes, ""]) if colour != after]
    fills = [row.get("fill") for row in of_class(drawn(quote), "row")]
    shown = [fill for fill, after in pairwise([*fills, None]) if fill != after]
    assert shown == [COLOURS[colour] for colour in changes]


def test_thin_rows_of_one_colour_are_one_band_and_thick_ones_are_not() -> None:
    same = {"sections": (section("teal", rows=5),), "first_rows": ()}
    assert len(of_class(drawn(quote_of(height_cm=400, width_cm=200, **same)), "row")) == 1
    few = quote_of(height_cm=40, **same)
    assert len(of_class(drawn(few), "row")) == len(few.plan.rows) > 1


def test_names_from_outside_are_escaped() -> None:
    quote = quote_of(
        workshop=with_colours(**{SCRIPT: "#123456", 'a"b&c': "#abcdef"}),
        first_rows=(),
        sections=(section(SCRIPT, 'a"b&c'),),
        border=(),
        colours={},
    )
    svg = draw_blanket(quote, speech_of(quote.workshop))
    assert "<script" not in svg
    assert f"Row 1 {SCRIPT}" in words_of(drawn(quote))
    assert 'a"b&c' in words_of(drawn(quote))


def test_a_title_from_outside_is_escaped() -> None:
    quote = sample_quote(sample_order(title=f"For {SCRIPT} & co"))
    title = drawn(quote).find(f"{SVG}title")
    assert title is not None
    assert title.text == f"For {SCRIPT} & co, drawn to scale"


def test_nothing_in_it_breaks_a_strict_content_policy() -> None:
    svg = draw_blanket(quote_of(), speech_of(quote_of().workshop))
    assert not re.search(r"\sstyle=|<style|<script|\son\w+=|href|@import|url\(http", svg)


def test_it_says_what_it_is_to_those_who_do_not_see_it() -> None:
    picture = drawn(quote_of(), prefix="page2")
    ids = {each.get("id"): each.text or "" for each in picture.iter() if each.get("id")}
    assert picture.get("role") == "img"
    assert picture.get("aria-labelledby") == "page2-title page2-desc"
    assert ids["page2-title"] == "Cot blanket in moorland stripes, drawn to scale"
    assert "103 rows: oat 35, teal 34, rust 34." in ids["page2-desc"]
    assert "12 ends to weave in" in ids["page2-desc"]


def test_the_buyer_is_shown_the_yarns_but_no_strand_that_looks_like_a_fringe() -> None:
    maker, buyer = drawn(quote_of()), drawn(quote_of(), reader=Reader.BUYER)
    for mark in ("tail", "carry"):
        assert of_class(maker, mark)
        assert not of_class(buyer, mark)
    assert len(of_class(buyer, "row")) == len(of_class(maker, "row"))
    assert "teal" in words_of(buyer)
    for words in ("starts", "carried up", "to weave in", "left-hand", "right-hand"):
        assert words in words_of(maker)
        assert words not in words_of(buyer)


def test_all_ids_begin_with_the_prefix() -> None:
    ids = [each.get("id") for each in drawn(quote_of(), prefix="two").iter() if each.get("id")]
    assert ids
    assert all(name is not None and name.startswith("two-") for name in ids)


def test_the_rulers_are_in_the_workshops_unit() -> None:
    metric = words_of(drawn(quote_of()))
    inches = words_of(drawn(quote_of(workshop={"units": Units.INCHES})))
    assert " cm " in metric
    assert " in " in inches
    assert " cm " not in inches


def test_a_ruler_is_numbered_from_nothing_in_even_steps_that_do_not_crowd() -> None:
    marks = list(ticks(300.0, 3.0, (1, 2, 5, 10, 20, 50)))
    numbered = [mark for mark, labelled in marks if labelled]
    assert numbered == list(range(0, 101, 10))
    assert [mark for mark, _ in marks] == list(range(0, 101, 2))


def test_a_ruler_of_inches_is_true() -> None:
    quote = quote_of(workshop={"units": Units.INCHES}, border=())
    picture = drawn(quote)
    ((left, width),) = sizes(of_class(picture, "outline"), "x", "width")
    numbers = {
        text.text: float(text.get("x", "nan"))
        for text in picture.iter(f"{SVG}text")
        if text.get("text-anchor") == "middle"
    }
    inch = width / (quote.plan.width_cm / CM_PER_INCH)
    assert numbers["24"] == pytest.approx(left + 24 * inch, abs=1e-2)


@pytest.mark.parametrize(("width_cm", "height_cm"), [(20, 400), (400, 20), (150, 150)])
def test_no_shape_of_blanket_leaves_the_picture(width_cm: float, height_cm: float) -> None:
    picture = drawn(quote_of(width_cm=width_cm, height_cm=height_cm))
    _, _, across, down = map(float, (picture.get("viewBox") or "").split())
    ((x, y, width, height),) = sizes(of_class(picture, "outline"), "x", "y", "width", "height")
    assert 0 < x < x + width < across
    assert 0 < y < y + height < down
