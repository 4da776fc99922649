"""The balls that a colour is worked from, and the strand in hand."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from quoting.core.estimate.runs import Run
from quoting.core.estimate.strands import Carry, Point, Stretch


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """The balls for a walk, in the order they are to be used.

    After those of `balls_m`, balls of `more_m` come without end, if that is over 0. `full_m` is the
    longest ball on sale: with joins at an edge, a pass that it can finish waits for a ball that
    can, and is missed where there is none.
    """

    balls_m: Sequence[float] = ()
    more_m: float = 0.0
    full_m: float = 0.0


ONE_ENDLESS_BALL = Supply(balls_m=(math.inf,))


@dataclass(slots=True, eq=False)
class Ball:
    """A ball: what is left of it, what was taken, and where it was used up."""

    number: int
    left_m: float
    used_m: float = 0.0
    ran_out_at: Point | None = None


@dataclass(slots=True)
class Growing:
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
