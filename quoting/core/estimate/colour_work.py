"""What is to be worked in one colour, and the skeins for it."""

from __future__ import annotations

from dataclasses import dataclass, field

from quoting.core.estimate.ball_walk import ColourWalk, walk_runs
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.edge_skeins import EdgeWork, skeins_at_an_edge
from quoting.core.estimate.runs import Run, runs_of
from quoting.core.estimate.skeins import MOST_BALLS, SkeinChoice, choose_skeins
from quoting.core.estimate.strands import Visit
from quoting.core.estimate.yarn_needed import ColourYarn
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.yarns import Yarn


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourWork:
    """The passes of one colour: `visits` are those of one of the `blankets` alike.

    It is walked again and again, so its runs with a share more yarn are kept.
    """

    yarn: ColourYarn
    visits: tuple[Visit, ...]
    blankets: int
    habits: Habits
    _runs: dict[float, list[Run]] = field(default_factory=dict, compare=False)

    def walk(self, supply: Supply, share: float = 0.0) -> ColourWalk:
        """Walk all of it, with a share more yarn in every stitch."""
        if share not in self._runs:
            self._runs[share] = runs_of([visit.with_more(share) for visit in self.visits])
        return walk_runs(
            self.yarn.colour,
            self._runs[share],
            supply,
            tail_m=self.habits.tail_m,
            blankets=self.blankets,
            join=self.habits.join,
        )

    def choose(
        self, need_m: float, share: float, stuff: Yarn, colour: str, *, mix_lots: bool
    ) -> SkeinChoice:
        """Return the skeins of a yarn's colour for all of it, with a share of yarn in reserve.

        With joins anywhere their metres, `need_m` with the reserve, alone tell what is enough: a
        ball after the first wastes no more than two tails, as a join or as a scrap. Errors: as
        `choose_skeins`; `too-many-balls`.
        """
        tail_m = self.habits.tail_m
        choice = choose_skeins(need_m, stuff, colour, tail_m=tail_m, mix_lots=mix_lots)
        if self.habits.join is Join.AT_AN_EDGE and choice.skeins <= MOST_BALLS:
            work = EdgeWork(
                walk=self.walk,
                passes=sum(visit.copies for visit in self.visits) * self.blankets,
                share=share,
                extras_m=self.yarn.extras_m,
            )
            choice = skeins_at_an_edge(
                work, need_m, stuff, colour, tail_m=tail_m, mix_lots=mix_lots
            )
        if choice.skeins > MOST_BALLS:
            raise refuse(
                "yarns",
                MistakeCode.TOO_MANY_BALLS,
                read=choice.skeins,
                colour=self.yarn.colour,
                yarn=stuff.name,
                limit=MOST_BALLS,
            )
        return choice
