"""Pieces to choose from, and picks of them: ranked by one whole number, exactly.

Every pick has one whole number, its rank, that orders all picks strictly, so the best one is
unique and everything at least as bad as something else can be dropped.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import NamedTuple, TypeAlias

Chain: TypeAlias = "tuple[Chain, int, int] | None"


class Piece(NamedTuple):
    """Something that can be taken.

    `gain` (over 0) is what it brings towards the target, `length` what there is of it, `cost` what
    it costs, `balls` how many it is.
    """

    gain: int
    length: int
    cost: Fraction
    balls: int = 1


class Ranked(NamedTuple):
    """Piece `number` of a list. Ranks add up; of two choices the one of lower rank is better.

    `cost`, `length` and `balls` are the leading digits of the rank, in units that they share.
    """

    number: int
    gain: int
    rank: int
    cost: int
    length: int
    balls: int


class Pick(NamedTuple):
    """Pieces taken; `place` is the first that may still be added, so that no pick comes twice.

    `taken` is a chain of (the chain before, number, times), which is quick to lengthen.
    """

    gain: int = 0
    rank: int = 0
    place: int = 0
    cost: int = 0
    length: int = 0
    balls: int = 0
    taken: Chain = None

    def plus(self, piece: Ranked, *, place: int = 0, times: int = 1) -> Pick:
        """Return this pick with some of one piece more."""
        return Pick(
            self.gain + times * piece.gain,
            self.rank + times * piece.rank,
            place,
            self.cost + times * piece.cost,
            self.length + times * piece.length,
            self.balls + times * piece.balls,
            (self.taken, piece.number, times),
        )

    @property
    def digits(self) -> tuple[int, int, int]:
        """Return cost, length and balls: what ranks it, but for the order of listing."""
        return self.cost, self.length, self.balls

    def counts(self) -> Counter[int]:
        """Return how many of each numbered piece are taken."""
        counts: Counter[int] = Counter()
        chain = self.taken
        while chain:
            chain, number, times = chain
            counts[number] += times
        return counts


def most_pieces(pieces: Sequence[Piece], target: int) -> int:
    """Return more than the pieces of a best choice, as it can spare none of them."""
    return target // min((piece.gain for piece in pieces), default=1) + 2


def rank_pieces(pieces: Sequence[Piece], most: int) -> list[Ranked]:
    """Rank by least cost, then length, then balls, then more of the pieces listed earlier.

    These are the digits of the rank. A choice ranks right with fewer than `most` pieces in it:
    the base of each digit is more than that digit can come to.
    """
    unit = math.lcm(*(piece.cost.denominator for piece in pieces))
    costs = _in_least_units([int(piece.cost * unit) for piece in pieces])
    lengths = _in_least_units([piece.length for piece in pieces])
    length_base = most * max(lengths, default=0) + 1
    balls_base = most * max((piece.balls for piece in pieces), default=0)
    order_base = most ** len(pieces)
    ranked = []
    for number, (piece, cost, length) in enumerate(zip(pieces, costs, lengths, strict=True)):
        rank = (cost * length_base + length) * balls_base + piece.balls
        rank = rank * order_base - most ** (len(pieces) - 1 - number)
        ranked.append(Ranked(number, piece.gain, rank, cost, length, piece.balls))
    return ranked


def _in_least_units(amounts: Sequence[int]) -> list[int]:
    """Return whole amounts divided by all that they have in common."""
    common = math.gcd(*amounts) or 1
    return [amount // common for amount in amounts]


def best_pick(picks: Iterable[Pick | None]) -> Pick | None:
    """Return the pick of least rank, or None where there is none."""
    return min((pick for pick in picks if pick), key=lambda pick: pick.rank, default=None)
