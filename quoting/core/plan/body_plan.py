"""What a construction answers: the body pass by pass, and all that a plan needs besides."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from quoting.core.ground.cautions import Caution
from quoting.core.order.design import Design, Kind
from quoting.core.plan.border import Rim
from quoting.core.plan.gauge import Gauge, Made
from quoting.core.plan.parts import WHOLE, BlanketPart
from quoting.core.plan.passes import Edge, Pass
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.core.workshop.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """What a body is planned for.

    `gauges` are those that sizes follow; `border_cm` is the depth of the border on one side.
    """

    design: Design
    workshop: Workshop
    gauges: Mapping[Kind, Gauge]
    border_cm: float

    @property
    def width_cm(self) -> float:
        """The width that is asked of the body."""
        return self.design.width_cm - 2 * self.border_cm

    @property
    def height_cm(self) -> float:
        """The height that is asked of the body."""
        return self.design.height_cm - 2 * self.border_cm


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyPlan:
    """A body unrolled: its passes, the size that they come to, where they end.

    `stitches` are those of a row, or of the last round; `rim` is what a border is worked along.
    `section_repeats` is of bodies in sections only. Of the cautions, those of the counts are told
    before the border's, those of the size after them. Where the border is a part of its own,
    `border_apart`; it makes the piece `border_tall` times as much taller as it makes it wider.
    `gauges`, `parts`, `chores` and `grid` go into the plan as they are.
    """

    passes: tuple[Pass, ...]
    stitches: int
    width_cm: float
    height_cm: float
    rim: Rim
    ends: Edge
    foundation_chain: int = 0
    section_repeats: tuple[float, ...] = ()
    count_cautions: tuple[Caution, ...] = ()
    size_cautions: tuple[Caution, ...] = ()
    gauges: Mapping[Made, Gauge] = field(default_factory=lambda: MappingProxyType({}))
    parts: tuple[BlanketPart, ...] = (WHOLE,)
    border_apart: bool = False
    border_tall: float = 1.0
    chores: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}))
    grid: SquaresGrid | None = None
