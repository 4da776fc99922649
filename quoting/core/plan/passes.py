"""A pass: one row or round of the blanket, in the order it is worked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from quoting.core.ground.cautions import Caution
from quoting.core.plan.corners import CornerWork
from quoting.core.plan.gauge import Gauge


class Edge(StrEnum):
    """Where along a pass: the edge where row 1 begins, the other, or between them."""

    START = "start"
    FAR = "far"
    WITHIN = "within"

    @property
    def across(self) -> Edge:
        """The edge opposite."""
        return {Edge.START: Edge.FAR, Edge.FAR: Edge.START}[self]


class Work(StrEnum):
    """What a pass is."""

    CHAIN = "chain"
    ROW = "row"
    ROUND = "round"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pass:
    """One row or round.

    `number` counts within its kind of work; `stitches` maps each stitch, `ch` among them, to its
    count; `section` is the section of stripes it belongs to, from 0, if to any. A round is of the
    body, which then grows from its centre, or `in_border`: there `sides` are the stitches along
    each side of the body, those at corners left out, and `corner` is worked at each corner.
    """

    work: Work
    number: int
    colour: str
    stitch: str
    stitches: Mapping[str, int]
    starts: Edge
    ends: Edge
    height_cm: float
    section: int | None = None
    in_border: bool = False
    sides: tuple[int, ...] = ()
    corner: CornerWork | None = None

    @property
    def in_body(self) -> bool:
        """Whether it is one of the rows or rounds that the body is made of."""
        return self.work is not Work.CHAIN and not self.in_border


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The order unrolled: what is worked, in which order, and the size that comes out.

    `gauges` holds the gauge of every stitch, `ch` too, by (yarn, stitch).
    """

    passes: tuple[Pass, ...]
    stitches: int
    foundation_chain: int
    width_cm: float
    height_cm: float
    border_depth_cm: float
    gauges: Mapping[tuple[str, str], Gauge]
    section_repeats: tuple[float, ...] = ()
    cautions: tuple[Caution, ...] = ()

    def of_work(self, work: Work) -> tuple[Pass, ...]:
        """Return the passes of one kind of work, in order."""
        return tuple(p for p in self.passes if p.work is work)

    @property
    def rows(self) -> tuple[Pass, ...]:
        """The rows of the body, or its rounds where it grows in rounds."""
        return tuple(p for p in self.passes if p.in_body)

    @property
    def rounds(self) -> tuple[Pass, ...]:
        """The rounds of the border."""
        return tuple(p for p in self.passes if p.in_border)

    @property
    def rows_by_colour(self) -> dict[str, int]:
        """Rows, or rounds, of the body by colour, in the order the colours first come."""
        counts: dict[str, int] = {}
        for row in self.rows:
            counts[row.colour] = counts.get(row.colour, 0) + 1
        return counts

    @property
    def rows_by_section(self) -> tuple[int, ...]:
        """Rows of each section of stripes."""
        counts = [0] * len(self.section_repeats)
        for row in self.rows:
            if row.section is not None:
                counts[row.section] += 1
        return tuple(counts)
