"""A body of motifs that are joined: their colours round by round, how many, and how joined."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import ClassVar

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.ground.place import Place, at
from quoting.core.workshop.motifs import MOST_ROUNDS
from quoting.core.workshop.stitches import Stitch

MOST_LAYOUTS = 60
MOST_ACROSS = 200
MOST_SQUARES = 5_000


class JoinMethod(StrEnum):
    """How motifs are joined to one another."""

    AS_YOU_GO = "as you go"
    CONTINUOUS = "continuous"
    SLIP_STITCH = "slip stitch"
    SINGLE_CROCHET = "single crochet"
    WHIPSTITCH = "whipstitch"
    MATTRESS = "mattress"
    FLAT_BRAID = "flat braid"


CROCHETED = {
    JoinMethod.SLIP_STITCH: Stitch.SLIP,
    JoinMethod.SINGLE_CROCHET: Stitch.SC,
    JoinMethod.FLAT_BRAID: Stitch.SC,
}
"""The stitch of the joins that have stitches of their own."""

SEWN = (JoinMethod.WHIPSTITCH, JoinMethod.MATTRESS)

ADDED_CM = {JoinMethod.SINGLE_CROCHET: 0.3, JoinMethod.FLAT_BRAID: 1.2}
"""What a join adds between two motifs, unless the maker says: common practice, no source."""

NEEDLEFUL_CM = 150.0
"""The yarn that is sewn with at a time: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MotifJoin:
    """How motifs are joined, and in which colour, where the join has yarn of its own.

    `added_cm` is what it adds between two of them, `needleful_cm` the yarn that is sewn with at
    a time, where they are sewn; None is what is usual.
    """

    method: JoinMethod = JoinMethod.AS_YOU_GO
    colour: str | None = None
    added_cm: float | None = None
    needleful_cm: float = NEEDLEFUL_CM

    def __post_init__(self) -> None:
        checks = Checks()
        if self.colour is not None:
            checks.name("colour", self.colour)
        elif self.method is not JoinMethod.AS_YOU_GO:
            checks.add("colour", MistakeCode.MISSING)
        checks.number("added", self.added_cm, least=0, most=20)
        checks.number("needleful", self.needleful_cm, above=0, least=10, most=2000)
        if self.needleful_cm != NEEDLEFUL_CM and self.method not in SEWN:
            checks.add("needleful", MistakeCode.SEWN_ALONE, choice="method")
        checks.done()

    @property
    def gap_cm(self) -> float:
        """What it adds between two motifs."""
        return ADDED_CM.get(self.method, 0.0) if self.added_cm is None else self.added_cm


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """The colours of a motif by round, of a `share` of all motifs or a `count` of them."""

    colours: tuple[str, ...]
    share: float | None = None
    count: int | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        _check_colours(checks, "colours", self.colours)
        if self.share is not None and self.count is not None:
            checks.add("count", MistakeCode.SHARE_AND_COUNT)
        checks.number("share", self.share, above=0, most=1_000_000)
        checks.number("count", self.count, least=1, most=MOST_SQUARES)
        checks.done()

    @property
    def weight(self) -> float:
        """Its share of the motifs; one, where neither share nor count is given."""
        return 1.0 if self.share is None else self.share


@dataclass(frozen=True, slots=True, kw_only=True)
class Pool:
    """Inner rounds that are mixed evenly from some colours; `outer` are the last rounds of all."""

    colours: tuple[str, ...]
    outer: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        checks = Checks()
        _check_colours(checks, "colours", self.colours)
        if self.outer:
            _check_colours(checks, "outer", self.outer)
        checks.done()


def _check_colours(checks: Checks, key: str, colours: tuple[str, ...]) -> None:
    if not colours:
        checks.add(key, MistakeCode.MISSING)
    if len(colours) > MOST_ROUNDS:
        checks.add(key, MistakeCode.TOO_MANY, read=len(colours), limit=MOST_ROUNDS)
    for number, colour in enumerate(colours, 1):
        checks.name(at(key, number), colour)


@dataclass(frozen=True, slots=True, kw_only=True)
class JoinedSquares:
    """Motifs of one kind, joined in columns and rows.

    Their colours are those of `layouts`, or of a `pool`. `rounds` are those of each motif, where
    they are not those that it was measured with. `columns` and `rows` are the maker's own counts
    and win over what the size would give. `blocked` says that each motif is blocked.
    """

    motif: str
    layouts: tuple[Layout, ...] = ()
    pool: Pool | None = None
    join: MotifJoin = MotifJoin()
    rounds: int | None = None
    columns: int | None = None
    rows: int | None = None
    blocked: bool = False
    goes_by_width: ClassVar[bool] = False

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("motif", self.motif)
        checks.number("rounds", self.rounds, least=1, most=MOST_ROUNDS)
        checks.number("columns", self.columns, least=1, most=MOST_ACROSS)
        checks.number("rows", self.rows, least=1, most=MOST_ACROSS)
        if not self.layouts and self.pool is None:
            checks.add("layouts", MistakeCode.MISSING)
        if self.layouts and self.pool is not None:
            checks.add("pool", MistakeCode.LAYOUTS_OR_POOL)
        if len(self.layouts) > MOST_LAYOUTS:
            checks.add("layouts", MistakeCode.TOO_MANY, read=len(self.layouts), limit=MOST_LAYOUTS)
        checks.done()

    @property
    def also_worked(self) -> tuple[str, ...]:
        """The stitches that it is worked in besides the motif's, which nobody names."""
        stitch = CROCHETED.get(self.join.method)
        return () if stitch is None else (stitch.value,)

    def colours_with_places(self) -> Iterator[tuple[Place, str]]:
        """Yield every colour that is named, with its place in the order file."""
        table = at("blanket", "squares")
        for number, layout in enumerate(self.layouts, 1):
            for line, colour in enumerate(layout.colours, 1):
                yield table / at("layouts", number, "colours", line), colour
        if self.pool is not None:
            for key, colours in (("colours", self.pool.colours), ("outer", self.pool.outer)):
                for line, colour in enumerate(colours, 1):
                    yield table / at("pool", key, line), colour
        if self.join.colour is not None:
            yield table / at("join", "colour"), self.join.colour

    def stitches_with_places(self) -> Iterator[tuple[Place, str]]:
        """Yield nothing: it is worked in the stitch of its motif."""
        return iter(())

    def motifs_with_places(self) -> Iterator[tuple[Place, str]]:
        """Yield its motif, with its place."""
        yield at("blanket", "squares", "motif"), self.motif

    @property
    def main_colours(self) -> tuple[str, ...]:
        """The colours of the motifs, each once: of them one could be done without."""
        pool = (*self.pool.colours, *self.pool.outer) if self.pool else ()
        of_layouts = (colour for layout in self.layouts for colour in layout.colours)
        return tuple(dict.fromkeys((*of_layouts, *pool)))

    def recoloured(self, colour: str, other: str) -> JoinedSquares:
        """Return it with all that is of one colour worked in another."""

        def dyed(colours: tuple[str, ...]) -> tuple[str, ...]:
            return tuple(other if each == colour else each for each in colours)

        pool, join = self.pool, self.join
        if pool is not None:
            kept = tuple(dict.fromkeys(dyed(pool.colours)))
            pool = replace(pool, colours=kept, outer=dyed(pool.outer))
        if join.colour == colour:
            join = replace(join, colour=other)
        layouts = tuple(replace(each, colours=dyed(each.colours)) for each in self.layouts)
        return replace(self, layouts=layouts, pool=pool, join=join)

    def resized(self) -> JoinedSquares:
        """Return it without the counts that belong to one size; counts become shares."""
        layouts = self.layouts
        if layouts and all(layout.count is not None for layout in layouts):
            layouts = tuple(
                replace(layout, share=float(layout.count or 0), count=None) for layout in layouts
            )
        return replace(self, columns=None, rows=None, layouts=layouts)
