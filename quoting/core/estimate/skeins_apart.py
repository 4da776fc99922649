"""Skeins of one colour for several pieces of work, one after another, each with its own balls.

Each takes what its estimate chooses from what the ones before it left of the shelf, so a shared
lot counts once. New balls are each one's own to the end, but are bought in packs together. With
joins at an edge this is all that can be promised: where balls run out, only the walk of one piece
of work tells how many it takes, and what is left of them may be too short for any row.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from quoting.core.estimate.shared_skeins import (
    FromLot,
    Need,
    NewBalls,
    Portion,
    SharedSkeins,
    kind_of,
    packs_for,
)
from quoting.core.estimate.skeins import UM_PER_M, SkeinChoice, offers_of, target_um
from quoting.core.ground.measures import LEAST_G
from quoting.core.workshop.yarns import Stock, Yarn

Kind = tuple[float, float]


def skeins_apart(needs: Sequence[Need], yarn: Yarn, colour: str) -> SharedSkeins:
    """Return the skeins for each need in its turn. Errors: as `choose`."""
    tally = _Tally(yarn, colour)
    for number, need in enumerate(needs):
        tally.take(number, need)
    return SharedSkeins(held=tuple(tally.from_lots()), new=tuple(tally.to_buy()))


class _Tally:
    def __init__(self, yarn: Yarn, colour: str) -> None:
        self.left, self.colour = yarn, colour
        self.held: dict[str, list[Portion]] = {}
        self.needed: dict[Kind, int] = {}
        self.balls: dict[Kind, int] = {}
        self.new: dict[Kind, list[Portion]] = {}

    def take(self, number: int, need: Need) -> None:
        """Take what one need has of the shelf, and note what is to be bought for it."""
        choice = need.alone(self.left, self.colour)
        balls = len(choice.stock) + choice.skeins
        left_m = need.need_m + max(0, balls - 1) * 2 * need.tail_m
        for ball in choice.stock:
            ball_m = self.left.length_of(ball)
            taken_m = ball_m if need.at_an_edge else min(ball_m, left_m)
            left_m -= taken_m
            self.held.setdefault(ball.lot, []).append(Portion(need=number, metres=taken_m))
            self._leave(ball, ball.weight_g - taken_m / self.left.metres_per_gram)
        self._buy(number, need, choice, left_m)

    def _leave(self, ball: Stock, rest_g: float) -> None:
        stock = list(self.left.stock)
        stock.remove(ball)
        if rest_g > LEAST_G:
            stock.append(replace(ball, weight_g=rest_g))
        self.left = replace(self.left, stock=tuple(stock))

    def _buy(self, number: int, need: Need, choice: SkeinChoice, left_m: float) -> None:
        for kind in dict.fromkeys(kind_of(some.put_up) for some in choice.bought):
            balls = sum(some.balls for some in choice.bought if kind_of(some.put_up) == kind)
            portion = Portion(need=number, metres=max(0.0, min(left_m, balls * kind[1])))
            left_m -= portion.metres
            self.balls[kind] = self.balls.get(kind, 0) + balls
            self.needed[kind] = self.needed.get(kind, 0) + min(balls, _fewest(need, kind, choice))
            self.new.setdefault(kind, []).append(portion)

    def from_lots(self) -> Iterator[FromLot]:
        for lot, portions in self.held.items():
            yield FromLot(lot=lot, portions=_joined(portions))

    def to_buy(self) -> Iterator[NewBalls]:
        sold = offers_of(self.left, self.colour, 0.0).shop
        for kind, balls in self.balls.items():
            yield NewBalls(
                bought=packs_for(balls, tuple(one for one in sold if kind_of(one) == kind)),
                needed=self.needed[kind],
                portions=tuple(self.new[kind]),
            )


def _fewest(need: Need, kind: Kind, choice: SkeinChoice) -> int:
    """Return how many of the balls bought are needed: a pack may bring more."""
    if need.at_an_edge or need.mix_lots:
        return choice.skeins
    gain_um = round((kind[1] - 2 * need.tail_m) * UM_PER_M)
    return -(-target_um(need.need_m, need.tail_m) // gain_um)


def _joined(portions: Sequence[Portion]) -> tuple[Portion, ...]:
    """Return the portions of each need as one."""
    metres: dict[int, float] = {}
    for portion in portions:
        metres[portion.need] = metres.get(portion.need, 0.0) + portion.metres
    return tuple(Portion(need=need, metres=length) for need, length in metres.items())
