"""What is still to be worked in a colour, and how far the balls in hand last."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from quoting.core.estimate.ball_walk import ColourWalk, walk_colour
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.colour_work import ColourWork
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.skeins import SkeinChoice
from quoting.core.estimate.strands import Strand, Visit
from quoting.core.ground.sameness import HAIR
from quoting.core.making.made_rows import MadeRows, PassPlace
from quoting.core.workshop.yarns import Yarn

MISSING = -1
"""The number of the ball that a walk works from when it has no other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnToCome:
    """The passes of a colour that are still to be worked, all blankets in one line.

    Their indexes count on from one to the next; `rows` are those that end a row. If the first of
    them goes on with a strand in hand, `tails_m` are its tails, which are there already.
    """

    colour: ColourEstimate
    visits: tuple[Visit, ...]
    rows: tuple[int, ...]
    tails_m: float

    def walk(self, balls_m: Sequence[float], more: float) -> ColourWalk:
        """Work all of it from these balls, with a share more yarn in every stitch.

        Where they are used up it goes on from one without end.
        """
        first_m = [balls_m[0] + self.tails_m] if balls_m else []
        return walk_colour(
            self.colour.colour,
            [visit.with_more(more) for visit in self.visits],
            Supply(balls_m=[*first_m, *balls_m[1:]], full_m=self.colour.walk.full_m),
            tail_m=self.colour.tail_m,
            join=self.colour.habits.join,
        )

    def rows_lasting(self, walk: ColourWalk) -> int:
        """Return how many whole rows the balls of a walk last for."""
        short = _first_missing(walk.strands)
        if short is None:
            return len(self.rows)
        return sum(index < short.starts.pass_index for index in self.rows)

    def to_buy(self, walk: ColourWalk, more: float, yarn: Yarn, *, mix_lots: bool) -> SkeinChoice:
        """Return the cheapest whole balls for what those of a walk do not last for.

        `more` is that of the walk. Nothing is taken from the shelf. Errors: as `choose`.
        """
        visits = tuple(self._beyond(walk, more))
        extras_m = max(0.0, self.colour.yarn.extras_m - walk.left_m)
        need_m = extras_m
        if visits:
            need_m += walk_colour(self.colour.colour, visits, tail_m=self.colour.tail_m).yarn_m
        if need_m <= HAIR:
            return SkeinChoice()
        work = ColourWork(
            yarn=replace(self.colour.yarn, extras_m=extras_m),
            visits=visits,
            blankets=1,
            habits=self.colour.habits,
        )
        new = replace(yarn, stock=())
        return work.choose(need_m, 0.0, new, self.colour.source.colour, mix_lots=mix_lots)

    def _beyond(self, walk: ColourWalk, more: float) -> list[Visit]:
        """Return the visits that a walk had no ball for, the first of them where it ran out."""
        short = _first_missing(walk.strands)
        if short is None:
            return []
        begun = short.stretches[0].begins
        first, *rest = [
            visit.with_more(more)
            for visit in self.visits
            if visit.pass_index >= short.starts.pass_index
        ]
        return [
            replace(first, yarn_m=first.yarn_m * (1 - begun), follows=False, carry_m=None),
            *rest,
        ]


def yarn_to_come(colour: ColourEstimate, rows: MadeRows, done: int) -> YarnToCome:
    """Return what is still to be worked of a colour once so many rows are done."""
    to_come = [(row, visit) for row, visit in _visits_by_row(colour, rows) if row > done]
    visits = [
        replace(visit, pass_index=number, part=0, copies=1)
        for number, (_, visit) in enumerate(to_come)
    ]
    last_of_row = {
        row: number for number, (row, visit) in enumerate(to_come) if rows.is_row(visit.pass_index)
    }
    goes_on = bool(visits) and not visits[0].begins
    return YarnToCome(
        colour=colour,
        visits=tuple(visits),
        rows=tuple(last_of_row.values()),
        tails_m=2 * colour.tail_m - visits[0].carried_m if goes_on else 0.0,
    )


def _visits_by_row(colour: ColourEstimate, rows: MadeRows) -> Iterator[tuple[int, Visit]]:
    """Yield the visits of all blankets in the order worked, each with its row."""
    parts = [list(own) for _, own in groupby(colour.visits, key=lambda visit: visit.part)]
    for blanket in range(rows.blankets):
        for own in parts:
            for copy in range(own[0].copies):
                for visit in own:
                    yield rows.row_of(PassPlace(blanket, visit.pass_index, copy)), visit


def _first_missing(strands: Sequence[Strand]) -> Strand | None:
    return next((strand for strand in strands if strand.ball == MISSING), None)
