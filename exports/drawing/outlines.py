"""The outlines that a blanket, and each round of it, may have: a rectangle, a circle, a hexagon.

Each lies in a box, and is drawn as wide and as high as that. A hexagon stands on a corner.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import ClassVar, Protocol

from exports.drawing.boxes import Box
from exports.svg import element, route

Spot = tuple[float, float]
"""A point of the picture: how far to the right, and how far down."""


class Outline(Protocol):
    """What a round runs along."""

    def inset(self, box: Box, by: float) -> Box:
        """Return the box of the same outline with its sides so much further inside."""

    def drawn(self, box: Box, *children: str, **attributes: str | float | None) -> str:
        """Return it as an element."""

    def line(self, box: Box) -> list[str | float]:
        """Return it as the steps of a path."""

    def length(self, box: Box) -> float:
        """Return how long it is, all the way round."""

    def spot(self, box: Box, share: float, *, at_left: bool = False) -> Spot:
        """Return the point at a share of the way round, anticlockwise from its join.

        The join is at the upper right, or at the upper left. That is how a right-handed maker
        works (common practice, no source).
        """

    def reach(self, box: Box, y: float) -> float:
        """Return how far its side lies from the middle of the box, at a height."""


class _Cornered:
    """An outline of straight sides; its corners are shares of the box, anticlockwise."""

    corners: ClassVar[tuple[Spot, ...]]
    first_at_left: ClassVar[int]
    """Which corner the join is at, where it is at the left."""

    def line(self, box: Box) -> list[str | float]:
        steps: list[str | float] = []
        for x, y in self._spots(box):
            steps += ["L" if steps else "M", x, y]
        return [*steps, "Z"]

    def length(self, box: Box) -> float:
        spots = self._spots(box)
        return sum(math.dist(*side) for side in pairwise([*spots, spots[0]]))

    def spot(self, box: Box, share: float, *, at_left: bool = False) -> Spot:
        first = self.first_at_left if at_left else 0
        spots = self._spots(box)
        way = [*spots[first:], *spots[:first], spots[first]]
        left = share * self.length(box)
        for here, there in pairwise(way):
            length = math.dist(here, there)
            if left <= length and length:
                return _between(here, there, left / length)
            left -= length
        return way[-1]

    def _spots(self, box: Box) -> Sequence[Spot]:
        return [(box.left + x * box.width, box.top + y * box.height) for x, y in self.corners]


class Rectangle(_Cornered):
    """A square or a rectangle."""

    corners = ((1, 0), (0, 0), (0, 1), (1, 1))
    first_at_left = 1

    def inset(self, box: Box, by: float) -> Box:
        """Return the box that lies so much inside."""
        return box.shrunk(by)

    def drawn(self, box: Box, *children: str, **attributes: str | float | None) -> str:
        """Return a rectangle."""
        lies = {"x": box.left, "y": box.top, "width": box.width, "height": box.height}
        return element("rect", *children, **lies, **attributes)

    def reach(self, box: Box, y: float) -> float:
        """Return half of its width, at any height."""
        del y
        return box.width / 2


class Hexagon(_Cornered):
    """A hexagon that stands on a corner: as wide as across its sides, as high as its corners."""

    corners = ((0.5, 0), (0, 0.25), (0, 0.75), (0.5, 1), (1, 0.75), (1, 0.25))
    first_at_left = 0

    def inset(self, box: Box, by: float) -> Box:
        """Return the box of the hexagon whose sides lie so much inside, in the same proportions."""
        share = 1 - 2 * by / box.width
        return box.scaled(share, share)

    def drawn(self, box: Box, *children: str, **attributes: str | float | None) -> str:
        """Return a hexagon as a path."""
        return element("path", *children, d=route(*self.line(box)), **attributes)

    def reach(self, box: Box, y: float) -> float:
        """Return how far its side is from the middle: less above its upper corners."""
        from_middle = abs(y - (box.top + box.bottom) / 2) / box.height
        return box.width / 2 * min(1.0, max(0.0, 2 - 4 * from_middle))


class Circle:
    """A circle."""

    def inset(self, box: Box, by: float) -> Box:
        """Return the box of the circle whose radius is so much less."""
        return box.shrunk(by)

    def drawn(self, box: Box, *children: str, **attributes: str | float | None) -> str:
        """Return a circle."""
        x, y = box.middle
        return element("circle", *children, cx=x, cy=y, r=box.width / 2, **attributes)

    def line(self, box: Box) -> list[str | float]:
        """Return it as two arcs."""
        (_, y), radius = box.middle, box.width / 2
        arc: list[str | float] = ["A", radius, radius, 0, 0, 0]
        return ["M", box.right, y, *arc, box.left, y, *arc, box.right, y, "Z"]

    def length(self, box: Box) -> float:
        """Return its circumference."""
        return math.pi * box.width

    def spot(self, box: Box, share: float, *, at_left: bool = False) -> Spot:
        """Return a point of it; its join is half-way up at the right, or at the left."""
        (x, y), radius = box.middle, box.width / 2
        angle = 2 * math.pi * share + (math.pi if at_left else 0)
        return x + radius * math.cos(angle), y - radius * math.sin(angle)

    def reach(self, box: Box, y: float) -> float:
        """Return how far it is from the middle at a height."""
        down = y - box.middle[1]
        return math.sqrt(max(0.0, (box.width / 2) ** 2 - down**2))


def _between(here: Spot, there: Spot, share: float) -> Spot:
    return here[0] + (there[0] - here[0]) * share, here[1] + (there[1] - here[1]) * share


RECTANGLE, CIRCLE, HEXAGON = Rectangle(), Circle(), Hexagon()
