"""A colour's way through one blanket as runs: what one strand works where its ball lasts."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from quoting.core.strands import Carry, Stretch, Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Visits that follow or carry on from one another, and the whole of what they take.

    `stretches`, `carries` and `yarn_m`, without tails, are those of a strand that works them all:
    blankets alike share them.
    """

    visits: tuple[Visit, ...]
    stretches: tuple[Stretch, ...]
    carries: tuple[Carry, ...]
    yarn_m: float


def runs_of(visits: Sequence[Visit]) -> list[Run]:
    """Return a colour's visits to one blanket as runs."""
    begins = [number for number, visit in enumerate(visits) if number == 0 or visit.begins]
    return [_run(tuple(visits[a:b])) for a, b in pairwise([*begins, len(visits)])]


def _run(visits: tuple[Visit, ...]) -> Run:
    carries = tuple(_carries(visits))
    return Run(
        visits=visits,
        stretches=tuple(Stretch(visit.pass_index, 0.0, 1.0) for visit in visits),
        carries=carries,
        yarn_m=math.fsum([v.yarn_m for v in visits] + [carry.yarn_m for carry in carries]),
    )


def _carries(visits: Sequence[Visit]) -> Iterator[Carry]:
    for before, visit in pairwise(visits):
        if visit.carried_m:
            yield carry_to(visit, before.pass_index)


def carry_to(visit: Visit, left: int) -> Carry:
    """Return the carry that brings a strand to a visit from the pass where it was left."""
    return Carry(left, visit.pass_index, visit.starts, visit.carried_m)
