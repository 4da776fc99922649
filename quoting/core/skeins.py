"""Which whole skeins of one colour to take from stock or to buy, at the least cost, exactly.

A ball after the first costs two more tails, so a ball of m metres brings m - 2 tails towards the
need less two tails. Lengths are counted in whole micrometres and money in whole parts.
"""

from __future__ import annotations

import math
from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quoting.core.cover import (
    Pick,
    Piece,
    Ranked,
    best_filling,
    best_pick,
    best_subset,
    rank_pieces,
)
from quoting.core.errors import refuse
from quoting.core.yarns import PutUp, Stock, Yarn

UM_PER_M = 1_000_000
GRACE_M = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """So many packs of one put-up, new from the shop."""

    put_up: PutUp
    packs: int

    @property
    def balls(self) -> int:
        """How many balls are in the packs."""
        return self.packs * self.put_up.pack

    @property
    def cost(self) -> Decimal:
        """Money for the packs, unrounded."""
        return self.packs * self.put_up.price


@dataclass(frozen=True, slots=True, kw_only=True)
class SkeinChoice:
    """The balls of one colour: new ones, largest first, and those from stock as listed."""

    bought: tuple[Bought, ...] = ()
    stock: tuple[Stock, ...] = ()

    @property
    def skeins(self) -> int:
        """How many new balls there are."""
        return sum(some.balls for some in self.bought)

    @property
    def cost(self) -> Decimal:
        """Money for the new balls, unrounded."""
        return sum((some.cost for some in self.bought), Decimal(0))

    @property
    def bought_g(self) -> float:
        """Grams of the new balls."""
        return math.fsum(some.balls * some.put_up.weight_g for some in self.bought)

    def full_ball_m(self, metres_per_gram: float) -> float:
        """Return the longest ball that more can be had of: a new one, else one from stock."""
        sold = [some.put_up.length_m for some in self.bought]
        return max(sold or self.balls_m(metres_per_gram), default=0.0)

    def balls_m(self, metres_per_gram: float) -> tuple[float, ...]:
        """Return each ball's metres in the order of work: from stock, then new, larger first."""
        held = [ball.weight_g * metres_per_gram for ball in self.stock]
        new = [some.put_up.length_m for some in self.bought for _ in range(some.balls)]
        return (*held, *new)


def choose_skeins(
    need_m: float, yarn: Yarn, colour: str, *, tail_m: float, mix_lots: bool
) -> SkeinChoice:
    """Return the skeins for `need_m` metres, each strand's tails counted but not those of joins.

    One lot in stock that is enough always comes first. Else one put-up is bought, in singles or
    packs, or with `mix_lots` any put-ups and stock together, stock at the least price for a gram.
    Least cost wins, then least left over of what is taken, then fewest balls, then more of what is
    listed earlier, stock before put-ups. What tails of joins take counts as left over, or they
    would be a reason for more balls. Errors: `balls-too-short` at `yarns` if no ball outlasts
    its tails.
    """
    if need_m <= GRACE_M:
        return SkeinChoice()
    target_um = max(1, math.ceil((need_m - 2 * tail_m - GRACE_M) * UM_PER_M))
    shelf, shop = _shelf(yarn, colour, tail_m), _shop(yarn, tail_m)
    pick = _one_lot(shelf, target_um) or _buy(shelf, shop, target_um, mix_lots=mix_lots)
    if pick is None:
        raise refuse("yarns", "balls-too-short", yarn=yarn.name)
    return _choice(pick, shelf, shop)


def _shelf(yarn: Yarn, colour: str, tail_m: float) -> list[tuple[Stock, Piece]]:
    """Return the balls of a colour that outlast their tails, each with what it brings."""
    balls = [ball for ball in yarn.stock if ball.colour == colour]
    per_gram = min(put_up.exact_price_per_gram for put_up in yarn.put_ups)
    lengths = [ball.weight_g * yarn.metres_per_gram for ball in balls]
    pieces = [
        Piece(_gain_um(length_m, tail_m), _um(length_m), per_gram * Fraction(repr(ball.weight_g)))
        for ball, length_m in zip(balls, lengths, strict=True)
    ]
    return [both for both in zip(balls, pieces, strict=True) if both[1].gain > 0]


def _shop(yarn: Yarn, tail_m: float) -> list[tuple[PutUp, Piece]]:
    """Return the put-ups whose balls outlast their tails, each with what a pack brings."""
    pieces = [_piece_of(put_up, tail_m) for put_up in yarn.put_ups]
    return [both for both in zip(yarn.put_ups, pieces, strict=True) if both[1].gain > 0]


def _piece_of(put_up: PutUp, tail_m: float) -> Piece:
    return Piece(
        gain=put_up.pack * _gain_um(put_up.length_m, tail_m),
        length=put_up.pack * _um(put_up.length_m),
        cost=Fraction(put_up.price),
        balls=put_up.pack,
    )


def _gain_um(length_m: float, tail_m: float) -> int:
    return _um(length_m - 2 * tail_m)


def _um(length_m: float) -> int:
    return round(length_m * UM_PER_M)


def _one_lot(shelf: Sequence[tuple[Stock, Piece]], target_um: int) -> Pick | None:
    """Choose among the lots that are enough; a ball without a lot is a lot of its own."""
    free = [piece._replace(cost=Fraction(0)) for _, piece in shelf]
    lots: dict[Hashable, list[Ranked]] = {}
    for (ball, _), piece in zip(shelf, rank_pieces(free, target_um), strict=True):
        lots.setdefault(ball.lot or piece.number, []).append(piece)
    return best_pick(best_subset(lot, target_um) for lot in lots.values())


def _buy(
    shelf: Sequence[tuple[Stock, Piece]],
    shop: Sequence[tuple[PutUp, Piece]],
    target_um: int,
    *,
    mix_lots: bool,
) -> Pick | None:
    """Choose new skeins of one put-up, or with `mix_lots` from everything there is."""
    ranked = rank_pieces([piece for _, piece in (*shelf, *shop)], target_um)
    held, new = ranked[: len(shelf)] if mix_lots else [], ranked[len(shelf) :]
    if not new:
        return best_subset(held, target_um)
    groups: dict[Hashable, list[Ranked]] = {}
    for (put_up, _), piece in zip(shop, new, strict=True):
        ball = None if mix_lots else (put_up.weight_g, put_up.length_m)
        groups.setdefault(ball, []).append(piece)
    return best_pick(best_filling(held, group, target_um) for group in groups.values())


def _choice(
    pick: Pick, shelf: Sequence[tuple[Stock, Piece]], shop: Sequence[tuple[PutUp, Piece]]
) -> SkeinChoice:
    counts = pick.counts()
    bought = [
        Bought(put_up=put_up, packs=counts[number])
        for number, (put_up, _) in enumerate(shop, len(shelf))
        if counts[number]
    ]
    stock = tuple(ball for number, (ball, _) in enumerate(shelf) if counts[number])
    return SkeinChoice(bought=tuple(sorted(bought, key=_largest_first)), stock=stock)


def _largest_first(some: Bought) -> tuple[float, float, int]:
    put_up = some.put_up
    return -put_up.length_m, -put_up.weight_g, -put_up.pack
