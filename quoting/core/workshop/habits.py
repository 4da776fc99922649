"""How the maker works: carrying, tails, joins, and how much yarn to have in reserve."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.ground.sameness import NEAR
from quoting.core.workshop.stitches import Stitch

CONFIDENCE = 0.95
"""How sure the yarn is to be enough, unless the maker says otherwise."""


class Join(StrEnum):
    """Where a new ball may be joined."""

    ANYWHERE = "anywhere"
    AT_AN_EDGE = "at an edge"


@dataclass(frozen=True, slots=True, kw_only=True)
class Habits:
    """How the maker works: carrying, tails, joins, and how much yarn to have in reserve.

    Either `confidence` (one-sided, that the yarn is enough) or a plain `allowance`, beside which
    it stays what it usually is. Left-handed work is the mirror image of right-handed work. Between
    rounds of a body yarn is carried only by makers who do so: it shows. An end that is left as
    fringe has a tail of `fringe_cm`.
    """

    carry_rows: int = 4
    carry_height_cm: float = 5.0
    tail_cm: float = 15.0
    join: Join = Join.ANYWHERE
    confidence: float = CONFIDENCE
    allowance: float | None = None
    tension: float = 0.05
    left_handed: bool = False
    carry_in_rounds: bool = False
    fringe_cm: float = 25.0
    counts_turning_chain: Mapping[Stitch, bool] = field(
        default_factory=lambda: MappingProxyType({})
    )

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("carry_rows", self.carry_rows, least=0, most=1000)
        checks.number("carry_height", self.carry_height_cm, least=0, most=1000)
        checks.number("tail", self.tail_cm, above=0, most=200)
        checks.number("fringe", self.fringe_cm, above=0, most=200)
        checks.number("confidence", self.confidence, least=0.5, most=0.9999)
        checks.number("allowance", self.allowance, least=0, most=10)
        checks.number("tension", self.tension, least=0, most=1)
        if self.allowance is not None and self.confidence != CONFIDENCE:
            checks.add("allowance", MistakeCode.CONFIDENCE_OR_ALLOWANCE)
        checks.done()

    def carries(self, rows: int, height_cm: float) -> bool:
        """Return whether yarn is carried up over so many rows, which are so high."""
        return 0 < rows <= self.carry_rows and height_cm <= self.carry_height_cm + NEAR

    def rows_carried(self, row_cm: float) -> int:
        """Return the most rows of one height that yarn is carried up over."""
        return min(self.carry_rows, int((self.carry_height_cm + NEAR) / row_cm))

    @property
    def tail_m(self) -> float:
        """One tail, in metres."""
        return self.tail_cm / 100
