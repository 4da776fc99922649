"""A colour's way through one blanket as runs: what one strand works where its ball lasts."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from quoting.core.estimate.strands import Carry, Stretch, Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Visits that follow or carry on from one another, and the whole of what they take.

    `stretches` are those of its visits, and `carries` all its carries, which blankets alike share;
    `carried` counts those up to each visit. `reach_m` is the yarn to the end of each visit,
    carries too, without tails.
    """

    visits: tuple[Visit, ...]
    stretches: tuple[Stretch, ...]
    carries: tuple[Carry, ...]
    carried: tuple[int, ...]
    reach_m: tuple[float, ...]

    @property
    def part(self) -> int:
        """The part of the blanket that it is in."""
        return self.visits[0].part

    @property
    def copies(self) -> int:
        """How often it is worked in one blanket: once in each copy of its part."""
        return self.visits[0].copies

    @property
    def scraps_wait(self) -> bool:
        """Whether what is too short for it is kept for something smaller."""
        return self.visits[0].scraps_wait

    @property
    def whole_m(self) -> float:
        """The yarn of all of it, without tails."""
        return self.reach_m[-1]

    def upto(self, number: int, yarn_m: float) -> int:
        """Return the visit before which so much yarn is used up, begun with at visit `number`."""
        return bisect_right(self.reach_m, self._begun_m(number) + yarn_m, lo=number)

    def between_m(self, number: int, upto: int) -> float:
        """Return the yarn from the start of one visit to the start of a later one."""
        return self.reach_m[upto - 1] - self._begun_m(number)

    def rest_m(self, number: int) -> float:
        """Return the yarn from the start of a visit to the end of the run."""
        return self.between_m(number, len(self.visits))

    def _begun_m(self, number: int) -> float:
        return self.reach_m[number] - self.visits[number].yarn_m


def runs_of(visits: Sequence[Visit]) -> list[Run]:
    """Return a colour's visits to one blanket as runs."""
    begins = [number for number, visit in enumerate(visits) if number == 0 or visit.begins]
    return [_run(tuple(visits[a:b])) for a, b in pairwise([*begins, len(visits)])]


def _run(visits: tuple[Visit, ...]) -> Run:
    carried_m = [0.0, *(visit.carried_m for visit in visits[1:])]
    carries = [
        Carry(before.pass_index, visit.pass_index, visit.starts, visit.carried_m)
        for before, visit in pairwise(visits)
        if visit.carried_m
    ]
    yarns_m = [carry + visit.yarn_m for carry, visit in zip(carried_m, visits, strict=True)]
    return Run(
        visits=visits,
        stretches=tuple(Stretch(visit.pass_index, 0.0, 1.0) for visit in visits),
        carries=tuple(carries),
        carried=tuple(accumulate(int(carry > 0) for carry in carried_m)),
        reach_m=tuple(accumulate(yarns_m)),
    )


def bare_m(runs: Sequence[Run], tail_m: float) -> float:
    """Return the yarn of one blanket's runs with their tails, were no ball ever joined."""
    return math.fsum((run.whole_m + 2 * tail_m) * run.copies for run in runs)
