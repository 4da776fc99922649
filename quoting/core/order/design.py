"""The blanket as the buyer asks for it: size, stitch, yarn, body, border."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType
from typing import Protocol

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.order.bodies import Body

Kind = tuple[str, str]
"""A yarn and a stitch that is worked in it."""

MAX_SIDE_CM = 1000.0
MAX_ROUNDS = 100


class Coloured(Protocol):
    """What is worked in one colour, perhaps in a stitch of its own."""

    @property
    def colour(self) -> str:
        """Its colour in the design."""

    @property
    def stitch(self) -> str | None:
        """Its stitch; None for the blanket's own."""


class Corner(StrEnum):
    """What a border's first round does at each corner."""

    CHAIN = "chain"
    ONE_EXTRA = "one extra"
    THREE_IN_ONE = "three in one"


@dataclass(frozen=True, slots=True, kw_only=True)
class BorderBand:
    """Border rounds of one stitch and colour.

    `row_end_ratio` is the maker's own count of stitches per row end, for the first round only.
    """

    stitch: str
    colour: str
    rounds: int = 1
    row_end_ratio: float | None = None
    corner: Corner = Corner.CHAIN

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("stitch", self.stitch)
        checks.name("colour", self.colour)
        checks.number("rounds", self.rounds, least=1, most=MAX_ROUNDS)
        checks.number("row_end_ratio", self.row_end_ratio, above=0, most=100)
        checks.done()


class EndsBecome(StrEnum):
    """What becomes of the ends: woven in, worked over, enclosed in the border, left as fringe."""

    WOVEN_IN = "woven in"
    WORKED_OVER = "worked over"
    ENCLOSED = "enclosed"
    FRINGE = "fringe"


AT_THE_EDGE = (EndsBecome.ENCLOSED, EndsBecome.FRINGE)
"""What can only become of ends that hang at an edge of the blanket."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourSource:
    """Where a colour of the design comes from: a yarn of the workshop and its colour."""

    yarn: str
    colour: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Design:
    """A blanket: its finished size with the border, and what every one has; `body` is the rest."""

    width_cm: float
    height_cm: float
    stitch: str
    yarn: str
    body: Body
    border: tuple[BorderBand, ...] = ()
    colours: Mapping[str, ColourSource] = field(default_factory=lambda: MappingProxyType({}))
    mix_lots: bool = False
    ends: EndsBecome = EndsBecome.WOVEN_IN

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("width", self.width_cm, above=0, most=MAX_SIDE_CM)
        checks.number("height", self.height_cm, above=0, most=MAX_SIDE_CM)
        checks.name("stitch", self.stitch)
        checks.name("yarn", self.yarn)
        if self.ends is EndsBecome.ENCLOSED and not self.border:
            checks.add("ends", MistakeCode.NO_BORDER_TO_ENCLOSE)
        checks.done()

    def source_of(self, colour: str) -> ColourSource:
        """Return the yarn and colour that a colour of the design comes from."""
        return self.colours.get(colour) or ColourSource(yarn=self.yarn, colour=colour)

    @property
    def kind(self) -> Kind:
        """The blanket's own yarn and stitch."""
        return self.yarn, self.stitch

    def kind_of(self, part: Coloured) -> Kind:
        """Return the yarn and the stitch that a stripe or a border is worked in."""
        return self.source_of(part.colour).yarn, part.stitch or self.stitch


def first_names(design: Design, names: Iterable[str]) -> dict[str, str]:
    """Return each name of a colour with the first of those that come from one yarn's colour."""
    first: dict[ColourSource, str] = {}
    return {name: first.setdefault(design.source_of(name), name) for name in dict.fromkeys(names)}
