"""A motif: a square, or another small piece from the centre, that was made, weighed and timed."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import date

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.ground.measures import LEAST_CM, LEAST_G, LEAST_YARN_M
from quoting.core.ground.place import at
from quoting.core.workshop.rounds import USUAL_SIDE_CHAINS, Counting, Rounds, check_choices
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import READING_STEPS
from quoting.core.workshop.timings import LEAST_MINUTES, TimedStitch

MOST_ROUNDS = 100
MOST_MOTIFS = 10_000
RULER_STEP_CM = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class WeighedMotifs:
    """So many alike on a scale together, tails off: five or more weigh them well enough."""

    motifs: int
    weight_g: float
    scale_step_g: float = 1.0

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("motifs", self.motifs, least=1, most=MOST_MOTIFS)
        checks.number("weight", self.weight_g, above=0, least=LEAST_G, most=100_000)
        checks.number("scale_step", self.scale_step_g, above=0, most=1000)
        checks.done()

    @property
    def reading_error(self) -> float:
        """The relative standard uncertainty that the scale leaves (JCGM 100, 4.3.7)."""
        return self.scale_step_g / READING_STEPS / self.weight_g


@dataclass(frozen=True, slots=True, kw_only=True)
class EarlierSide:
    """The side of the same motif after one of its earlier rounds."""

    rounds: int
    side_cm: float

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("rounds", self.rounds, least=1, most=MOST_ROUNDS)
        checks.number("side", self.side_cm, above=0, least=LEAST_CM, most=1000)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class MotifTiming:
    """So many motifs in so many minutes, from the first loop to fastening off; ends apart."""

    motifs: int
    minutes: float
    hands_on: bool = False
    day: date | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("motifs", self.motifs, least=1, most=MOST_MOTIFS)
        checks.number("minutes", self.minutes, above=0, least=LEAST_MINUTES, most=100_000)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Motif:
    """One motif of the maker's, washed and dried: its side, its yarn, its time.

    The side is measured on one, or as half of the width of two by two that were joined
    (`two_joined_cm`). Its yarn is weighed, or unravelled round by round (`rounds_m`), or both.
    """

    name: str
    yarn: str
    counting: Counting
    rounds: int
    stitch: str = Stitch.DC.value
    first_side: int | None = None
    side_chains: int = USUAL_SIDE_CHAINS
    one_side_cm: float | None = None
    two_joined_cm: float | None = None
    earlier: EarlierSide | None = None
    weighed: WeighedMotifs | None = None
    rounds_m: tuple[float, ...] = ()
    timings: tuple[MotifTiming, ...] = ()
    hook_mm: float | None = None
    day: date | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        for key in ("name", "yarn", "stitch"):
            checks.name(key, getattr(self, key))
        checks.number("rounds", self.rounds, least=1, most=MOST_ROUNDS)
        check_choices(
            checks, self.counting, first_side=self.first_side, side_chains=self.side_chains
        )
        checks.number("side", self.one_side_cm, above=0, least=LEAST_CM, most=1000)
        checks.number("two_joined", self.two_joined_cm, above=0, least=LEAST_CM, most=2000)
        checks.number("hook_mm", self.hook_mm, above=0, most=100)
        if (self.one_side_cm is None) == (self.two_joined_cm is None):
            checks.add("side", MistakeCode.SIDE_OR_TWO_JOINED)
        self._check_yarn(checks)
        self._check_earlier(checks)
        checks.done()

    def _check_earlier(self, checks: Checks) -> None:
        """Check that an earlier side leaves its first round some size, and lets it grow."""
        earlier = self.earlier
        if earlier is None or self.rounds < 1:
            return
        if earlier.rounds >= self.rounds:
            checks.add(
                at("earlier", "rounds"),
                MistakeCode.NOT_EARLIER,
                read=earlier.rounds,
                limit=self.rounds,
            )
            return
        growth_cm = self.growth_cm or 0.0
        first_cm = earlier.side_cm - growth_cm * (earlier.rounds - 1)
        if self.side_cm > 0 and (growth_cm <= 0 or first_cm <= 0):
            checks.add(
                at("earlier", "side"),
                MistakeCode.SIDES_DO_NOT_FIT,
                read=earlier.rounds,
                wanted=self.rounds,
            )

    def _check_yarn(self, checks: Checks) -> None:
        if self.weighed is None and not self.rounds_m:
            checks.add("weighed", MistakeCode.WEIGHED_OR_UNRAVELLED)
        if self.rounds_m and len(self.rounds_m) != self.rounds:
            checks.add(
                "metres_by_round",
                MistakeCode.NOT_ONE_A_ROUND,
                read=len(self.rounds_m),
                wanted=self.rounds,
            )
        for number, metres in enumerate(self.rounds_m, 1):
            place = at("metres_by_round", number)
            checks.number(place, metres, above=0, least=LEAST_YARN_M, most=100_000)

    @property
    def side_cm(self) -> float:
        """The side of one."""
        return self.one_side_cm or (self.two_joined_cm or 0.0) / 2

    @property
    def growth_cm(self) -> float | None:
        """How much wider each round makes it, by its side after an earlier round; else None."""
        if self.earlier is None:
            return None
        return (self.side_cm - self.earlier.side_cm) / (self.rounds - self.earlier.rounds)

    @property
    def timed(self) -> TimedStitch:
        """What its timings are of: a motif has a name that no stitch has."""
        return TimedStitch(stitch=self.name, yarn=self.yarn)

    def counted(self, kind: Stitch) -> Rounds:
        """Return how its rounds are counted, `kind` being the basic stitch of its stitch."""
        return Rounds(
            counting=self.counting,
            kind=kind,
            first_side=self.first_side,
            side_chains=self.side_chains,
        )

    def metres(self, metres_per_gram: float) -> float:
        """Return the yarn of one: as it was weighed, else as it was unravelled."""
        if self.weighed is None:
            return sum(self.rounds_m)
        return self.weighed.weight_g * metres_per_gram / self.weighed.motifs

    @property
    def reading_error(self) -> float:
        """The relative standard uncertainty that the scale, or else the ruler, leaves of one."""
        if self.weighed is not None:
            return self.weighed.reading_error
        ruler_m = RULER_STEP_CM / 100 / READING_STEPS * math.sqrt(len(self.rounds_m))
        return ruler_m / sum(self.rounds_m)
