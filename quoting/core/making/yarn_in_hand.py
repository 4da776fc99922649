"""The balls that there are for a colour of an order being made, and what is left of them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.ground.sameness import NEAR
from quoting.core.making.log_lines import YarnTaken
from quoting.core.workshop.yarns import Yarn


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnHad:
    """The balls of a colour in the order they are worked, in metres, and the dye lot, if known."""

    balls_m: tuple[float, ...]
    lot: str

    @property
    def all_m(self) -> float:
        """The metres of all balls."""
        return math.fsum(self.balls_m)

    def left_m(self, used_m: float) -> tuple[float, ...]:
        """Return what is left of each ball, the first ones being used up first."""
        left = []
        for ball_m in self.balls_m:
            taken_m = min(ball_m, used_m)
            used_m -= taken_m
            left.append(ball_m - taken_m)
        return tuple(ball_m for ball_m in left if ball_m > NEAR)


def yarn_had(colour: ColourEstimate, yarn: Yarn, taken: Sequence[YarnTaken]) -> YarnHad:
    """Return the balls of a colour: those of the estimate, until any are told to be taken.

    From then on it is what was told, and only that. The lot is the last that was named.
    """
    if not taken:
        lots = [ball.lot for ball in colour.choice.stock]
        return YarnHad(balls_m=colour.balls_m, lot=_last_named(lots))
    weights = (weight for line in taken for weight in _balls_g(line, yarn))
    return YarnHad(
        balls_m=tuple(weight * colour.metres_per_gram for weight in weights),
        lot=_last_named([line.lot for line in taken]),
    )


def _balls_g(line: YarnTaken, yarn: Yarn) -> Iterator[float]:
    """Yield the balls that were taken: as they are sold, the largest that fit, or a part ball."""
    sold = sorted((put_up.weight_g for put_up in yarn.put_ups), reverse=True)
    for ball_g in () if line.from_shelf else sold:
        balls = round(line.grams / ball_g)
        if balls and abs(balls * ball_g - line.grams) <= NEAR * line.grams:
            yield from [ball_g] * balls
            return
    yield line.grams


def _last_named(lots: Sequence[str]) -> str:
    return next((lot for lot in reversed(lots) if lot), "")
