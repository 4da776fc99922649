"""What several pieces of work need of one colour of a yarn, and what they get for it together."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quoting.core.estimate.colour_work import ColourWork
from quoting.core.estimate.cover import best_filling
from quoting.core.estimate.picks import Piece, most_pieces, rank_pieces
from quoting.core.estimate.skeins import UM_PER_M, Bought, SkeinChoice
from quoting.core.workshop.habits import Join
from quoting.core.workshop.yarns import PutUp, Yarn


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """What one piece of work needs: `need_m` with the reserve `share`, without tails of joins."""

    need_m: float
    share: float
    work: ColourWork
    mix_lots: bool = False

    @property
    def tail_m(self) -> float:
        """The length of a tail."""
        return self.work.habits.tail_m

    @property
    def at_an_edge(self) -> bool:
        """Whether only a walk tells which balls are enough."""
        return self.work.habits.join is Join.AT_AN_EDGE

    def alone(self, yarn: Yarn, colour: str) -> SkeinChoice:
        """Return the skeins for it, as its estimate chooses them. Errors: as `choose`."""
        return self.work.choose(self.need_m, self.share, yarn, colour, mix_lots=self.mix_lots)


@dataclass(frozen=True, slots=True, kw_only=True)
class Portion:
    """What one of several needs has of something: its place among them, and metres."""

    need: int
    metres: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FromLot:
    """What is taken of a lot on the shelf, which may have no name."""

    lot: str
    portions: tuple[Portion, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NewBalls:
    """Balls of one weight and length to buy of one dye lot; `needed` of them are enough."""

    bought: tuple[Bought, ...]
    needed: int
    portions: tuple[Portion, ...]

    @property
    def balls(self) -> int:
        """How many balls come with it."""
        return sum(some.balls for some in self.bought)

    @property
    def cost(self) -> Decimal:
        """Money for them, unrounded."""
        return cost_of(self.bought)


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedSkeins:
    """What several needs take from the shelf, and what is bought for them together."""

    held: tuple[FromLot, ...] = ()
    new: tuple[NewBalls, ...] = ()

    @property
    def cost(self) -> Decimal:
        """Money for the new balls, unrounded."""
        return sum((some.cost for some in self.new), Decimal(0))


def cost_of(bought: tuple[Bought, ...]) -> Decimal:
    """Return the money for some packs, unrounded."""
    return sum((some.cost for some in bought), Decimal(0))


def kind_of(put_up: PutUp) -> tuple[float, float]:
    """Return the ball that a put-up has, singly or in packs: its weight and its length."""
    return put_up.weight_g, put_up.length_m


def packs_for(balls: int, put_ups: tuple[PutUp, ...]) -> tuple[Bought, ...]:
    """Return the cheapest packs and single balls of one kind, of so many balls or more."""
    pieces = [
        Piece(
            gain=put_up.pack,
            length=put_up.pack * round(put_up.length_m * UM_PER_M),
            cost=Fraction(put_up.price),
            balls=put_up.pack,
        )
        for put_up in put_ups
    ]
    counts = best_filling([], rank_pieces(pieces, most_pieces(pieces, balls)), balls).counts()
    return tuple(
        Bought(put_up=put_up, packs=counts[number])
        for number, put_up in enumerate(put_ups)
        if counts[number]
    )
