"""Where each ball is used up, and how far that may shift."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from quoting.core.estimate.ball_walk import ColourWalk, walk_colour
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.strands import Point, Visit
from quoting.core.workshop.habits import Habits

LEAST_SHARE = -0.99
"""No stitch takes less than a hundredth of the yarn expected."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BallEnd:
    """Where a ball is used up: expected, and at the soonest and the latest. None: it lasts."""

    expected: Point | None
    soonest: Point | None
    latest: Point | None


def ball_ends(
    walk: ColourWalk,
    visits: Sequence[Visit],
    balls_m: Sequence[float],
    share: float,
    habits: Habits,
    blankets: int = 1,
) -> tuple[BallEnd, ...]:
    """Return where each ball of a walk ends, and the range of it.

    The walk is made again with `share` more, and less, yarn in every stitch. A ball that is laid
    aside may then end sooner with less, so the range is the outermost of all three.
    """
    walks = [walk.ran_out_at]
    for more in (share, max(LEAST_SHARE, -share)):
        again = walk_colour(
            walk.colour,
            [visit.with_more(more) for visit in visits],
            Supply(balls_m=balls_m, full_m=walk.full_m, held=walk.held),
            tail_m=habits.tail_m,
            blankets=blankets,
            join=habits.join,
        )
        walks.append(again.ran_out_at)
    return tuple(
        BallEnd(expected=points[0], soonest=min(points, key=_when), latest=max(points, key=_when))
        for points in zip(*walks, strict=True)
    )


def _when(point: Point | None) -> tuple[float, ...]:
    """Return what puts places in the order they are worked; a ball that lasts comes last."""
    return (math.inf,) if point is None else point.when
