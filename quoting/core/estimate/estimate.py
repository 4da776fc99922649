"""From a plan to what it takes: yarn and skeins by colour, strands and their ends, hours."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from quoting.core.estimate.ball_ends import BallEnd, ball_ends
from quoting.core.estimate.ball_walk import ColourWalk
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.colour_work import ColourWork
from quoting.core.estimate.hours import Hours, work_hours
from quoting.core.estimate.runs import bare_m, runs_of
from quoting.core.estimate.skeins import SkeinChoice
from quoting.core.estimate.strands import Strand, Visit, Why, visits_by_colour
from quoting.core.estimate.workload import workload_of
from quoting.core.estimate.yarn_needed import (
    ColourYarn,
    reserve,
    with_reserve,
    yarn_by_colour,
    yarn_by_pass,
)
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.place import at
from quoting.core.order.design import ColourSource, EndsBecome
from quoting.core.order.order import Order
from quoting.core.plan.passes import Plan
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.workshop import Workshop

MOST_PASSES = 40_000
"""Rows and rounds of all blankets of an order together."""

ALIKE_AT_ONCE = 50
"""Further blankets of a set that are worked out while one is: alike runs are walked whole."""


PARTS_AT_ONCE = 10
"""Further motifs, or seams, of one kind that are worked out while one is."""


def work_of(plan: Plan, quantity: int) -> int:
    """Return the rows and rounds of one blanket that take as long as an order of so many alike."""
    further = sum(plan.times(worked) - 1 for worked in plan.passes)
    one = len(plan.passes) + further / PARTS_AT_ONCE
    return math.ceil(one * (1 + (quantity - 1) / ALIKE_AT_ONCE))


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourEstimate:
    """One colour: its yarn, what to buy for it, and its strands.

    `visits` are those of one of the `blankets` alike; `bare_m` is its yarn were no ball ever
    joined, extras too; `reserve` the share to have on top of all but the extras.
    """

    yarn: ColourYarn
    source: ColourSource
    metres_per_gram: float
    bare_m: float
    reserve: float
    habits: Habits
    visits: tuple[Visit, ...]
    blankets: int
    choice: SkeinChoice
    walk: ColourWalk

    @property
    def colour(self) -> str:
        """The colour's name in the design."""
        return self.yarn.colour

    @property
    def tail_m(self) -> float:
        """The length of a tail."""
        return self.habits.tail_m

    @property
    def balls_m(self) -> tuple[float, ...]:
        """The lengths of all balls, in the order they are used."""
        return self.choice.balls_m(self.metres_per_gram)

    @property
    def ball_ends(self) -> tuple[BallEnd, ...]:
        """Where each ball is used up. It is walked for anew: not every answer asks for it."""
        return ball_ends(
            self.walk, self.visits, self.balls_m, self.reserve, self.habits, self.blankets
        )

    @property
    def metres(self) -> float:
        """The yarn expected: stitches, carries, tails, extras."""
        return self.walk.yarn_m + self.yarn.extras_m

    @property
    def carried_m(self) -> float:
        """The yarn carried along edges, part of the yarn expected."""
        return math.fsum(c.yarn_m for strand in self.walk.strands for c in strand.carries)

    @property
    def ends(self) -> int:
        """The ends to weave in: two for each strand."""
        return 2 * len(self.walk.strands)

    @property
    def tails_m(self) -> float:
        """The yarn in the tails at all ends."""
        return self.ends * self.tail_m

    @property
    def metres_to_buy(self) -> float:
        """The yarn to have: with the reserve, and two tails for each ball after the first."""
        joins = max(0, len(self.balls_m) - 1)
        return with_reserve(self.bare_m, self.yarn.extras_m, self.reserve) + (
            joins * 2 * self.tail_m
        )

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
        """What is expected to be taken from stock: it is used first, by the extras too."""
        held_m = self.balls_m[: len(self.choice.stock)]
        worked_m = self.walk.ball_used_m[: len(held_m)]
        scraps = self.habits.join is Join.AT_AN_EDGE
        left_m = [
            length - used
            for length, used, end in zip(held_m, worked_m, self.walk.ran_out_at, strict=False)
            if not (scraps and end)
        ]
        extras_m = min(self.yarn.extras_m, math.fsum(left_m))
        taken_m = min(math.fsum(held_m), math.fsum(worked_m) + extras_m)
        return taken_m / self.metres_per_gram


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """What an order takes, over all its blankets."""

    colours: tuple[ColourEstimate, ...]
    strands: tuple[Strand, ...]
    hours: Hours

    @property
    def ends(self) -> int:
        """The ends to weave in."""
        return sum(colour.ends for colour in self.colours)

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
    """Return yarn, skeins, strands and hours of the order's blankets.

    Errors: `too-large` at the quantity for more passes than one answer can walk;
    `balls-too-short` where no ball outlasts its own tails; `too-many-balls`; as `work_hours`.
    """
    if plan.passes_worked * order.quantity > MOST_PASSES:
        limit = MOST_PASSES // plan.passes_worked
        raise refuse(
            at("order", "quantity"), MistakeCode.TOO_LARGE, read=order.quantity, limit=limit
        )
    habits = habits_for(plan, order, workshop)
    visits = visits_by_colour(plan, habits, yarn_by_pass(plan, order))
    colours = tuple(
        _colour(yarn, tuple(visits.get(yarn.colour, ())), order, workshop, habits)
        for yarn in yarn_by_colour(plan, order, workshop)
    )
    strands = sorted(
        (strand for colour in colours for strand in colour.walk.strands),
        key=lambda s: (s.starts.when, s.stretches[0].begins),
    )
    hours = work_hours(workload_of(plan, order, workshop, strands), workshop)
    return Estimate(colours=colours, strands=tuple(strands), hours=hours)


def habits_for(plan: Plan, order: Order, workshop: Workshop) -> Habits:
    """Return the maker's habits with the tails of an order, which are longer for a fringe.

    The ends of rounds and motifs lie within and are no fringe.
    """
    habits = workshop.habits
    within = any(worked.grows for worked in plan.passes)
    if order.design.ends is not EndsBecome.FRINGE or within:
        return habits
    return replace(habits, tail_cm=habits.fringe_cm)


def _colour(
    yarn: ColourYarn,
    visits: tuple[Visit, ...],
    order: Order,
    workshop: Workshop,
    habits: Habits,
) -> ColourEstimate:
    """Return one colour's estimate, with skeins that the work and its extras get through with."""
    source = order.design.source_of(yarn.colour)
    stuff = workshop.yarn(source.yarn)
    work = ColourWork(yarn=yarn, visits=visits, blankets=order.quantity, habits=habits)
    all_m = bare_m(runs_of(visits), habits.tail_m) * order.quantity + yarn.extras_m
    share = reserve(yarn.error, habits)
    need_m = with_reserve(all_m, yarn.extras_m, share)
    choice = work.choose(need_m, share, stuff, source.colour, mix_lots=order.design.mix_lots)
    full_m = max(put_up.length_m for put_up in stuff.put_ups)
    balls_m = choice.balls_m(stuff.metres_per_gram)
    held = len(choice.stock) if habits.join is Join.ANYWHERE else 0
    return ColourEstimate(
        yarn=yarn,
        source=source,
        metres_per_gram=stuff.metres_per_gram,
        bare_m=all_m,
        reserve=share,
        habits=habits,
        visits=visits,
        blankets=order.quantity,
        choice=choice,
        walk=work.walk(Supply(balls_m=balls_m, full_m=full_m, held=held)),
    )
