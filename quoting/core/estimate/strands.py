"""The strands of the work: where each starts, is carried, ends, and why.

A strand is one unbroken length of yarn: a tail, the stitches, a tail. Each has two ends.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import accumulate
from typing import NamedTuple

from quoting.core.plan.passes import Edge, Pass, Plan, Work
from quoting.core.workshop.habits import Habits

CARRY_EASE = 1.1
"""A carry takes this much yarn for each length that it climbs."""


class Why(StrEnum):
    """Why a strand ended."""

    CUT = "cut"
    RAN_OUT = "ran out"
    FINISHED = "finished"


class Point(NamedTuple):
    """Where in the work: the blanket and its pass, both from 0, and the edge.

    `part` is the part of the blanket that the pass is in, and `copy` which of its copies, from 0.
    """

    blanket: int
    pass_index: int
    edge: Edge
    part: int = 0
    copy: int = 0

    @property
    def when(self) -> tuple[int, int, int, int]:
        """What puts places in the order that they are worked."""
        return self.blanket, self.part, self.copy, self.pass_index


class Place(NamedTuple):
    """Which blanket, which of its parts, and which copy of that, all from 0."""

    blanket: int
    part: int
    copy: int

    def point(self, pass_index: int, edge: Edge) -> Point:
        """Return where a pass of it is at one edge."""
        return Point(self.blanket, pass_index, edge, self.part, self.copy)


@dataclass(frozen=True, slots=True)
class Carry:
    """A strand carried up an edge, over the passes between the one it left and the one it takes."""

    from_pass: int
    to_pass: int
    edge: Edge
    yarn_m: float


@dataclass(frozen=True, slots=True)
class Stretch:
    """The part of one pass that a strand works, from one share of its yarn to another."""

    pass_index: int
    begins: float
    ends: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Strand:
    """One strand: its colour, the ball it comes from, and its way through the work."""

    colour: str
    ball: int
    starts: Point
    ends: Point
    why: Why
    yarn_m: float
    stretches: tuple[Stretch, ...]
    carries: tuple[Carry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Visit:
    """A colour's turn at one pass of a blanket: the yarn it takes, and how the yarn gets there.

    `follows` says that the pass before it was this colour's too; `carry_m` is the yarn of a
    carry, where one is possible. With neither, a new strand starts. `bound_m` is the yarn of the
    pass after it, where both are one strand: the chain and row 1. It comes once in each of the
    `copies` of its part of the blanket. `scraps_wait` says that what is left of a ball, and too
    short for what is worked next, is kept for something smaller.
    """

    pass_index: int
    starts: Edge
    ends: Edge
    yarn_m: float
    follows: bool
    carry_m: float | None
    bound_m: float = 0.0
    part: int = 0
    copies: int = 1
    scraps_wait: bool = False

    @property
    def carried_m(self) -> float:
        """The yarn of the carry by which it is reached."""
        return 0.0 if self.follows else self.carry_m or 0.0

    @property
    def begins(self) -> bool:
        """Whether a new strand starts, whatever is in hand."""
        return not self.follows and self.carry_m is None

    def with_more(self, share: float) -> Visit:
        """Return the same visit with a share more yarn in every stitch."""
        more = 1 + share
        return replace(self, yarn_m=self.yarn_m * more, bound_m=self.bound_m * more)


def visits_by_colour(plan: Plan, habits: Habits, yarn_m: Sequence[float]) -> dict[str, list[Visit]]:
    """Return each colour's visits to the passes of one blanket, in the order worked.

    `yarn_m` is the yarn of each pass.
    """
    climbed = [0.0, *accumulate(worked.height_cm for worked in plan.passes)]
    visits: dict[str, list[Visit]] = {}
    for index, worked in enumerate(plan.passes):
        line = visits.setdefault(worked.colour, [])
        here = _Here(index, worked, plan)
        line.append(_visit(here, line[-1] if line else None, yarn_m, climbed, habits))
    return visits


@dataclass(frozen=True, slots=True)
class _Here:
    index: int
    worked: Pass
    plan: Plan


def _visit(
    here: _Here,
    before: Visit | None,
    yarn_m: Sequence[float],
    climbed: Sequence[float],
    habits: Habits,
) -> Visit:
    index, worked, plan = here.index, here.worked, here.plan
    goes_on = before is not None and before.part == worked.part and not worked.fresh
    carry_m = None
    if before is not None and goes_on and before.ends is worked.starts:
        rows = index - before.pass_index - 1
        height_cm = climbed[index] - climbed[before.pass_index + 1]
        grows = worked.grows or plan.passes[before.pass_index].grows
        if habits.carries(rows, height_cm) and (habits.carry_in_rounds or not grows):
            carry_m = height_cm * CARRY_EASE / 100
    return Visit(
        pass_index=index,
        starts=worked.starts,
        ends=worked.ends,
        yarn_m=yarn_m[index],
        follows=before is not None and goes_on and before.pass_index == index - 1,
        carry_m=carry_m,
        bound_m=yarn_m[index + 1] if worked.work is Work.CHAIN else 0.0,
        part=worked.part,
        copies=plan.times(worked),
        scraps_wait=plan.grid is not None or plan.counted is not None,
    )


def ends_needleful(strand: Strand, plan: Plan) -> bool:
    """Return whether a strand ends as a needleful that is sewn to its end, before its seam is."""
    return strand.why is Why.CUT and plan.passes[strand.ends.pass_index].fresh


def most_waiting(strands: Sequence[Strand]) -> int:
    """Return the most yarns that wait at one edge at the same time, to be carried up."""
    places: dict[tuple[int, int, int, Edge], list[tuple[int, int]]] = {}
    for strand in strands:
        for carry in strand.carries:
            begun = strand.starts
            at = begun.blanket, begun.part, begun.copy, carry.edge
            moves = places.setdefault(at, [])
            moves += [(carry.from_pass, 1), (carry.to_pass, -1)]
    return max(
        (max(accumulate(step for _, step in sorted(moves))) for moves in places.values()), default=0
    )
