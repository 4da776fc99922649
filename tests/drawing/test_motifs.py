"""Joined motifs are drawn to scale, each layout once, and laid where the plan has it."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from typing import Any

import pytest

from exports.drawing import draw_blanket, draw_side_by_side
from quoting.core.ground.cautions import Reader
from quoting.core.order.joined_squares import JoinMethod, MotifJoin
from quoting.core.quote.quote import Quote
from quoting.wording import speech_of
from tests.drawing.pictures import SVG, drawn, of_class, sizes, words_of
from tests.examples import COLOURS, sample_quote
from tests.motif_examples import FIVE, motif_workshop, sample_squares, squares_order

OTHER = ("plum", "moss", "teal", "rust", "oat")
A_HAIR = 1e-3


def squares_of(
    *layouts: tuple[str, ...], design: dict[str, Any] | None = None, **body: Any
) -> Quote:
    """Return a quote of joined squares, with some of its body and its design changed."""
    order = squares_order(body=sample_squares(*layouts, **body), **(design or {}))
    return sample_quote(order, motif_workshop())


def laid(picture: ET.Element) -> list[tuple[str, int, int]]:
    """Return the name of each motif that is laid, and its column and row."""
    return [
        (each.attrib["href"][1:], int(each.attrib["x"]), int(each.attrib["y"]))
        for each in picture.iter(f"{SVG}use")
    ]


def moved(picture: ET.Element) -> tuple[float, float, float]:
    """Return where the grid begins, and how many units of the picture lie from motif to motif."""
    (motifs,) = of_class(picture, "motifs")
    found = re.fullmatch(r"translate\((\S+) (\S+)\) scale\((\S+)\)", motifs.attrib["transform"])
    assert found is not None
    return float(found[1]), float(found[2]), float(found[3])


def bands_of(motif: ET.Element) -> list[tuple[str, float]]:
    """Return the bands of a motif, the outer one first: colour, and side in the grid's measure."""
    rects = motif.findall(f"{SVG}rect")
    return [(rect.attrib["fill"], float(rect.attrib["width"])) for rect in rects]


def test_every_layout_is_drawn_once_and_laid_wherever_the_plan_has_it() -> None:
    quote = squares_of(FIVE, OTHER)
    grid = quote.plan.grid
    assert grid is not None
    picture = drawn(quote)
    names = [motif.attrib["id"] for motif in of_class(picture, "motif")]
    assert names == ["blanket-1", "blanket-2"]
    assert laid(picture) == [
        (names[grid.layout_at(column, row)], column, row)
        for row in range(11)
        for column in range(8)
    ]


def test_a_motif_has_its_rounds_as_bands_to_scale_the_outer_ones_first() -> None:
    quote = squares_of(FIVE)
    (motif,) = of_class(drawn(quote), "motif")
    heights = [worked.height_cm for worked in quote.plan.rows]
    sides = [2 * sum(heights[: number + 1]) / 15 for number in range(5)]
    assert sides[-1] == pytest.approx(1)
    expected = [(COLOURS[colour], side) for colour, side in zip(FIVE, sides, strict=True)]
    assert [colour for colour, _ in bands_of(motif)] == [colour for colour, _ in expected[::-1]]
    for (_, side), (_, wanted) in zip(bands_of(motif), expected[::-1], strict=True):
        assert side == pytest.approx(wanted, abs=A_HAIR)


def test_rounds_of_one_colour_that_follow_each_other_are_one_band() -> None:
    (motif,) = of_class(drawn(squares_of(("teal", "teal", "rust", "rust", "oat"))), "motif")
    assert [c for c, _ in bands_of(motif)] == [COLOURS[c] for c in ("oat", "rust", "teal")]


def test_the_grid_fills_the_body_to_scale() -> None:
    quote = squares_of(FIVE, join=MotifJoin(method=JoinMethod.SINGLE_CROCHET, colour="rust"))
    picture = drawn(quote)
    left, top, pitch = moved(picture)
    ((x, y, width, height),) = sizes(of_class(picture, "ground"), "x", "y", "width", "height")
    assert (left, top) == pytest.approx((x, y), abs=A_HAIR)
    columns, rows = 8 * 15.3 - 0.3, 11 * 15.3 - 0.3
    assert width / pitch == pytest.approx(columns / 15.3, abs=A_HAIR)
    assert height / pitch == pytest.approx(rows / 15.3, abs=A_HAIR)
    scale = width / columns
    ((whole,),) = sizes(of_class(picture, "outline"), "width")
    assert whole / scale == pytest.approx(quote.plan.width_cm, abs=A_HAIR)


def test_a_join_that_has_a_width_is_seen_in_its_colour() -> None:
    braid = MotifJoin(method=JoinMethod.FLAT_BRAID, colour="plum")
    picture = drawn(squares_of(FIVE, join=braid))
    (ground,) = of_class(picture, "ground")
    assert ground.attrib["fill"] == COLOURS["plum"]
    ((_, side), *_) = bands_of(of_class(picture, "motif")[0])
    assert side == pytest.approx(15 / 16.2, abs=A_HAIR)
    assert of_class(picture, "edges") == []


def test_motifs_that_touch_are_parted_by_a_line() -> None:
    (edges,) = of_class(drawn(squares_of(FIVE)), "edges")
    assert edges.attrib["d"].count("M") == (8 - 1) + (11 - 1)


def test_the_last_round_that_joins_all_of_them_is_drawn_on_each() -> None:
    """It is worked with the joins, after all motifs, and yet is a round of each."""
    join = MotifJoin(method=JoinMethod.CONTINUOUS, colour="oat")
    (motif,) = of_class(drawn(squares_of(FIVE, join=join)), "motif")
    assert [colour for colour, _ in bands_of(motif)] == [COLOURS[c] for c in reversed(FIVE)]
    assert bands_of(motif)[0][1] == pytest.approx(1)


def test_the_border_runs_round_all_of_them() -> None:
    picture = drawn(squares_of(FIVE))
    rounds = sizes(of_class(picture, "round"), "width")
    ((ground,),) = sizes(of_class(picture, "ground"), "width")
    assert len(rounds) == 3
    assert min(rounds)[0] > ground


@pytest.mark.parametrize(("across", "down", "most"), [(20, 20, 30_000), (50, 100, 250_000)])
def test_a_picture_of_thousands_of_motifs_stays_small(across: int, down: int, most: int) -> None:
    quote = squares_of(FIVE[:2], OTHER[:2], columns=across, rows=down, rounds=2)
    picture = draw_blanket(quote, speech_of(quote.workshop), reader=Reader.BUYER)
    assert picture.count("<use") == across * down
    assert len(picture) < most
    assert "style=" not in picture


def test_no_end_of_hundreds_is_drawn_but_a_maker_is_told_how_many_there_are() -> None:
    quote = squares_of(FIVE, OTHER)
    picture = drawn(quote)
    assert of_class(picture, "tail") == of_class(picture, "carry") == []
    assert f"{quote.estimate.ends:,} ends, not drawn" in words_of(of_class(picture, "key")[0])
    assert f"It has {quote.estimate.ends:,} ends to weave in." in words_of(picture)
    buyers = drawn(quote, reader=Reader.BUYER)
    assert "ends" not in words_of(buyers)


def test_what_it_shows_is_said_layout_by_layout() -> None:
    said = words_of(drawn(squares_of(FIVE, OTHER)))
    assert "88 motifs, 8 across and 11 down." in said
    assert "44 motifs from the centre outwards: teal, rust, plum, moss, oat." in said
    assert "Layout 2: plum, moss, teal, rust, oat" in said


def test_of_very_many_layouts_their_colours_are_said() -> None:
    turned = [(*(FIVE[(at + n) % 4] for n in range(4)), "oat") for at in range(4)]
    many = [*turned, *((a, b, a, b, "oat") for a in FIVE[:3] for b in FIVE[:3] if a != b)]
    said = words_of(drawn(squares_of(*many)))
    assert "10 layouts: teal, rust, plum, moss, oat." in said


def test_motifs_are_counted_across_and_down() -> None:
    (rulers,) = of_class(drawn(squares_of(FIVE)), "rulers")
    said = [each.text for each in rulers.iter(f"{SVG}text")]
    assert said.count("motif") == 1
    assert said[said.index("motif") - 19 : said.index("motif")] == [
        *(str(number) for number in range(1, 12)),
        *(str(number) for number in range(1, 9)),
    ]
    assert "right-hand" not in said


def test_pictures_on_one_page_share_no_name() -> None:
    quote = squares_of(FIVE)
    pictures = draw_side_by_side([quote, quote], speech_of(quote.workshop))
    names = [name for picture in pictures for name in re.findall(r'\bid="([^"]+)"', picture)]
    assert len(names) == len(set(names)) == 6
