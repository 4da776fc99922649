"""How many stitches and chains each round from a centre has, by the way that it grows.

The counts are geometry; how many stitches begin a round and go into its corners is common practice.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.workshop.stitches import TIME_RATIO, YARN_RATIO, Stitch


class Counting(StrEnum):
    """How the rounds grow: in clusters with spaces, stitch by stitch, as a circle, a hexagon."""

    CLUSTERS = "clusters"
    SOLID = "solid"
    CIRCLE = "circle"
    HEXAGON = "hexagon"

    @property
    def goes_by_width(self) -> bool:
        """Whether its width across alone says how large it is: it has no width and length."""
        return self in (Counting.CIRCLE, Counting.HEXAGON)


USUAL_SIDE_CHAINS = 1
"""Chains between the clusters of a side, where none are told."""


def check_choices(
    checks: Checks, counting: Counting, *, first_side: int | None, side_chains: int
) -> None:
    """Check what a maker can choose of rounds, and that it counts for rounds that grow so."""
    checks.number("first_side", first_side, least=2, most=3)
    if first_side is not None and counting is not Counting.SOLID:
        checks.add("first_side", MistakeCode.SOLID_ALONE, choice="counting")
    checks.number("side_chains", side_chains, least=0, most=5)
    if side_chains != USUAL_SIDE_CHAINS and counting is not Counting.CLUSTERS:
        checks.add("side_chains", MistakeCode.CLUSTERS_ALONE, choice="counting")


SHARE_OF_BOX = MappingProxyType(
    {
        Counting.CLUSTERS: 1.0,
        Counting.SOLID: 1.0,
        Counting.CIRCLE: math.pi / 4,
        Counting.HEXAGON: 3 / 4,
    }
)
"""What each way of growing covers of the rectangle about it, which its width and height make."""

CLUSTER = 3
"""Stitches of a cluster."""

CORNER_CHAINS = 2

CORNERS = {Counting.CLUSTERS: 4, Counting.SOLID: 4, Counting.HEXAGON: 6, Counting.CIRCLE: 0}
SQUARES = (Counting.CLUSTERS, Counting.SOLID)
"""What can be joined in columns and rows."""

FLAT_FACTOR = {0: 2 * math.pi, 4: 8.0, 6: 4 * math.sqrt(3)}
"""By how much the outline of a figure of so many corners grows for each unit that a round is high.

So many stitches more than the one inside it a round needs to lie flat, times its height over its
width.
"""

_SOLID_GROWTH = {Stitch.SC: 8, Stitch.HDC: 12, Stitch.DC: 16, Stitch.TR: 24}
_CIRCLE_GROWTH = {Stitch.SC: 6, Stitch.HDC: 8, Stitch.DC: 12, Stitch.TR: 18}
_HEXAGON_GROWTH = {Stitch.SC: 6, Stitch.HDC: 12, Stitch.DC: 12, Stitch.TR: 18}
_FIRST_SIDE = {Stitch.SC: 2}
_USUAL_FIRST_SIDE = 3


@dataclass(frozen=True, slots=True)
class RoundCount:
    """The stitches and the chains of one round."""

    stitches: int
    chains: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Rounds:
    """How rounds are counted: `kind` is the basic stitch, `extra` what makes a rectangle.

    `first_side` are the stitches of each side of round 1 of a solid square, `side_chains` the
    chains between two clusters. `extra` are further stitches, or clusters, along each long side.
    """

    counting: Counting
    kind: Stitch
    first_side: int | None = None
    side_chains: int = USUAL_SIDE_CHAINS
    extra: int = 0

    def round(self, number: int) -> RoundCount:
        """Return the count of one round, from 1."""
        match self.counting:
            case Counting.CLUSTERS:
                spaces = 4 * (number - 1) + 2 * self.extra
                chains = 4 * CORNER_CHAINS + spaces * self.side_chains
                return RoundCount(4 * CLUSTER * number + 2 * CLUSTER * self.extra, chains)
            case Counting.SOLID:
                stitches = self.growth * (number - 1) + 4 * self._first + 2 * self.extra
                return RoundCount(stitches, 0 if self.kind is Stitch.SC else 4 * CORNER_CHAINS)
            case Counting.CIRCLE | Counting.HEXAGON:
                return RoundCount(self.growth * number, 0)

    @property
    def growth(self) -> int:
        """The stitches that each round has more than the one inside it, chains left out."""
        match self.counting:
            case Counting.CLUSTERS:
                return 4 * CLUSTER
            case Counting.SOLID:
                return _SOLID_GROWTH[self.kind]
            case Counting.CIRCLE:
                return _CIRCLE_GROWTH[self.kind]
            case Counting.HEXAGON:
                return _HEXAGON_GROWTH[self.kind]

    @property
    def growth_in_widths(self) -> int:
        """How much longer each round is than the one inside it, a chain as wide as a stitch."""
        spaces = 4 * self.side_chains if self.counting is Counting.CLUSTERS else 0
        return self.growth + spaces

    def flat_growth(self, height_cm: float, width_cm: float) -> float:
        """Return the growth, in widths of a stitch, with which such rounds lie flat."""
        return FLAT_FACTOR[self.corners] * height_cm / width_cm

    def total(self, rounds: int) -> int:
        """Return the stitches of so many rounds, by formula."""
        of_first = self.round(1).stitches
        return rounds * of_first + self.growth * rounds * (rounds - 1) // 2

    def sides(self, rounds: int) -> tuple[int, ...]:
        """Return what a border is worked into along each side after so many rounds.

        Chains between clusters are counted, those of the corners are not. The long sides of a
        rectangle are the second and the fourth.
        """
        if self.counting is Counting.CLUSTERS:
            short = CLUSTER * rounds + (rounds - 1) * self.side_chains
            long = short + self.extra * (CLUSTER + self.side_chains)
        else:
            square = self.round(rounds).stitches - 2 * self.extra
            short = square // max(1, self.corners)
            long = short + self.extra
        return (short, long, short, long) if self.corners == 4 else (short,) * max(1, self.corners)

    @property
    def corners(self) -> int:
        """The corners of its outline."""
        return CORNERS[self.counting]

    def width_cm(self, rounds: int, side_cm: float) -> float:
        """Return the width of a stitch, or a chain, along a short side after so many rounds.

        `side_cm` is the short side of a square, the width across of a circle or a hexagon.
        """
        edge_cm = side_cm * FLAT_FACTOR[self.corners] / 2 / max(1, self.corners)
        return edge_cm / self.sides(rounds)[0]

    def yarn_units(self, number: int) -> float:
        """Return the yarn of one round, against that of a single crochet."""
        return self._weighted(number, YARN_RATIO[self.kind], YARN_RATIO[Stitch.CH])

    def time_units(self, number: int) -> float:
        """Return the time of one round, against that of a chain."""
        return self._weighted(number, TIME_RATIO[self.kind], TIME_RATIO[Stitch.CH])

    def _weighted(self, number: int, stitch: float, chain: float) -> float:
        count = self.round(number)
        return count.stitches * stitch + count.chains * chain

    @property
    def _first(self) -> int:
        return self.first_side or _FIRST_SIDE.get(self.kind, _USUAL_FIRST_SIDE)
