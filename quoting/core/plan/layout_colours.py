"""The layouts of a plan of joined motifs, as they come out: their colours round by round."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from quoting.core.order.joined_squares import JoinMethod
from quoting.core.plan.parts import BlanketPart, PartKind
from quoting.core.plan.passes import Pass, Plan, Work


@dataclass(frozen=True, slots=True, kw_only=True)
class LayoutMade:
    """A layout by its `number`, from 1: `count` motifs whose rounds have these colours.

    `heights_cm` are the heights of the rounds, each the half of what it adds to the side.
    `joined_on` are the last of the rounds, which join all motifs: none of them is a motif's own.
    """

    number: int
    count: int
    colours: tuple[str, ...]
    heights_cm: tuple[float, ...]
    joined_on: int = 0

    @property
    def own_colours(self) -> tuple[str, ...]:
        """The colours of the rounds that each motif has to itself."""
        return self.colours[: len(self.colours) - self.joined_on]

    @property
    def ends_each(self) -> int:
        """The ends that each motif leaves: two of every run of one colour, balls not counted."""
        return 2 * len(list(groupby(self.own_colours)))

    @property
    def banded(self) -> tuple[str, ...]:
        """The colours from the centre outwards, neighbours of one colour once."""
        return tuple(colour for colour, _ in groupby(self.colours))


def layouts_made(plan: Plan) -> tuple[LayoutMade, ...]:
    """Return the layouts of a plan; none where nothing is joined."""
    return tuple(
        _layout(plan, part, [worked for worked in plan.passes if worked.part == number])
        for number, part in enumerate(plan.parts)
        if part.kind is PartKind.MOTIF
    )


def joined_in(plan: Plan) -> str | None:
    """Return the colour that motifs are joined in; None where no join has yarn of its own."""
    return next((worked.colour for worked in plan.passes if worked.work is Work.SEAM), None)


def _layout(plan: Plan, part: BlanketPart, passes: Sequence[Pass]) -> LayoutMade:
    """Return one: of a continuous join the last round, which joins all of them, is added to it."""
    colours = [worked.colour for worked in passes]
    heights_cm = [worked.height_cm for worked in passes]
    grid, join, joined_on = plan.grid, joined_in(plan), 0
    if grid is not None and join is not None and grid.method is JoinMethod.CONTINUOUS:
        joined_on = 1
        colours.append(join)
        heights_cm.append(grid.side_cm / 2 - sum(heights_cm))
    return LayoutMade(
        number=(part.layout or 0) + 1,
        count=part.count,
        colours=tuple(colours),
        heights_cm=tuple(heights_cm),
        joined_on=joined_on,
    )
