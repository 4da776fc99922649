"""What grows from its centre is drawn in its own outline, round within round, to scale."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from itertools import pairwise
from typing import Any

import pytest

from exports.drawing.boxes import Box
from exports.drawing.outlines import CIRCLE, HEXAGON, RECTANGLE
from quoting.core.quote.quote import Quote
from quoting.core.workshop.rounds import Counting
from tests.drawing.pictures import drawn, of_class, sizes, words_of
from tests.examples import COLOURS, band, sample_quote
from tests.motif_examples import centre_order, motif_workshop, sample_centre

A_HAIR = 1e-2
SQUARE = Box(0, 0, 12, 12)
TALL = Box(0, 0, 3**0.5, 2)
"""A hexagon whose sides are 1: it is √3 across its sides and 2 across its corners."""


def centred(
    counting: Counting = Counting.SOLID,
    width_cm: float = 100,
    height_cm: float = 100,
    **design: Any,
) -> Quote:
    """Return a quote of a piece from the centre in stripes of two colours."""
    body = sample_centre("teal", "rust", rounds_each=2, counting=counting)
    sides = {"width_cm": width_cm, "height_cm": height_cm}
    return sample_quote(centre_order(body=body, **sides, **design), motif_workshop())


def spots(path: ET.Element) -> list[tuple[float, float]]:
    """Return the corners of an outline that is a path."""
    pairs = re.findall(r"[ML] (\S+) (\S+)", path.attrib["d"])
    return [(float(x), float(y)) for x, y in pairs]


def test_a_square_is_its_rounds_as_frames_the_outer_ones_first() -> None:
    quote = centred()
    rounds = of_class(drawn(quote), "round")
    assert len(rounds) == len(quote.plan.rows)
    widths = [width for (width,) in sizes(rounds, "width")]
    assert widths == sorted(widths, reverse=True)
    fills = [COLOURS[worked.colour] for worked in reversed(quote.plan.rows)]
    assert [each.attrib["fill"] for each in rounds] == fills


def test_a_rectangle_has_the_chain_that_it_begins_on_in_its_middle() -> None:
    quote = centred(width_cm=75, height_cm=90)
    picture = drawn(quote)
    (line,) = of_class(picture, "begins-on")
    ((_, top), (_, bottom)) = spots(line)
    ((width,),) = sizes(of_class(picture, "outline"), "width")
    scale = width / quote.plan.width_cm
    assert (bottom - top) / scale == pytest.approx(
        quote.plan.height_cm - quote.plan.width_cm, abs=A_HAIR
    )
    ((_, inner),) = sizes(of_class(picture, "round")[-1:], "width", "height")
    first = quote.plan.rows[0]
    assert inner / scale == pytest.approx((bottom - top) / scale + 2 * first.height_cm, abs=A_HAIR)


def test_a_square_begins_on_no_chain() -> None:
    assert of_class(drawn(centred()), "begins-on") == []


def test_a_circle_is_discs_one_on_another_and_its_border_more_of_them() -> None:
    quote = centred(Counting.CIRCLE, border=(band("hdc", rounds=2),))
    picture = drawn(quote)
    outline = of_class(picture, "outline")
    ((outer,),) = sizes(outline, "r")
    scale = 2 * outer / quote.plan.width_cm
    radii = [radius for (radius,) in sizes(of_class(picture, "round"), "r")]
    depths = [worked.height_cm for worked in quote.plan.passes]
    expected = [scale * sum(depths[:number]) for number in range(len(depths), 0, -1)]
    assert radii == pytest.approx(expected, abs=A_HAIR)
    assert {each.tag.rpartition("}")[2] for each in (*outline, *of_class(picture, "round"))} == {
        "circle"
    }


def test_a_hexagon_stands_on_a_corner_as_wide_as_across_its_sides() -> None:
    """The height of a regular hexagon across its corners is 2/√3 of its width across its sides."""
    quote = centred(Counting.HEXAGON)
    picture = drawn(quote)
    (outline,) = of_class(picture, "outline")
    corners = spots(outline)
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    assert (max(ys) - min(ys)) / (max(xs) - min(xs)) == pytest.approx(2 / 3**0.5, abs=A_HAIR)
    sides = [math.dist(a, b) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    assert sides == pytest.approx([sides[0]] * 6, rel=A_HAIR)
    assert len(of_class(picture, "round")) == len(quote.plan.rows)


@pytest.mark.parametrize("counting", [Counting.CIRCLE, Counting.HEXAGON, Counting.SOLID])
def test_tails_leave_it_at_its_outer_side(counting: Counting) -> None:
    quote = centred(counting)
    picture = drawn(quote)
    tails = [each.attrib["d"].split() for each in of_class(picture, "tail")]
    beside = [(float(d[1]), float(d[2])) for d in tails if d[3] == "Q"]
    assert len(of_class(picture, "tail")) == quote.estimate.ends
    outline = {Counting.CIRCLE: CIRCLE, Counting.HEXAGON: HEXAGON}.get(counting, RECTANGLE)
    box = whole(picture)
    for x, y in beside:
        assert x - box.middle[0] == pytest.approx(outline.reach(box, y), abs=A_HAIR)


def whole(picture: ET.Element) -> Box:
    """Return the box of a blanket that is drawn."""
    (outline,) = of_class(picture, "outline")
    if "r" in outline.attrib:
        ((x, y, r),) = sizes([outline], "cx", "cy", "r")
        return Box(x - r, y - r, 2 * r, 2 * r)
    if "width" in outline.attrib:
        return Box(*sizes([outline], "x", "y", "width", "height")[0])
    xs, ys = zip(*spots(outline), strict=True)
    return Box(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))


def test_a_piece_from_the_centre_is_said_by_its_shape() -> None:
    assert "cm across, round 1 in the middle." in words_of(drawn(centred(Counting.CIRCLE)))
    assert "from corner to corner, round 1" in words_of(drawn(centred(Counting.HEXAGON)))
    assert " × " in words_of(drawn(centred()))


def test_rounds_have_no_edges_and_are_numbered_from_the_middle() -> None:
    (rulers,) = of_class(drawn(centred()), "rulers")
    assert "round" in words_of(rulers)
    assert "hand" not in words_of(rulers)


@pytest.mark.parametrize(
    ("outline", "box", "share", "spot"),
    [
        (RECTANGLE, SQUARE, 0, (12, 0)),
        (RECTANGLE, SQUARE, 0.25, (0, 0)),
        (RECTANGLE, SQUARE, 0.375, (0, 6)),
        (RECTANGLE, SQUARE, 1, (12, 0)),
        (CIRCLE, SQUARE, 0, (12, 6)),
        (CIRCLE, SQUARE, 0.25, (6, 0)),
        (CIRCLE, SQUARE, 0.5, (0, 6)),
        (HEXAGON, TALL, 0, (3**0.5 / 2, 0)),
        (HEXAGON, TALL, 1 / 6, (0, 0.5)),
        (HEXAGON, TALL, 0.5, (3**0.5 / 2, 2)),
    ],
)
def test_a_round_runs_anticlockwise_from_its_join(
    outline: Any, box: Box, share: float, spot: tuple[float, float]
) -> None:
    """As a right-handed maker works it (common practice, no source)."""
    assert outline.spot(box, share) == pytest.approx(spot, abs=1e-9)


def test_a_join_at_the_left_is_half_a_circle_or_a_corner_further() -> None:
    assert CIRCLE.spot(SQUARE, 0, at_left=True) == pytest.approx((0, 6))
    assert RECTANGLE.spot(SQUARE, 0, at_left=True) == pytest.approx((0, 0))


def test_a_circle_is_pi_times_and_a_hexagon_six_times_its_side_round() -> None:
    assert CIRCLE.length(SQUARE) == pytest.approx(12 * math.pi)
    assert RECTANGLE.length(SQUARE) == pytest.approx(48)
    assert HEXAGON.length(TALL) == pytest.approx(6)


def test_stitches_of_a_round_are_shown_where_they_are_wide_enough() -> None:
    """A line between each two, so that a round has as many as it has stitches and chains."""
    quote = centred(width_cm=12, height_cm=12)
    picture = drawn(quote)
    shown = of_class(picture, "stitches")
    assert len(shown) == len(quote.plan.rows)
    for line, worked in zip(shown, quote.plan.rows, strict=True):
        ((x, _), *_, (_, y)) = spots(line)[::2]
        around = 2 * (abs(x - spots(line)[1][0]) + abs(y - spots(line)[0][1]))
        each = sum(map(float, line.attrib["stroke-dasharray"].split()))
        assert around / each == pytest.approx(sum(worked.stitches.values()), rel=A_HAIR)
    assert of_class(drawn(centred(width_cm=200, height_cm=200)), "stitches") == []


@pytest.mark.parametrize("counting", [Counting.SOLID, Counting.CLUSTERS, Counting.HEXAGON])
def test_no_line_between_stitches_is_bent_round_a_corner(counting: Counting) -> None:
    """A wide dash that a corner is in is drawn with a join, which fills the corner."""
    shown = of_class(drawn(centred(counting, width_cm=12, height_cm=12)), "stitches")
    assert shown
    for line in shown:
        corners = [*spots(line), spots(line)[0]]
        dash, gap = map(float, line.attrib["stroke-dasharray"].split())
        at = float(line.attrib["stroke-dashoffset"])
        for here, there in pairwise(corners):
            at += math.dist(here, there)
            assert dash < at % (dash + gap) < dash + gap


@pytest.mark.parametrize("outline", [RECTANGLE, CIRCLE, HEXAGON])
def test_what_lies_inside_shares_the_middle(outline: Any) -> None:
    box = TALL if outline is HEXAGON else SQUARE
    inside = outline.inset(box, 0.25)
    assert inside.width == pytest.approx(box.width - 0.5)
    assert inside.middle == pytest.approx(box.middle)
    assert inside.height / inside.width == pytest.approx(box.height / box.width)
