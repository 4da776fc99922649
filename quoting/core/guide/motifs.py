"""The parts that are made several times: the motifs of each layout, the seams, and their ends."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby

from quoting.core.estimate.estimate import Estimate
from quoting.core.estimate.runs import runs_of
from quoting.core.estimate.strands import Strand, Why
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Pass, Plan


@dataclass(frozen=True, slots=True, kw_only=True)
class PartEnds:
    """The ends of each of `count` parts alike, by colour; `part` is their index in the plan."""

    part: int
    count: int
    by_colour: Mapping[str, int]

    @property
    def each(self) -> int:
        """The ends of one of them."""
        return sum(self.by_colour.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class MotifsToMake:
    """So many motifs of one layout, from 0: the `rounds` of each, and the yarn of one with tails.

    `bands` are neighbouring rounds of one colour.
    """

    layout: int
    count: int
    rounds: tuple[Pass, ...]
    bands: tuple[tuple[Pass, ...], ...]
    yarn_m: Mapping[str, float]


class Between(StrEnum):
    """What a seam lies between: two columns of motifs, or two rows."""

    COLUMNS = "columns"
    ROWS = "rows"


@dataclass(frozen=True, slots=True, kw_only=True)
class SeamLines:
    """So many seams alike: `first` is their number among all, from 1, `edges` what each joins.

    `works` are the passes of one: one that is crocheted, or a needleful each.
    """

    part: int
    first: int
    count: int
    between: Between
    edges: int
    works: tuple[Pass, ...]


def motifs_to_make(plan: Plan, estimate: Estimate) -> Iterator[MotifsToMake]:
    """Yield the motifs of each layout, in the order that they are made."""
    for number, part in enumerate(plan.parts):
        if part.kind is PartKind.MOTIF:
            rounds = _works(plan, number)
            bands = groupby(rounds, key=lambda worked: worked.colour)
            yield MotifsToMake(
                layout=part.layout or 0,
                count=part.count,
                rounds=rounds,
                bands=tuple(tuple(band) for _, band in bands),
                yarn_m=dict(_yarn_m(number, estimate)),
            )


def seam_lines(plan: Plan) -> Iterator[SeamLines]:
    """Yield the seams that are worked line by line: those between columns, then those of rows."""
    grid = plan.grid
    for number, part in enumerate(plan.parts):
        if grid is None or part.kind is not PartKind.SEAM or not part.at_once:
            continue
        first = plan.number_of(number, 0)
        between = Between.COLUMNS if first == 1 and grid.columns > 1 else Between.ROWS
        yield SeamLines(
            part=number,
            first=first,
            count=part.count,
            between=between,
            edges=grid.rows if between is Between.COLUMNS else grid.columns,
            works=_works(plan, number),
        )


def part_ends(plan: Plan, estimate: Estimate) -> Iterator[PartEnds]:
    """Yield the ends of the parts of one blanket, were no ball ever used up: two a strand."""
    for number, part in enumerate(plan.parts):
        ends: dict[str, int] = {}
        for colour in estimate.colours:
            runs = [run for run in runs_of(colour.visits) if run.part == number]
            if runs:
                ends[colour.colour] = 2 * len(runs)
        yield PartEnds(part=number, count=part.count, by_colour=ends)


def ends_of_joins(strands: tuple[Strand, ...]) -> dict[str, int]:
    """Return the ends that joining balls leaves in the first blanket, two at each, by colour."""
    joined = (s.colour for s in strands if s.why is Why.RAN_OUT and s.starts.blanket == 0)
    return {colour: 2 * count for colour, count in Counter(joined).items()}


def _works(plan: Plan, part: int) -> tuple[Pass, ...]:
    return tuple(worked for worked in plan.passes if worked.part == part)


def _yarn_m(part: int, estimate: Estimate) -> Iterator[tuple[str, float]]:
    """Yield the yarn of one copy of a part, colour by colour."""
    for colour in estimate.colours:
        runs = [run for run in runs_of(colour.visits) if run.part == part]
        if runs:
            yield colour.colour, math.fsum(run.whole_m + 2 * colour.tail_m for run in runs)
