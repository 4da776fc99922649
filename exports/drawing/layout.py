"""Where everything of a blanket lies on the drawing, in the drawing's own units.

The picture is always 400 units wide, so that its words stay legible on a phone; the blanket is
scaled into the room between its rulers. The chain is at the bottom. Row 1 begins at the right, as
a right-handed maker sees row 1 from the right side, or mirrored, as a left-handed one does (common
practice, no source).

Every pass has a band of heights of its own: rows theirs, rounds that of their upper side. So the
strands of each are told apart at the edges of the blanket.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate

from quoting.core.plan.passes import Edge, Pass, Plan, Work

VIEW_WIDTH = 400.0
ROOM_TOP = 23.0
GUTTER = 34.0
"""The room for strands beside the blanket, on each side."""

FONT_SIZE = 12.0


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle: its upper left corner and its size."""

    left: float
    top: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right side."""
        return self.left + self.width

    @property
    def bottom(self) -> float:
        """Its lower side."""
        return self.top + self.height

    def shrunk(self, by: float) -> Box:
        """Return the box with `by` taken off on every side."""
        return Box(self.left + by, self.top + by, self.width - 2 * by, self.height - 2 * by)


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """The room for a blanket, and the gutter between it and what stands at its sides."""

    left: float
    width: float
    height: float
    gutter: float


MAKERS_ROOM = Room(left=68, width=266, height=460, gutter=GUTTER)
BUYERS_ROOM = Room(left=46, width=338, height=480, gutter=12)
"""No strand is drawn for the buyer and no row numbered, so that the blanket is the larger."""


@dataclass(frozen=True, slots=True)
class Layout:
    """The blanket's place on the drawing. `climbed` is where each pass begins, from the body up.

    `body` is the room of the rows: what no round lies in. `row` is the height of a row, or round,
    of the body on average. `mirrored` has the start edge at the left.
    """

    plan: Plan
    gutter: float
    scale: float
    blanket: Box
    body: Box
    climbed: tuple[float, ...]
    row: float
    mirrored: bool = False

    def band(self, index: int) -> Box:
        """Return a pass's band: a row whole, a round's upper side within the body's width."""
        height = self.plan.passes[index].height_cm * self.scale
        top = self.body.bottom - self.climbed[index] - height
        return Box(self.body.left, top, self.body.width, height)

    def edge_x(self, edge: Edge) -> float:
        """Return the blanket's outer side at an edge."""
        return self.blanket.right if self.side(edge) > 0 else self.blanket.left

    def side(self, edge: Edge) -> int:
        """Return which way is out at an edge: 1 to the right, -1 to the left."""
        return 1 if (edge is Edge.START) is not self.mirrored else -1

    def height_at(self, index: int, share: float) -> float:
        """Return how far down a share of a pass's height lies, from its lower side."""
        height = self.plan.passes[index].height_cm * self.scale
        return self.body.bottom - self.climbed[index] - share * height

    def point(self, index: int, share: float) -> tuple[float, float]:
        """Return the point where a share of a pass's yarn has been worked."""
        x, y = self._unmirrored_point(index, share)
        return (self.blanket.left + self.blanket.right - x if self.mirrored else x), y

    def _unmirrored_point(self, index: int, share: float) -> tuple[float, float]:
        worked = self.plan.passes[index]
        if worked.work is Work.ROUND:
            return self._round_point(index, share)
        along = share if worked.starts is Edge.FAR else 1 - share
        return self.body.left + along * self.body.width, self.height_at(index, 0.5)

    def _round_point(self, index: int, share: float) -> tuple[float, float]:
        """Return a point of a round, which runs anticlockwise from an upper corner.

        That is how a right-handed maker works it, and mirrored a left-handed one (common practice,
        no source).
        """
        ring = self.ring(index, middle=True)
        corners = [
            (ring.left, ring.top),
            (ring.left, ring.bottom),
            (ring.right, ring.bottom),
            (ring.right, ring.top),
        ]
        first = 3 if self.plan.passes[index].starts is Edge.START else 0
        left = share * 2 * (ring.width + ring.height)
        for side in range(first, first + 4):
            (x, y), (to_x, to_y) = corners[side % 4], corners[(side + 1) % 4]
            length = abs(to_x - x) + abs(to_y - y)
            if left <= length and length:
                return x + (to_x - x) * left / length, y + (to_y - y) * left / length
            left -= length
        return corners[first]

    def ring(self, index: int, *, middle: bool = False) -> Box:
        """Return the outer side of a round, or the line along its middle."""
        worked = self.plan.passes[index]
        inside = self.climbed[index] - self.body.height
        out = inside + worked.height_cm * self.scale * (0.5 if middle else 1.0)
        return self.body.shrunk(-out)


def lay_out(plan: Plan, room: Room = MAKERS_ROOM, *, mirrored: bool = False) -> Layout:
    """Return the layout of a plan, perhaps as a left-handed maker sees it."""
    scale = min(room.width / plan.width_cm, room.height / plan.height_cm)
    width = plan.width_cm * scale
    left = room.left + (room.width - width) / 2
    blanket = Box(left, ROOM_TOP, width, plan.height_cm * scale)
    return Layout(
        plan=plan,
        gutter=room.gutter,
        scale=scale,
        blanket=blanket,
        body=blanket.shrunk((plan.border_depth_cm + _rounds_cm(plan)) * scale),
        climbed=_climbed(plan.passes, scale),
        row=sum(worked.height_cm for worked in plan.rows) * scale / len(plan.rows),
        mirrored=mirrored,
    )


def _rounds_cm(plan: Plan) -> float:
    """Return the depth on one side of the rounds of the body."""
    return sum(worked.height_cm for worked in plan.rows if worked.work is Work.ROUND)


def _climbed(passes: tuple[Pass, ...], scale: float) -> tuple[float, ...]:
    return tuple(accumulate((worked.height_cm * scale for worked in passes[:-1]), initial=0.0))
