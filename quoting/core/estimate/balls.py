"""The balls that a colour is worked from, and the strand in hand."""

from __future__ import annotations

import math
from collections import deque
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import chain, islice

from quoting.core.estimate.runs import Run
from quoting.core.estimate.strands import Carry, Point, Stretch
from quoting.core.ground.sameness import HAIR


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """The balls for a walk, in the order they are to be used.

    After those of `balls_m`, balls of `more_m` come without end, if that is over 0. `full_m` is the
    longest ball on sale: with joins at an edge, a pass that it can finish waits for a ball that
    can, and is missed where there is none. The first `held` of `balls_m` are begun before scraps
    wait for anything: what is on the shelf is used first.
    """

    balls_m: Sequence[float] = ()
    more_m: float = 0.0
    full_m: float = 0.0
    held: int = 0


ONE_ENDLESS_BALL = Supply(balls_m=(math.inf,))


@dataclass(slots=True, eq=False)
class Ball:
    """A ball: what is left of it, what was taken, and where it was used up."""

    number: int
    left_m: float
    used_m: float = 0.0
    ran_out_at: Point | None = None


class Basket:
    """The balls of a walk: part balls, the oldest first, then fresh ones, then any to be had.

    What nobody has is worked from the `missing` ball, which has no end. With `sparing` what is left
    of a short ball waits for something smaller, and is joined only once nothing longer is left.
    """

    def __init__(self, supply: Supply, tails_m: float, *, sparing: bool = False) -> None:
        self.supply = supply
        self.spares = sparing
        self.tails_m = tails_m
        self.balls = [Ball(number, length) for number, length in enumerate(supply.balls_m)]
        self.fresh = deque(self.balls)
        self.part: deque[Ball] = deque()
        self.missing = Ball(-1, math.inf)

    @property
    def sparing(self) -> bool:
        """Whether scraps wait: they do once all that is held was begun."""
        held = islice(self.fresh, self.supply.held)
        return self.spares and not any(
            ball.number < self.supply.held and ball.left_m > self.tails_m for ball in held
        )

    def take(self, least_m: float) -> Ball | None:
        """Return the first ball that can work `least_m` besides its tails, taken out."""
        return (
            self._next(self.part, least_m)
            or self._next(self.fresh, least_m)
            or self._another(least_m)
        )

    def take_for(self, least_m: float, *wanted_m: float) -> Ball | None:
        """Return the first ball that can work `least_m`.

        Sparing, it is one that can work all of the first of `wanted_m`, else all of the next, else
        the longest.
        """
        if not self.sparing:
            return self.take(least_m)
        for length_m in wanted_m:
            ball = self.take(length_m)
            if ball is not None:
                return ball
        longest_m = max((ball.left_m for ball in chain(self.part, self.fresh)), default=0.0)
        return self.take(max(least_m, longest_m - self.tails_m))

    def has(self, least_m: float) -> bool:
        """Return whether one of the balls that are there can work so much."""
        needed_m = least_m + self.tails_m - HAIR
        return any(ball.left_m >= needed_m for ball in chain(self.fresh, self.part))

    def lay_aside(self, ball: Ball, taken_m: float, where: Point, *, used_up: bool) -> None:
        """Take so much of a ball and lay it aside; what its tails would take up is no ball."""
        ball.left_m -= taken_m
        ball.used_m += taken_m
        if used_up or ball.left_m <= self.tails_m:
            ball.ran_out_at = where
        elif ball is not self.missing:
            self.part.append(ball)

    def _next(self, balls: deque[Ball], least_m: float) -> Ball | None:
        needed_m = least_m + self.tails_m - HAIR
        for ball in balls:
            if ball.left_m >= needed_m:
                balls.remove(ball)
                return ball
        return None

    def _another(self, least_m: float) -> Ball | None:
        """Return one more of the balls that come without end, if it can work `least_m`."""
        more_m = self.supply.more_m
        if more_m - self.tails_m < least_m - HAIR:
            return None
        self.balls.append(Ball(len(self.balls), more_m))
        return self.balls[-1]


@dataclass(slots=True)
class StrandInHand:
    """The strand in hand. `left_m` of its ball can still be worked: the tails are set aside.

    `whole` is the run that it works from end to end, if it does; else `stretches` and `carries`
    are what it has come to so far.
    """

    ball: Ball
    starts: Point
    left_m: float
    worked_m: float = 0.0
    whole: Run | None = None
    stretches: list[Stretch] = field(default_factory=list)
    carries: list[Carry] = field(default_factory=list)

    def spend(self, yarn_m: float) -> None:
        """Work some of the ball."""
        self.left_m -= yarn_m
        self.worked_m += yarn_m
