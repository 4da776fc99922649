"""A pass: one row or round of the blanket, in the order it is worked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType

from quoting.core.ground.cautions import Caution
from quoting.core.plan.corners import CornerWork
from quoting.core.plan.gauge import BY_SWATCH, Fabric, Gauge, Made
from quoting.core.plan.parts import WHOLE, BlanketPart, PartKind
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.core.workshop.rounds import SHARE_OF_BOX, Counting, Rounds


class Edge(StrEnum):
    """Where along a pass: the edge where row 1 begins, the other, or between them."""

    START = "start"
    FAR = "far"
    WITHIN = "within"

    @property
    def across(self) -> Edge:
        """The edge opposite. Errors: KeyError within a pass."""
        return {Edge.START: Edge.FAR, Edge.FAR: Edge.START}[self]


class Work(StrEnum):
    """What a pass is."""

    CHAIN = "chain"
    ROW = "row"
    ROUND = "round"
    SEAM = "seam"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pass:
    """One row or round.

    `number` counts within its kind of work; `stitches` maps each stitch, `ch` among them, to its
    count; `section` is the section of stripes it belongs to, from 0, if to any. A round is of the
    body, which then grows from its centre, or `in_border`: there `sides` are the stitches along
    each side of the body, those at corners left out, and `corner` is worked at each corner; `edges`
    are what the sides would have with one stitch in each of those inside, None where these are the
    ends of rows.
    `part` is the index of the part of the blanket that it is in; where that is made several times,
    the pass stands for one in each of them. `fabric` says by what its yarn is measured. A pass that
    is `fresh` begins a new strand though its colour goes on. What is sewn has no stitches, but the
    yarn `sewn_m`. A pass is `drawn` where chance decides which colour it has.
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
    edges: tuple[int | None, ...] = ()
    part: int = 0
    fabric: Fabric = BY_SWATCH
    fresh: bool = False
    sewn_m: float = 0.0
    drawn: bool = False

    @property
    def in_body(self) -> bool:
        """Whether it is one of the rows or rounds that the body is made of."""
        return self.work in (Work.ROW, Work.ROUND) and not self.in_border

    @property
    def grows(self) -> bool:
        """Whether it is a round of a body that grows from its centre."""
        return self.work is Work.ROUND and not self.in_border


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The order unrolled: what is worked, in which order, and the size that comes out.

    `gauges` holds the gauge of every stitch, `ch` too, in its yarn and fabric. `parts` are worked
    one after the other, each as often as it says. `chores` counts what there is to do in one
    blanket besides its stitches, by the name of its minutes. `counted` says how the rounds of a
    body, or of its motifs, are counted.
    """

    passes: tuple[Pass, ...]
    stitches: int
    foundation_chain: int
    width_cm: float
    height_cm: float
    border_depth_cm: float
    gauges: Mapping[Made, Gauge]
    section_repeats: tuple[float, ...] = ()
    cautions: tuple[Caution, ...] = ()
    parts: tuple[BlanketPart, ...] = (WHOLE,)
    chores: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}))
    grid: SquaresGrid | None = None
    counted: Rounds | None = None

    def part_of(self, worked: Pass) -> BlanketPart:
        """Return the part that a pass is in."""
        return self.parts[worked.part]

    def times(self, worked: Pass) -> int:
        """Return how many passes of one blanket a pass stands for."""
        return self.parts[worked.part].count

    def copies_of(self, kind: PartKind) -> int:
        """Return how many parts of a kind one blanket has."""
        return sum(part.count for part in self.parts if part.kind is kind)

    def number_of(self, part: int, copy: int) -> int:
        """Return which of all parts of its kind a copy of a part is, from 1."""
        kind = self.parts[part].kind
        return sum(each.count for each in self.parts[:part] if each.kind is kind) + copy + 1

    @property
    def in_rows(self) -> bool:
        """Whether the body is worked in rows, which end at its edges; else it is in rounds."""
        return next((p.work is Work.ROW for p in self.passes if p.in_body), False)

    @property
    def centre(self) -> Counting | None:
        """How a blanket in one piece grows from its centre; None of rows, and of motifs."""
        if self.grid is not None or self.counted is None:
            return None
        return self.counted.counting

    @property
    def area_cm2(self) -> float:
        """The area that comes out, border included: of a round piece less than of a rectangle."""
        box_cm2 = self.width_cm * self.height_cm
        return box_cm2 if self.centre is None else box_cm2 * SHARE_OF_BOX[self.centre]

    @property
    def passes_worked(self) -> int:
        """The passes of one blanket, each as often as it is worked."""
        return sum(self.times(worked) for worked in self.passes)

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
        """Rows, or rounds, of the body by colour, in the order the colours first come.

        A pass of the last rounds that join motifs is a round of each motif of a row of them.
        """
        across = self.grid.columns if self.grid is not None else 1
        counts: dict[str, int] = {}
        for worked in self.passes:
            joins_motifs = worked.work is Work.SEAM and worked.fabric.motif
            if worked.in_body or joins_motifs:
                times = across if joins_motifs else self.times(worked)
                counts[worked.colour] = counts.get(worked.colour, 0) + times
        return counts

    @property
    def rows_by_section(self) -> tuple[int, ...]:
        """Rows of each section of stripes."""
        counts = [0] * len(self.section_repeats)
        for row in self.rows:
            if row.section is not None:
                counts[row.section] += 1
        return tuple(counts)
