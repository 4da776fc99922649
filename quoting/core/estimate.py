"""From a plan to what it takes: yarn and skeins by colour, strands and their ends, hours."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from quoting.core.ball_ends import BallEnd, ball_ends
from quoting.core.ball_walk import HAIR_M, ColourWalk, walk_colour
from quoting.core.design import ColourSource
from quoting.core.errors import refuse
from quoting.core.hours import Hours, Workload, work_hours
from quoting.core.order import Order
from quoting.core.passes import Plan
from quoting.core.skeins import SkeinChoice, choose_skeins
from quoting.core.strands import Strand, Visit, Why, visits_by_colour
from quoting.core.workshop import Workshop
from quoting.core.yarn import ColourYarn, reserve, yarn_by_colour, yarn_by_pass

MOST_PASSES = 20_000
"""Rows and rounds of all blankets of an order together."""

PATIENCE = 3
"""Full balls more than needed after which no row waits for a larger ball any longer."""

MOST_BALLS = 2_000
"""Balls of one colour; more of them is a slip in the yarn's figures."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourEstimate:
    """One colour: its yarn, what to buy for it, and its strands.

    `bare_m` is its yarn were no ball ever joined; `reserve` the share to have on top.
    """

    yarn: ColourYarn
    source: ColourSource
    metres_per_gram: float
    bare_m: float
    reserve: float
    tail_m: float
    choice: SkeinChoice
    walk: ColourWalk
    ball_ends: tuple[BallEnd, ...]

    @property
    def colour(self) -> str:
        """The colour's name in the design."""
        return self.yarn.colour

    @property
    def balls_m(self) -> tuple[float, ...]:
        """The lengths of all balls, in the order they are used."""
        return self.choice.balls_m(self.metres_per_gram)

    @property
    def metres(self) -> float:
        """The yarn expected: stitches, carries, tails, extras."""
        return self.walk.yarn_m + self.yarn.extras_m

    @property
    def metres_to_buy(self) -> float:
        """The yarn to have: with the reserve, and two tails for each ball after the first."""
        joins = max(0, len(self.balls_m) - 1)
        return self.bare_m * (1 + self.reserve) + joins * 2 * self.tail_m

    @property
    def metres_left(self) -> float:
        """The yarn expected to be left of all balls."""
        return math.fsum(self.balls_m) - self.metres

    @property
    def grams(self) -> float:
        """The weight of the yarn expected."""
        return self.metres / self.metres_per_gram

    @property
    def from_stock_g(self) -> float:
        """What is expected to be taken from stock, which is used first."""
        held = math.fsum(ball.weight_g for ball in self.choice.stock)
        worked = self.walk.ball_used_m[: len(self.choice.stock)]
        extras = 0.0 if self.choice.bought else self.yarn.extras_m
        return min(held, (math.fsum(worked) + extras) / self.metres_per_gram)


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """What an order takes, over all its pieces."""

    colours: tuple[ColourEstimate, ...]
    strands: tuple[Strand, ...]
    hours: Hours

    @property
    def ends(self) -> int:
        """The ends to weave in: two for each strand."""
        return 2 * len(self.strands)

    @property
    def carries(self) -> int:
        """Strands taken up from an edge."""
        return sum(len(strand.carries) for strand in self.strands)

    def ended(self, why: Why) -> int:
        """Strands that ended so: joins for `ran out`, cuts for `cut`."""
        return sum(strand.why is why for strand in self.strands)

    @property
    def skeins(self) -> int:
        """Whole new balls to buy."""
        return sum(colour.choice.skeins for colour in self.colours)

    @property
    def grams(self) -> float:
        """The weight of all yarn in the blankets."""
        return math.fsum(colour.grams for colour in self.colours)

    @property
    def metres_left(self) -> float:
        """The yarn expected to be left of all balls."""
        return math.fsum(colour.metres_left for colour in self.colours)


def estimate_plan(plan: Plan, order: Order, workshop: Workshop) -> Estimate:
    """Return yarn, skeins, strands and hours of the order's pieces.

    Errors: `too-large` at the quantity for more passes than one answer can walk;
    `balls-too-short` where no ball outlasts its own tails; `too-many-balls`; as `work_hours`.
    """
    if len(plan.passes) * order.quantity > MOST_PASSES:
        limit = MOST_PASSES // len(plan.passes)
        raise refuse("order.quantity", "too-large", read=order.quantity, limit=limit)
    habits = workshop.habits
    visits = visits_by_colour(plan, habits, yarn_by_pass(plan, order), order.quantity)
    colours = tuple(
        _colour(yarn, visits.get(yarn.colour, []), order, workshop)
        for yarn in yarn_by_colour(plan, order, habits)
    )
    strands = sorted(
        (strand for colour in colours for strand in colour.walk.strands),
        key=lambda s: (s.starts.piece, s.starts.pass_index, s.stretches[0].begins),
    )
    hours = work_hours(_workload(plan, order, strands), workshop)
    return Estimate(colours=colours, strands=tuple(strands), hours=hours)


def _workload(plan: Plan, order: Order, strands: Sequence[Strand]) -> Workload:
    pieces = order.quantity
    changes = sum(before.colour != worked.colour for before, worked in pairwise(plan.passes))
    return Workload(
        stitches={stitch: count * pieces for stitch, count in plan.stitch_counts.items()},
        turns=(len(plan.rows) - 1) * pieces,
        colour_changes=changes * pieces,
        joins=sum(strand.why is Why.RAN_OUT for strand in strands),
        ends=2 * len(strands),
        pieces=pieces,
        extras_minutes=sum(extra.minutes for extra in order.extras) * pieces,
    )


def _colour(
    yarn: ColourYarn, visits: Sequence[Visit], order: Order, workshop: Workshop
) -> ColourEstimate:
    """Return one colour's estimate; where the balls fall short, more are chosen."""
    habits = workshop.habits
    source = order.design.source_of(yarn.colour)
    stuff = workshop.yarn(source.yarn)
    bare_m = walk_colour(yarn.colour, visits, tail_m=habits.tail_m).yarn_m + yarn.extras_m
    share = reserve(yarn.error, habits)
    choice, walk = _enough(bare_m * (1 + share), yarn, visits, order, workshop)
    balls_m = choice.balls_m(stuff.metres_per_gram)
    return ColourEstimate(
        yarn=yarn,
        source=source,
        metres_per_gram=stuff.metres_per_gram,
        bare_m=bare_m,
        reserve=share,
        tail_m=habits.tail_m,
        choice=choice,
        walk=walk,
        ball_ends=ball_ends(walk, visits, balls_m, share, habits),
    )


def _enough(
    need_m: float, yarn: ColourYarn, visits: Sequence[Visit], order: Order, workshop: Workshop
) -> tuple[SkeinChoice, ColourWalk]:
    """Return skeins that the work and its extras get through with, and the walk.

    Where the balls fall short, the need is raised by that. Where no more of them helps, for no
    choice brings a ball that a row waits for, that row is joined within.
    """
    habits, mix_lots = workshop.habits, order.design.mix_lots
    colour, source = yarn.colour, order.design.source_of(yarn.colour)
    stuff = workshop.yarn(source.yarn)
    raised_m, waits = need_m, True
    while True:
        choice = choose_skeins(
            raised_m, stuff, source.colour, tail_m=habits.tail_m, mix_lots=mix_lots
        )
        if choice.skeins > MOST_BALLS:
            raise refuse(
                "yarns",
                "too-many-balls",
                read=choice.skeins,
                colour=colour,
                yarn=stuff.name,
                limit=MOST_BALLS,
            )
        full_m = choice.full_ball_m(stuff.metres_per_gram)
        walk = walk_colour(
            colour,
            visits,
            tail_m=habits.tail_m,
            balls_m=choice.balls_m(stuff.metres_per_gram),
            join=habits.join,
            full_m=full_m if waits else 0.0,
        )
        short_m = walk.missing_m + max(0.0, yarn.extras_m - walk.left_m)
        if short_m <= HAIR_M:
            return choice, walk
        raised_m += short_m
        if waits and raised_m > need_m + PATIENCE * full_m:
            raised_m, waits = need_m, False
