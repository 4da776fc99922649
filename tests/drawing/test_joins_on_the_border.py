"""Where a ball is joined in a round, the drawing shows it: on that round, at that part of it."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from dataclasses import dataclass
from itertools import pairwise

import pytest

from quoting.core.estimate.strands import Strand
from quoting.core.plan.passes import Edge, Work
from quoting.core.quote.quote import Quote
from quoting.core.workshop.yarns import PutUp
from tests.drawing.pictures import drawn, of_class, quote_of, sizes
from tests.examples import band, sample_yarn, section, stripes

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Frame:
    """The line along the middle of a round, as it is drawn."""

    left: float
    top: float
    right: float
    bottom: float

    def side_of(self, at: Point) -> str:
        """Return the side that a point lies on."""
        distances = {
            "left": abs(at[0] - self.left),
            "right": abs(at[0] - self.right),
            "top": abs(at[1] - self.top),
            "bottom": abs(at[1] - self.bottom),
        }
        side = min(distances, key=lambda name: distances[name])
        assert distances[side] < 0.05, f"{at} is beside the round"
        return side

    def way_to(self, at: Point, begins: Edge) -> float:
        """Return how far a point is from the upper corner of an edge, against the clock."""
        across, down = self.right - self.left, self.bottom - self.top
        way = {
            "top": self.right - at[0],
            "left": across + at[1] - self.top,
            "bottom": across + down + at[0] - self.left,
            "right": 2 * across + down + self.bottom - at[1],
        }[self.side_of(at)]
        round_it = 2 * (across + down)
        return way if begins is Edge.START else (way - across) % round_it


def frames_of(picture: ET.Element) -> list[Frame]:
    """Return the middles of the rounds, the first one first."""
    painted = [*of_class(picture, "round"), *of_class(picture, "ground")]
    boxes = sizes(painted, "x", "y", "width", "height")
    middles = [
        Frame(
            left=(outer_x + x) / 2,
            top=(outer_y + y) / 2,
            right=(outer_x + outer_width + x + width) / 2,
            bottom=(outer_y + outer_height + y + height) / 2,
        )
        for (outer_x, outer_y, outer_width, outer_height), (x, y, width, height) in pairwise(boxes)
    ]
    return middles[::-1]


def edged(rows: int) -> Quote:
    """Return a wide border of one yarn in short balls; its rounds begin where the rows end."""
    ball = PutUp(weight_g=17, length_m=37, price=sample_yarn().put_ups[0].price)
    return quote_of(
        workshop={"yarns": (sample_yarn(put_ups=(ball,), stock=()),)},
        first_rows=stripes("teal"),
        sections=(section("teal", repeats=rows - 1),),
        border=(band(colour="rust", rounds=14),),
    )


def joined_in_rounds(quote: Quote) -> list[Strand]:
    return [
        strand
        for strand in quote.estimate.strands
        if strand.ends.edge is Edge.WITHIN
        and quote.plan.passes[strand.ends.pass_index].work is Work.ROUND
    ]


def dots_outside_the_body(picture: ET.Element) -> list[Point]:
    ((x, y, width, height),) = sizes(of_class(picture, "ground"), "x", "y", "width", "height")
    dots = [(cx, cy) for cx, cy in sizes(of_class(picture, "join"), "cx", "cy")]
    return [(a, b) for a, b in dots if not (x <= a <= x + width and y <= b <= y + height)]


@pytest.mark.parametrize("rows", [40, 41])
def test_a_join_in_a_round_is_drawn_at_its_part_of_the_way_round(rows: int) -> None:
    """A right-handed maker works against the clock (common practice, no source)."""
    quote = edged(rows)
    picture = drawn(quote)
    frames, joined = frames_of(picture), joined_in_rounds(quote)
    dots = dots_outside_the_body(picture)
    assert len(frames) == 14
    sides = set()
    for dot, strand in zip(dots, joined, strict=True):
        worked = quote.plan.passes[strand.ends.pass_index]
        frame = frames[worked.number - 1]
        round_it = 2 * (frame.right - frame.left + frame.bottom - frame.top)
        share = strand.stretches[-1].ends
        assert frame.way_to(dot, worked.starts) == pytest.approx(share * round_it, abs=0.2)
        sides.add(frame.side_of(dot))
    assert sides == {"top", "left", "bottom", "right"}


def test_the_rounds_begin_at_the_edge_where_the_last_row_ended() -> None:
    begins = {edged(rows).plan.rounds[0].starts for rows in (40, 41)}
    assert begins == {Edge.START, Edge.FAR}
