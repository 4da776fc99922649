"""Where everything of a blanket lies on the drawing, in the drawing's own units.

The picture is always 400 units wide, so that its words stay legible on a phone; the blanket is
scaled into the room between its rulers. The chain is at the bottom. Row 1 begins at the right, as
a right-handed maker sees row 1 from the right side, or mirrored, as a left-handed one does (common
practice, no source).

Every pass has a band of heights of its own: rows theirs, rounds that of their upper side. So the
strands of each are told apart at the edges of the blanket. Motifs, of which one stands for many,
have none; where they lie is the plan's grid.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from exports.drawing.boxes import Box
from exports.drawing.outlines import RECTANGLE, Outline
from quoting.core.plan.passes import Edge, Plan, Work

VIEW_WIDTH = 400.0
ROOM_TOP = 23.0
GUTTER = 34.0
"""The room for strands beside the blanket, on each side."""

FONT_SIZE = 12.0


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

    `body` is the room of the rows or motifs: what no round runs about. `depth` is that of all
    rounds about it. `row` is the height of a row, or round, of the body on average. `mirrored` has
    the start edge at the left.
    """

    plan: Plan
    gutter: float
    scale: float
    blanket: Box
    body: Box
    depth: float
    climbed: tuple[float, ...]
    row: float
    outline: Outline = RECTANGLE
    mirrored: bool = False

    def band(self, index: int) -> Box:
        """Return a pass's band: a row whole, a round's upper side within the body's width."""
        height = self.plan.passes[index].height_cm * self.scale
        top = self.body.bottom - self.climbed[index] - height
        return Box(self.body.left, top, self.body.width, height)

    def edge_x(self, edge: Edge, y: float) -> float:
        """Return the blanket's outer side at an edge, at a height."""
        return self.blanket.middle[0] + self.side(edge) * self.outline.reach(self.blanket, y)

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
        at_left = self.plan.passes[index].starts is Edge.FAR
        return self.outline.spot(self.ring(index, middle=True), share, at_left=at_left)

    def ring(self, index: int, *, middle: bool = False) -> Box:
        """Return the box of a round's outer side, or of the line along its middle."""
        worked = self.plan.passes[index]
        inside = self.climbed[index] - self.body.height
        out = inside + worked.height_cm * self.scale * (0.5 if middle else 1.0)
        return self.outline.inset(self.blanket, self.depth - out)


def lay_out(
    plan: Plan, room: Room = MAKERS_ROOM, *, outline: Outline = RECTANGLE, mirrored: bool = False
) -> Layout:
    """Return the layout of a plan, perhaps as a left-handed maker sees it."""
    scale = min(room.width / plan.width_cm, room.height / plan.height_cm)
    width = plan.width_cm * scale
    left = room.left + (room.width - width) / 2
    blanket = Box(left, ROOM_TOP, width, plan.height_cm * scale)
    depth = _rounds_cm(plan) * scale
    body = outline.inset(blanket, depth)
    return Layout(
        plan=plan,
        gutter=room.gutter,
        scale=scale,
        blanket=blanket,
        body=body,
        depth=depth,
        climbed=tuple(_climbed(plan, body, scale)),
        row=sum(worked.height_cm for worked in plan.rows) * scale / len(plan.rows),
        outline=outline,
        mirrored=mirrored,
    )


def _rounds_cm(plan: Plan) -> float:
    """Return the depth on one side of the rounds about the blanket: the border's, the body's."""
    of_body = (w.height_cm for w in plan.rows if w.work is Work.ROUND and plan.grid is None)
    return plan.border_depth_cm + sum(of_body)


def _climbed(plan: Plan, body: Box, scale: float) -> Iterator[float]:
    """Yield where each pass begins: rows from the chain up, rounds from the body's upper side."""
    rows, rounds = 0.0, body.height
    for worked in plan.passes:
        height = worked.height_cm * scale
        if worked.work is Work.ROUND and (worked.in_border or plan.grid is None):
            yield rounds
            rounds += height
        else:
            yield rows
            rows += height
