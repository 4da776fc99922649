"""One colour's walk through the work with balls in hand: strands, joins, part balls, waste."""

from __future__ import annotations

import math
from collections import deque
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import chain

from quoting.core.passes import Edge
from quoting.core.strands import Carry, Point, Strand, Stretch, Visit, Why
from quoting.core.workshop import Join

HAIR_M = 1e-6
"""A micrometre: lengths nearer than this are the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourWalk:
    """A colour's strands in order, and what became of its balls.

    `ball_used_m` is the yarn taken from each ball; `ran_out_at` the place where each ball was
    used up, or None; `left_m` the yarn left of those that were not; `missing_m` the yarn that was
    needed when no ball was left; `long_pass` whether a pass was longer than any ball to come
    though joins were wanted at an edge; `full_m` the ball that more could be had of.
    """

    colour: str
    strands: tuple[Strand, ...]
    ball_used_m: tuple[float, ...]
    ran_out_at: tuple[Point | None, ...]
    left_m: float
    missing_m: float
    long_pass: bool
    full_m: float

    @property
    def yarn_m(self) -> float:
        """All the yarn of the strands: stitches, carries and tails."""
        return math.fsum(strand.yarn_m for strand in self.strands)

    def ended(self, why: Why) -> int:
        """Return how many strands ended so."""
        return sum(strand.why is why for strand in self.strands)


def walk_colour(
    colour: str,
    visits: Sequence[Visit],
    *,
    tail_m: float,
    balls_m: Sequence[float] | None = None,
    join: Join = Join.ANYWHERE,
    full_m: float = 0.0,
) -> ColourWalk:
    """Return the strands of one colour.

    `balls_m` are the lengths of the balls in the order they are to be used; None stands for one
    endless ball. Part balls left by earlier strands come before any fresh one, the oldest first.
    `full_m` is the length of a ball that more can be had of: with joins at an edge, a pass that
    it can finish waits for it, and is missed where there is none.
    """
    lengths = [math.inf] if balls_m is None else balls_m
    walker = _Walker(colour, tail_m, lengths, join, full_m)
    for visit in visits:
        walker.take(visit)
    return walker.finish()


@dataclass(slots=True, eq=False)
class _Ball:
    number: int
    left_m: float
    used_m: float = 0.0
    ran_out_at: Point | None = None


@dataclass(slots=True)
class _Growing:
    """The strand in hand. `left_m` of its ball can still be worked: the tails are set aside."""

    ball: _Ball
    starts: Point
    left_m: float
    worked_m: float = 0.0
    stretches: list[Stretch] = field(default_factory=list)
    carries: list[Carry] = field(default_factory=list)

    def spend(self, yarn_m: float) -> None:
        self.left_m -= yarn_m
        self.worked_m += yarn_m


class _Walker:
    def __init__(
        self, colour: str, tail_m: float, balls_m: Sequence[float], join: Join, full_m: float
    ) -> None:
        self.colour = colour
        self.tails_m = 2 * tail_m
        self.at_an_edge = join is Join.AT_AN_EDGE
        self.full_m = full_m
        self.balls = [_Ball(number, length) for number, length in enumerate(balls_m)]
        self.fresh = deque(self.balls)
        self.part: deque[_Ball] = deque()
        self.missing = _Ball(-1, math.inf)
        self.strands: list[Strand] = []
        self.hand: _Growing | None = None
        self.last: Point | None = None
        self.long_pass = False

    def take(self, visit: Visit) -> None:
        """Work one pass."""
        if self.hand is not None and not visit.follows and visit.carry_m is None:
            self._close(self.hand, Why.CUT)
            self.hand = None
        edge_only = self.at_an_edge and not self._too_long(visit)
        self.long_pass = self.long_pass or (self.at_an_edge and not edge_only)
        start = Point(visit.piece, visit.pass_index, visit.starts)
        if self.hand is not None and not self._goes_on(self.hand, visit, edge_only=edge_only):
            self.hand = None
        hand = self.hand or self._open(start, visit.yarn_m if edge_only else 2 * HAIR_M)
        hand = self._work(hand, visit)
        self.hand = hand
        self.last = Point(visit.piece, visit.pass_index, visit.ends)

    def _too_long(self, visit: Visit) -> bool:
        """Return whether no ball can finish the pass: in hand, to come, or to be had.

        With no fresh ball to come, more have to be had, so it is not the pass that is too long.
        """
        wanted_m = _carry_m(visit) + visit.yarn_m
        if self.hand is not None and self.hand.left_m >= wanted_m - HAIR_M:
            return False
        if not self.fresh and not self.full_m:
            return False
        least_m = visit.yarn_m + self.tails_m - HAIR_M
        to_come = chain(self.fresh, self.part)
        return self.full_m < least_m and not any(ball.left_m >= least_m for ball in to_come)

    def _goes_on(self, hand: _Growing, visit: Visit, *, edge_only: bool) -> bool:
        """Bring the strand in hand to the pass, or close it."""
        carry_m = _carry_m(visit)
        wanted = carry_m + (visit.yarn_m if edge_only else 2 * HAIR_M)
        if hand.left_m < wanted - HAIR_M:
            self._close(hand, Why.RAN_OUT)
            return False
        if carry_m:
            assert self.last is not None, "a strand in hand was last somewhere"  # noqa: S101
            left = self.last.pass_index
            hand.carries.append(Carry(left, visit.pass_index, visit.starts, carry_m))
            hand.spend(carry_m)
        return True

    def _work(self, hand: _Growing, visit: Visit) -> _Growing:
        """Work the pass to its end, joining balls within it where one runs out."""
        done = 0.0
        while visit.yarn_m - done > hand.left_m + HAIR_M:
            part = hand.left_m
            self._stretch(hand, visit, done, done + part)
            done += part
            here = Point(visit.piece, visit.pass_index, Edge.WITHIN)
            self.last = here
            self._close(hand, Why.RAN_OUT)
            hand = self._open(here, 2 * HAIR_M)
        self._stretch(hand, visit, done, visit.yarn_m)
        return hand

    def _stretch(self, hand: _Growing, visit: Visit, begins_m: float, ends_m: float) -> None:
        hand.spend(ends_m - begins_m)
        whole_m = visit.yarn_m
        share = (begins_m / whole_m, ends_m / whole_m) if whole_m else (0.0, 1.0)
        hand.stretches.append(Stretch(visit.pass_index, *share))

    def _open(self, here: Point, least_m: float) -> _Growing:
        """Start a strand from the first ball that can work `least_m`."""
        ball = self._next(self.part, least_m) or self._next(self.fresh, least_m) or self.missing
        return _Growing(ball=ball, starts=here, left_m=ball.left_m - self.tails_m)

    def _next(self, balls: deque[_Ball], least_m: float) -> _Ball | None:
        for ball in balls:
            if ball.left_m - self.tails_m >= least_m - HAIR_M:
                balls.remove(ball)
                return ball
        return None

    def _close(self, hand: _Growing, why: Why) -> None:
        """End the strand where it was last worked; what is left of its ball goes aside."""
        assert self.last is not None, "a strand in hand was last somewhere"  # noqa: S101
        taken = hand.worked_m + self.tails_m
        hand.ball.left_m -= taken
        hand.ball.used_m += taken
        if why is Why.RAN_OUT or hand.ball.left_m <= self.tails_m:
            hand.ball.ran_out_at = self.last
        elif hand.ball is not self.missing:
            self.part.append(hand.ball)
        self.strands.append(
            Strand(
                colour=self.colour,
                ball=hand.ball.number,
                starts=hand.starts,
                ends=self.last,
                why=why,
                yarn_m=taken,
                stretches=tuple(hand.stretches),
                carries=tuple(hand.carries),
            )
        )

    def finish(self) -> ColourWalk:
        """Fasten off the last strand and return the whole walk."""
        if self.hand is not None:
            self._close(self.hand, Why.FINISHED)
        return ColourWalk(
            colour=self.colour,
            strands=tuple(self.strands),
            ball_used_m=tuple(ball.used_m for ball in self.balls),
            ran_out_at=tuple(ball.ran_out_at for ball in self.balls),
            left_m=math.fsum(b.left_m for b in self.balls if b.ran_out_at is None),
            missing_m=self.missing.used_m,
            long_pass=self.long_pass,
            full_m=self.full_m,
        )


def _carry_m(visit: Visit) -> float:
    return 0.0 if visit.follows else visit.carry_m or 0.0
