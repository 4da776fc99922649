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

from quoting.core.estimate.cover import best_filling, best_subset
from quoting.core.estimate.picks import Pick, Piece, Ranked, best_pick, most_pieces, rank_pieces
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.sameness import NEAR
from quoting.core.workshop.yarns import PutUp, Stock, Yarn

UM_PER_M = 1_000_000

MOST_BALLS = 2_000
"""Balls of one colour; more of them is a slip in the yarn's figures."""


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
    """The balls of one colour, largest first: new ones, and those from stock."""

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

    def balls_m(self, metres_per_gram: float) -> tuple[float, ...]:
        """Return each ball's metres in the order of work: from stock, then new, larger first."""
        held = [ball.weight_g * metres_per_gram for ball in self.stock]
        new = [some.put_up.length_m for some in self.bought for _ in range(some.balls)]
        return (*held, *new)


@dataclass(frozen=True, slots=True, kw_only=True)
class Offers:
    """What there is of a colour: balls on the shelf, then put-ups on sale, largest first.

    Each has its piece, of the same place in `pieces`. What does not outlast its tails is left out.
    """

    shelf: tuple[Stock, ...]
    shop: tuple[PutUp, ...]
    pieces: tuple[Piece, ...]

    @property
    def held(self) -> tuple[Piece, ...]:
        """The pieces of the shelf."""
        return self.pieces[: len(self.shelf)]

    def lots(self, ranked: Sequence[Ranked]) -> list[list[Ranked]]:
        """Return the shelf's pieces by lot; a ball without a lot is a lot of its own."""
        lots: dict[Hashable, list[Ranked]] = {}
        for ball, piece in zip(self.shelf, ranked, strict=False):
            lots.setdefault(ball.lot or piece.number, []).append(piece)
        return list(lots.values())

    def kinds(self, ranked: Sequence[Ranked]) -> dict[tuple[float, float], list[Ranked]]:
        """Return the shop's pieces by the ball that they are packs of: its weight and length."""
        kinds: dict[tuple[float, float], list[Ranked]] = {}
        for put_up, piece in zip(self.shop, ranked[len(self.shelf) :], strict=True):
            kinds.setdefault((put_up.weight_g, put_up.length_m), []).append(piece)
        return kinds

    def choice(self, pick: Pick) -> SkeinChoice:
        """Return what was picked of the pieces."""
        counts = pick.counts()
        bought = tuple(
            Bought(put_up=put_up, packs=counts[number])
            for number, put_up in enumerate(self.shop, len(self.shelf))
            if counts[number]
        )
        stock = tuple(ball for number, ball in enumerate(self.shelf) if counts[number])
        return SkeinChoice(bought=bought, stock=stock)


def offers_of(yarn: Yarn, colour: str, tail_m: float) -> Offers:
    """Return what there is of a yarn's colour. A ball brings its length less two tails.

    The order is that of size, so that the order of the file never matters.
    """
    per_gram = min(put_up.exact_price_per_gram for put_up in yarn.put_ups)
    balls = sorted((b for b in yarn.stock if b.colour == colour), key=lambda b: -b.weight_g)
    held = [(ball, _stock_piece(ball, yarn, per_gram, tail_m)) for ball in balls]
    sold = [(put_up, _piece_of(put_up, tail_m)) for put_up in sorted(yarn.put_ups, key=_by_size)]
    shelf = [(ball, piece) for ball, piece in held if piece.gain > 0]
    shop = [(put_up, piece) for put_up, piece in sold if piece.gain > 0]
    return Offers(
        shelf=tuple(ball for ball, _ in shelf),
        shop=tuple(put_up for put_up, _ in shop),
        pieces=tuple(piece for _, piece in (*shelf, *shop)),
    )


def _by_size(put_up: PutUp) -> tuple[float, float, int, Decimal]:
    return -put_up.length_m, -put_up.weight_g, -put_up.pack, put_up.price


def _stock_piece(ball: Stock, yarn: Yarn, per_gram: Fraction, tail_m: float) -> Piece:
    length_m = ball.weight_g * yarn.metres_per_gram
    cost = per_gram * Fraction(repr(ball.weight_g))
    return Piece(_um(length_m - 2 * tail_m), _um(length_m), cost)


def _piece_of(put_up: PutUp, tail_m: float) -> Piece:
    return Piece(
        gain=put_up.pack * _um(put_up.length_m - 2 * tail_m),
        length=put_up.pack * _um(put_up.length_m),
        cost=Fraction(put_up.price),
        balls=put_up.pack,
    )


def _um(length_m: float) -> int:
    return round(length_m * UM_PER_M)


def target_um(need_m: float, tail_m: float) -> int:
    """Return what the balls for a need have to bring, each its length less two tails."""
    return max(1, math.ceil((need_m - 2 * tail_m - NEAR) * UM_PER_M))


def choose_skeins(
    need_m: float, yarn: Yarn, colour: str, *, tail_m: float, mix_lots: bool
) -> SkeinChoice:
    """Return the skeins for `need_m` metres, each strand's tails counted but not those of joins.

    One lot in stock that is enough always comes first and, with `mix_lots`, lots that are enough
    together: what is taken of them is charged by the gram, at the least price for one. Else one
    put-up is bought, in singles or packs, or with `mix_lots` any put-ups and stock together.
    Least cost wins, then least left over of what is taken, then fewest balls, then more of what is
    larger, stock before put-ups. What tails of joins take counts as left over, or they would be a
    reason for more balls. Errors: `balls-too-short` at `yarns` if no ball outlasts its tails.
    """
    if need_m <= NEAR:
        return SkeinChoice()
    offers, target = offers_of(yarn, colour, tail_m), target_um(need_m, tail_m)
    pick = _from_shelf(offers, target, mix_lots=mix_lots)
    pick = pick or _buy(offers, target, mix_lots=mix_lots)
    if pick is None:
        raise refuse("yarns", MistakeCode.BALLS_TOO_SHORT, yarn=yarn.name)
    return offers.choice(pick)


def rank_shelf(offers: Offers, target: int) -> list[Ranked]:
    """Rank what is on the shelf where all of it is free: by what is left over."""
    free = [piece._replace(cost=Fraction(0)) for piece in offers.held]
    return rank_pieces(free, most_pieces(free, target))


def _from_shelf(offers: Offers, target: int, *, mix_lots: bool) -> Pick | None:
    """Choose among the lots that are enough, or where lots may be mixed among all of them."""
    ranked = rank_shelf(offers, target)
    pick = best_pick(best_subset(lot, target) for lot in offers.lots(ranked))
    return pick or (best_subset(ranked, target) if mix_lots else None)


def _buy(offers: Offers, target: int, *, mix_lots: bool) -> Pick | None:
    """Choose new skeins of one put-up, or with `mix_lots` from everything there is."""
    ranked = rank_pieces(offers.pieces, most_pieces(offers.pieces, target))
    held, new = ranked[: len(offers.shelf)], ranked[len(offers.shelf) :]
    if not new:
        return None
    if mix_lots:
        return best_filling(held, new, target)
    kinds = offers.kinds(ranked).values()
    return best_pick(best_filling([], kind, target) for kind in kinds)
