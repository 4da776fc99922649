"""One colour's walk through the work with balls in hand: strands, joins, part balls, waste.

The walk does what hands do: it takes the passes in order, works each from the strand in hand while
that follows or can be carried and its ball lasts, and else opens a ball: a part ball before a fresh
one, the first that can work what has to be in one piece. It looks at each pass once and never goes
back, so it ends; what it needed and no ball was left for is told as missing.

Two things keep it quick for many blankets alike. Of a run, what one strand works where its ball
lasts, all that the ball in hand lasts for is taken in one step. And a supply of like balls without
end tells how many of them are needed in one walk: with just so many it is the same, ball by ball.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from quoting.core.estimate.balls import ONE_ENDLESS_BALL, Ball, Basket, StrandInHand, Supply
from quoting.core.estimate.runs import Run, runs_of
from quoting.core.estimate.strands import Place, Point, Strand, Stretch, Visit, Why
from quoting.core.ground.sameness import HAIR
from quoting.core.plan.passes import Edge
from quoting.core.workshop.habits import Join


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourWalk:
    """A colour's strands in order, and what became of its balls.

    `ball_used_m` is the yarn taken from each ball; `ran_out_at` the place where each ball was
    used up, or None; `left_m` the yarn left of those that were not; `missing_m` the yarn that was
    needed when no ball was left; `long_pass` whether a pass was longer than any ball to come
    though joins were wanted at an edge; `full_m` the longest ball that more could be had of, and
    `held` how many balls were used first.
    """

    colour: str
    strands: tuple[Strand, ...]
    ball_used_m: tuple[float, ...]
    ran_out_at: tuple[Point | None, ...]
    left_m: float
    missing_m: float
    long_pass: bool
    full_m: float
    held: int

    @property
    def yarn_m(self) -> float:
        """All the yarn of the strands: stitches, carries and tails."""
        return math.fsum(strand.yarn_m for strand in self.strands)


def walk_colour(
    colour: str,
    visits: Sequence[Visit],
    supply: Supply = ONE_ENDLESS_BALL,
    *,
    tail_m: float,
    blankets: int = 1,
    join: Join = Join.ANYWHERE,
) -> ColourWalk:
    """Return the strands of one colour in so many blankets alike, `visits` being those of one.

    Part balls left by earlier strands come before any fresh one, the oldest first.
    """
    return walk_runs(colour, runs_of(visits), supply, tail_m=tail_m, blankets=blankets, join=join)


def walk_runs(
    colour: str, runs: Sequence[Run], supply: Supply, *, tail_m: float, blankets: int, join: Join
) -> ColourWalk:
    """Return the strands of one colour, as `walk_colour`, from its runs through one blanket."""
    basket = Basket(supply, 2 * tail_m, sparing=any(run.scraps_wait for run in runs))
    walker = _Walker(colour, 2 * tail_m, basket, join)
    parts = [list(own) for _, own in groupby(runs, key=lambda run: run.part)]
    for blanket in range(blankets):
        for own in parts:
            for copy in range(own[0].copies):
                place = Place(blanket, own[0].part, copy)
                for run in own:
                    walker.take(run, place, Why.FINISHED if run is own[-1] else Why.CUT)
    return walker.finish()


class _Walker:
    def __init__(self, colour: str, tails_m: float, basket: Basket, join: Join) -> None:
        self.colour = colour
        self.tails_m = tails_m
        self.at_an_edge = join is Join.AT_AN_EDGE
        self.basket = basket
        self.strands: list[Strand] = []
        self.last: Point | None = None
        self.long_pass = False
        self.edge_only = False

    def take(self, run: Run, place: Place, why: Why) -> None:
        """Work the passes of one run: as many as the ball in hand lasts for, then the next.

        `why` is why its last strand ends: cut, or fastened off as the last of a part.
        """
        ball = self.basket.take(run.whole_m) if self.basket.sparing else None
        if ball is not None:
            self._work_whole(ball, run, place, why)
            return
        hand, number = self._begin(run, 0, place), 0
        while number < len(run.visits):
            upto = run.upto(number, hand.left_m)
            if upto > number:
                self._sweep(hand, run, number, upto)
                last = run.visits[upto - 1]
                self.last = place.point(last.pass_index, last.ends)
            else:
                hand, upto = self._work(hand, run, number, place), number + 1
            if upto < len(run.visits):
                hand = self._go_on(hand, run, upto, place)
            number = upto
        self._close(hand, why)

    def _work_whole(self, ball: Ball, run: Run, place: Place, why: Why) -> None:
        first, last = run.visits[0], run.visits[-1]
        strand = Strand(
            colour=self.colour,
            ball=ball.number,
            starts=place.point(first.pass_index, first.starts),
            ends=place.point(last.pass_index, last.ends),
            why=why,
            yarn_m=run.whole_m + self.tails_m,
            stretches=run.stretches,
            carries=run.carries,
        )
        self._lay_down(strand, ball)

    def _sweep(self, hand: StrandInHand, run: Run, number: int, upto: int) -> None:
        """Work all of some visits of a run, for which the ball in hand lasts."""
        hand.spend(run.between_m(number, upto))
        if upto - number == len(run.visits):
            hand.whole = run
            return
        hand.stretches += run.stretches[number:upto]
        hand.carries += run.carries[run.carried[number] : run.carried[upto - 1]]

    def _begin(self, run: Run, number: int, place: Place) -> StrandInHand:
        """Start a strand at the edge where a pass starts; at an edge, with enough for all of it.

        A pass that is one strand with the next is begun with enough for both.
        """
        visit = run.visits[number]
        self._decide(None, visit)
        here = place.point(visit.pass_index, visit.starts)
        whole_m = visit.yarn_m + visit.bound_m
        least_m = whole_m if self.edge_only else 2 * HAIR
        return self._open(here, least_m, run.rest_m(number), whole_m)

    def _go_on(self, hand: StrandInHand, run: Run, number: int, place: Place) -> StrandInHand:
        """Bring the strand in hand to a visit of a run, or close it and start another."""
        visit = run.visits[number]
        if not run.visits[number - 1].bound_m:
            self._decide(hand, visit)
        needed_m = visit.carried_m + (visit.yarn_m if self.edge_only else 2 * HAIR)
        if hand.left_m < needed_m - HAIR:
            self._close(hand, Why.RAN_OUT)
            return self._begin(run, number, place)
        if visit.carried_m:
            hand.carries.append(run.carries[run.carried[number] - 1])
            hand.spend(visit.carried_m)
        return hand

    def _decide(self, hand: StrandInHand | None, visit: Visit) -> None:
        """Decide whether a pass may be joined only at the edge, not within."""
        self.edge_only = self.at_an_edge and not self._too_long(hand, visit)
        self.long_pass = self.long_pass or (self.at_an_edge and not self.edge_only)

    def _too_long(self, hand: StrandInHand | None, visit: Visit) -> bool:
        """Return whether no ball can finish the pass: in hand, to come, or to be had.

        With no fresh ball to come, more have to be had, so it is not the pass that is too long.
        """
        whole_m = visit.yarn_m + visit.bound_m
        if hand is not None and hand.left_m >= visit.carried_m + whole_m - HAIR:
            return False
        full_m = self.basket.supply.full_m
        if not self.basket.fresh and not full_m:
            return False
        return full_m < whole_m + self.tails_m - HAIR and not self.basket.has(whole_m)

    def _work(self, hand: StrandInHand, run: Run, number: int, place: Place) -> StrandInHand:
        """Work the pass to its end, joining balls within it where one runs out."""
        visit, done = run.visits[number], 0.0
        while visit.yarn_m - done > hand.left_m + HAIR:
            part = hand.left_m
            self._stretch(hand, visit, done, done + part)
            done += part
            self.last = place.point(visit.pass_index, Edge.WITHIN)
            self._close(hand, Why.RAN_OUT)
            rest_m, pass_m = run.rest_m(number) - done, visit.yarn_m - done
            hand = self._open(self.last, 2 * HAIR, rest_m, pass_m)
        self._stretch(hand, visit, done, visit.yarn_m)
        self.last = place.point(visit.pass_index, visit.ends)
        return hand

    def _stretch(self, hand: StrandInHand, visit: Visit, begins_m: float, ends_m: float) -> None:
        hand.spend(ends_m - begins_m)
        whole_m = visit.yarn_m
        share = (begins_m / whole_m, ends_m / whole_m) if whole_m else (0.0, 1.0)
        hand.stretches.append(Stretch(visit.pass_index, *share))

    def _open(self, here: Point, least_m: float, *wanted_m: float) -> StrandInHand:
        """Start a strand from a ball that can work `least_m`, better the first of `wanted_m`."""
        ball = self.basket.take_for(least_m, *wanted_m) or self.basket.missing
        return StrandInHand(ball=ball, starts=here, left_m=ball.left_m - self.tails_m)

    def _close(self, hand: StrandInHand, why: Why) -> None:
        """End the strand where it was last worked; what is left of its ball goes aside."""
        assert self.last is not None, "a strand in hand was last somewhere"  # noqa: S101
        strand = Strand(
            colour=self.colour,
            ball=hand.ball.number,
            starts=hand.starts,
            ends=self.last,
            why=why,
            yarn_m=hand.worked_m + self.tails_m,
            stretches=hand.whole.stretches if hand.whole else tuple(hand.stretches),
            carries=hand.whole.carries if hand.whole else tuple(hand.carries),
        )
        self._lay_down(strand, hand.ball)

    def _lay_down(self, strand: Strand, ball: Ball) -> None:
        """Lay aside what is left of the ball that a strand came from."""
        used_up = strand.why is Why.RAN_OUT
        self.basket.lay_aside(ball, strand.yarn_m, strand.ends, used_up=used_up)
        self.strands.append(strand)

    def finish(self) -> ColourWalk:
        """Return the whole walk."""
        balls = self.basket.balls
        return ColourWalk(
            colour=self.colour,
            strands=tuple(self.strands),
            ball_used_m=tuple(ball.used_m for ball in balls),
            ran_out_at=tuple(ball.ran_out_at for ball in balls),
            left_m=math.fsum(ball.left_m for ball in balls if ball.ran_out_at is None),
            missing_m=self.basket.missing.used_m,
            long_pass=self.long_pass,
            full_m=self.basket.supply.full_m,
            held=self.basket.supply.held,
        )
