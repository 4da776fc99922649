"""The strands on the drawing: a tail for every end, an arc for every carry, a dot for every join.

A tail that turns down starts its strand, one that turns up ends it. Each tail and each carry is a
path of its own, so that counting them gives the ends and the carries.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from exports.drawing.layout import GUTTER, Layout
from exports.svg import INK, element, path, route
from quoting.core.estimate.strands import Carry, Strand
from quoting.core.plan.passes import Edge

Steps = tuple[str | float, ...]

OFF_MIDDLE = 0.22
"""A strand enters a pass this much of its height under the middle, and leaves it as much over."""

TIP_GAP = 3.2
TAIL, LANES, LANE = 17.0, 3, 5.0
TURN = 3.0
DEEPEST = 14.0
HALO = 0.9
WHISKER = 6.0
DARK, LIGHT = "#111111", "#ffffff"
"""A join lies on yarn of any colour: dark on a light ground of its own."""


@dataclass(frozen=True, slots=True)
class Mark:
    """One line of yarn beside the blanket: its colour and the `d` of its path."""

    colour: str
    d: str


@dataclass(frozen=True, slots=True)
class Root:
    """Where a tail leaves the blanket, how far down, and whether it is a strand's first."""

    y: float
    colour: str
    first: bool


def draw_strands(layout: Layout, strands: Sequence[Strand], codes: Mapping[str, str]) -> str:
    """Return every carry, tail and join of the strands."""
    wide = _stroke(layout)
    carries = [_carry(layout, s.colour, carry) for s in strands for carry in s.carries]
    tails = [mark for edge in (Edge.FAR, Edge.START) for mark in _tails(layout, edge, strands)]
    return element(
        "g",
        *_yarns(carries, "carry", codes, 0.8 * wide),
        *_yarns(tails, "tail", codes, wide),
        *_joins(layout, strands),
        class_="strands",
        stroke_linecap="round",
    )


def _stroke(layout: Layout) -> float:
    """Return the width of a strand's line: less where rows are thin."""
    return min(1.9, max(0.8, 0.42 * layout.row))


def _yarns(
    marks: Sequence[Mark], class_: str, codes: Mapping[str, str], width: float
) -> Iterator[str]:
    """Yield lines in their yarn's colour, on a halo of ink that shows yarns as pale as the page."""
    if not marks:
        return
    every = " ".join(mark.d for mark in marks)
    halo = width + HALO
    yield element("path", d=every, class_="halo", stroke=INK, stroke_opacity=0.5, stroke_width=halo)
    lines = (element("path", class_=class_, d=m.d, stroke=codes[m.colour]) for m in marks)
    yield element("g", *lines, stroke_width=width)


def _carry(layout: Layout, colour: str, carry: Carry) -> Mark:
    low = layout.height_at(carry.from_pass, 0.5 + OFF_MIDDLE)
    high = layout.height_at(carry.to_pass, 0.5 - OFF_MIDDLE)
    x, to_x = layout.edge_x(carry.edge, low), layout.edge_x(carry.edge, high)
    out = x + layout.side(carry.edge) * min(DEEPEST, 4 + 0.5 * (low - high))
    return Mark(colour, route("M", x, low, "C", out, low, out, high, to_x, high))


def _tails(layout: Layout, edge: Edge, strands: Iterable[Strand]) -> Iterator[Mark]:
    """Yield the tails at an edge, their tips spread so that each can be seen."""
    roots = sorted(_roots(layout, edge, strands), key=lambda root: (root.y, root.first))
    wanted = [root.y + (TURN if root.first else -TURN) for root in roots]
    box = layout.blanket
    tips = spread(wanted, TIP_GAP, box.top - 8, box.bottom + 8)
    crowded = any(after - before < TIP_GAP for before, after in pairwise(wanted))
    side = layout.side(edge)
    for number, (root, tip) in enumerate(zip(roots, tips, strict=True)):
        x = layout.edge_x(edge, root.y)
        reach = min(GUTTER - 4, TAIL + (LANE * (number % LANES) if crowded else 0))
        bend = x + side * 0.5 * reach
        yield Mark(root.colour, route("M", x, root.y, "Q", bend, root.y, x + side * reach, tip))


def _roots(layout: Layout, edge: Edge, strands: Iterable[Strand]) -> Iterator[Root]:
    for strand in strands:
        for point, first in ((strand.starts, True), (strand.ends, False)):
            if point.edge is edge:
                share = 0.5 - OFF_MIDDLE if first else 0.5 + OFF_MIDDLE
                yield Root(layout.height_at(point.pass_index, share), strand.colour, first)


def spread(wanted: Sequence[float], gap: float, low: float, high: float) -> list[float]:
    """Return positions in order, moved as little as makes them lie `gap` apart, low to high.

    Where there is no room for that, they lie as far apart as there is. Neighbours that are in
    each other's way move together (pool adjacent violators: the least squares of the moves).
    """
    gap = min(gap, (high - low) / max(1, len(wanted) - 1))
    pools: list[tuple[float, int]] = []
    for index, position in enumerate(wanted):
        total, size = position - index * gap, 1
        while pools and pools[-1][0] * size > total * pools[-1][1]:
            more, others = pools.pop()
            total, size = total + more, size + others
        pools.append((total, size))
    firsts = [total / size for total, size in pools for _ in range(size)]
    last = high - gap * max(0, len(wanted) - 1)
    return [min(max(first, low), last) + index * gap for index, first in enumerate(firsts)]


def _joins(layout: Layout, strands: Iterable[Strand]) -> Iterator[str]:
    """Yield a dot where a ball is joined within a pass, and the tails of the old and the new."""
    lines: list[Steps] = []
    dots: list[str] = []
    for strand in strands:
        if strand.ends.edge is Edge.WITHIN:
            x, y = layout.point(strand.ends.pass_index, strand.stretches[-1].ends)
            lines.append(_whisker(x, y, -1))
            dots.append(_dot(x, y))
        if strand.starts.edge is Edge.WITHIN:
            x, y = layout.point(strand.starts.pass_index, strand.stretches[0].begins)
            lines.append(_whisker(x, y, 1))
    if lines:
        every = " ".join(route(*line) for line in lines)
        yield element("path", d=every, class_="halo", stroke=LIGHT, stroke_width=2.6)
    for line in lines:
        yield path(*line, class_="tail", stroke=DARK, stroke_width=0.9)
    yield from dots


def _whisker(x: float, y: float, down: int) -> Steps:
    """Return a short tail: up and to the left for an old ball's, down and right for a new one's."""
    to_x, to_y = x + down * WHISKER, y + down * WHISKER
    return ("M", x, y, "C", x + down * 3, y, to_x, y + down * 3, to_x, to_y)


def _dot(x: float, y: float) -> str:
    return element(
        "circle", cx=x, cy=y, r=1.7, class_="join", fill=LIGHT, stroke=DARK, stroke_width=0.9
    )
