"""A body in one piece from its centre outwards: how its rounds are counted and striped."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import ClassVar

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.ground.place import Place, at
from quoting.core.order.in_rows import MAX_COUNT, MAX_STRIPES
from quoting.core.workshop.rounds import USUAL_SIDE_CHAINS, Counting, check_choices

MAX_START = 2_000


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundStripe:
    """So many rounds of one colour."""

    colour: str
    rounds: int = 1

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("colour", self.colour)
        checks.number("rounds", self.rounds, least=1, most=MAX_COUNT)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class FromCentre:
    """One piece from the centre: a square or a rectangle, a circle, a hexagon.

    `stripes` go from the centre outwards and repeat to the size, or `repeats` times; `fitted` ones
    are worked once each instead, their rounds in proportion. `rounds` and `starts_on`, the stitches
    or clusters that a rectangle is longer by, are the maker's own counts and win over what the size
    would give; a circle and a hexagon have no long side to start on. `motif` is the one that it is
    reckoned by; without, one of the workshop's that is counted alike, else the swatch of its
    stitch. `turned`: the work is turned after each round.
    """

    counting: Counting
    stripes: tuple[RoundStripe, ...]
    first_side: int | None = None
    side_chains: int = USUAL_SIDE_CHAINS
    rounds: int | None = None
    repeats: int | None = None
    fitted: bool = False
    starts_on: int | None = None
    turned: bool = False
    motif: str | None = None
    also_worked: ClassVar[tuple[str, ...]] = ()

    def __post_init__(self) -> None:
        checks = Checks()
        if not self.stripes:
            checks.add("stripes", MistakeCode.MISSING)
        if len(self.stripes) > MAX_STRIPES:
            checks.add("stripes", MistakeCode.TOO_MANY, read=len(self.stripes), limit=MAX_STRIPES)
        check_choices(
            checks, self.counting, first_side=self.first_side, side_chains=self.side_chains
        )
        checks.number("rounds", self.rounds, least=1, most=MAX_COUNT)
        checks.number("repeats", self.repeats, least=1, most=MAX_COUNT)
        checks.number("starts_on", self.starts_on, least=0, most=MAX_START)
        if self.starts_on is not None and self.counting.goes_by_width:
            checks.add("starts_on", MistakeCode.NO_LONG_SIDE, choice="counting")
        if self.rounds is not None and self.repeats is not None:
            checks.add("repeats", MistakeCode.ROUNDS_AND_REPEATS)
        if self.fitted and self.repeats is not None:
            checks.add("repeats", MistakeCode.FITTED_AND_REPEATS)
        if self.motif is not None:
            checks.name("motif", self.motif)
        checks.done()

    @property
    def goes_by_width(self) -> bool:
        """Whether its width alone is its size."""
        return self.counting.goes_by_width

    @property
    def whole_rounds(self) -> int | None:
        """The rounds that are the maker's own, as a count or as whole repeats of the stripes."""
        if self.repeats is None:
            return self.rounds
        return self.repeats * sum(stripe.rounds for stripe in self.stripes)

    def colours_with_places(self) -> Iterator[tuple[Place, str]]:
        """Yield every colour that is named, with its place in the order file."""
        for number, stripe in enumerate(self.stripes, 1):
            yield at("blanket", "centre", "stripes", number, "colour"), stripe.colour

    def stitches_with_places(self) -> Iterator[tuple[Place, str]]:
        """Yield nothing: it is worked in the blanket's own stitch."""
        return iter(())

    def motifs_with_places(self) -> Iterator[tuple[Place, str]]:
        """Yield the motif that is named, with its place."""
        if self.motif is not None:
            yield at("blanket", "centre", "motif"), self.motif

    @property
    def main_colours(self) -> tuple[str, ...]:
        """The colours that it is striped in, each once: of them one could be done without."""
        return tuple(dict.fromkeys(stripe.colour for stripe in self.stripes))

    def recoloured(self, colour: str, other: str) -> FromCentre:
        """Return it with one colour's stripes worked in another."""
        stripes = tuple(
            replace(stripe, colour=other) if stripe.colour == colour else stripe
            for stripe in self.stripes
        )
        return replace(self, stripes=stripes)

    def resized(self) -> FromCentre:
        """Return it without the counts that belong to one size."""
        return replace(self, rounds=None, repeats=None, starts_on=None)
