"""A swatch: what was counted and weighed on a washed and dried sample of the fabric."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import date

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.ground.measures import LEAST_CM, LEAST_G
from quoting.core.workshop.stitches import YARN_RATIO, Stitch, TurningChain

READING_STEPS = math.sqrt(12)
"""A reading with display step d has a standard uncertainty of d/√12 (JCGM 100, 4.3.7)."""

LEAST_COUNT = 0.1
"""Of stitches or rows, where a part of one is counted too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A gauge as it is read in the middle: stitches over a width, rows over a height."""

    stitches: float
    width_cm: float
    rows: float
    height_cm: float

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("stitches", self.stitches, above=0, least=LEAST_COUNT, most=10_000)
        checks.number("width", self.width_cm, above=0, least=LEAST_CM, most=1000)
        checks.number("rows", self.rows, above=0, least=LEAST_COUNT, most=10_000)
        checks.number("height", self.height_cm, above=0, least=LEAST_CM, most=1000)
        checks.done()

    @property
    def stitch_width_cm(self) -> float:
        """The width of one stitch."""
        return self.width_cm / self.stitches

    @property
    def row_height_cm(self) -> float:
        """The height of one row."""
        return self.height_cm / self.rows


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """The whole sample on a scale, tails off."""

    stitches: int
    rows: int
    weight_g: float
    scale_step_g: float = 1.0

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("stitches", self.stitches, least=1, most=10_000)
        checks.number("rows", self.rows, least=1, most=10_000)
        checks.number("weight", self.weight_g, above=0, least=LEAST_G, most=10_000)
        checks.number("scale_step", self.scale_step_g, above=0, most=1000)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """A counted run of whole stitches, unravelled and measured."""

    stitches: int
    length_cm: float
    ruler_step_cm: float = 0.5

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("stitches", self.stitches, least=1, most=10_000)
        checks.number("length", self.length_cm, above=0, least=LEAST_CM, most=100_000)
        checks.number("ruler_step", self.ruler_step_cm, above=0, most=100)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Swatch:
    """One sample: whose yarn, which stitch, its gauge, and its yarn by weight or by run."""

    yarn: str
    stitch: str
    gauge: Reading
    piece: Piece | None = None
    run: Run | None = None
    hook_mm: float | None = None
    gauge_before_washing: Reading | None = None
    day: date | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("yarn", self.yarn)
        checks.name("stitch", self.stitch)
        checks.number("hook_mm", self.hook_mm, above=0, most=100)
        if (self.piece is None) == (self.run is None):
            checks.add("piece", MistakeCode.PIECE_OR_RUN)
        checks.done()

    def yarn_per_stitch_m(
        self, *, kind: Stitch, turning: TurningChain, metres_per_gram: float
    ) -> float:
        """Return the metres of yarn in one stitch.

        `kind` is the basic stitch that this one is, or is like; `metres_per_gram` is the
        label's.
        """
        if self.run is not None:
            return self.run.length_cm / 100 / self.run.stitches
        assert self.piece is not None, "a swatch has a piece or a run"  # noqa: S101
        chains = turning.chains_inside(self.piece.stitches, self.piece.rows)
        chain_share = YARN_RATIO[Stitch.CH] / YARN_RATIO[kind]
        stitches = self.piece.stitches * self.piece.rows + chain_share * chains
        return self.piece.weight_g * metres_per_gram / stitches

    @property
    def reading_error(self) -> float:
        """Return the relative standard uncertainty that the scale or the ruler leaves."""
        if self.run is not None:
            return self.run.ruler_step_cm / READING_STEPS / self.run.length_cm
        assert self.piece is not None, "a swatch has a piece or a run"  # noqa: S101
        return self.piece.scale_step_g / READING_STEPS / self.piece.weight_g
