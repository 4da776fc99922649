"""Cover a length with pieces at least cost: whole numbers only, exact, no greedy guess.

Every choice has one whole number, its rank, that orders all choices strictly, so the best one is
unique and everything at least as bad as something else can be dropped.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from heapq import heappop, heappush
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
    """Piece `number` of a list. Ranks add up; of two choices the one of lower rank is better."""

    number: int
    gain: int
    rank: int


class Pick(NamedTuple):
    """Pieces taken; `place` is the first that may still be added, so that no pick comes twice.

    `taken` is a chain of (the chain before, number, times), which is quick to lengthen.
    """

    gain: int = 0
    rank: int = 0
    place: int = 0
    taken: Chain = None

    def plus(self, piece: Ranked, *, place: int = 0, times: int = 1) -> Pick:
        """Return this pick with some of one piece more."""
        gain, rank = self.gain + times * piece.gain, self.rank + times * piece.rank
        return Pick(gain, rank, place, (self.taken, piece.number, times))

    def counts(self) -> Counter[int]:
        """Return how many of each numbered piece are taken."""
        counts: Counter[int] = Counter()
        chain = self.taken
        while chain:
            chain, number, times = chain
            counts[number] += times
        return counts


def rank_pieces(pieces: Sequence[Piece], target: int) -> list[Ranked]:
    """Rank by least cost, then length, then balls, then more of the pieces listed earlier.

    These are the digits of the rank. A best choice can spare nothing, so it holds at most
    `most` - 1 of a piece, and the base of each digit is more than that digit can come to.
    """
    most = target // min((piece.gain for piece in pieces), default=1) + 2
    length_base = most * max((piece.length for piece in pieces), default=0) + 1
    balls_base = most * max((piece.balls for piece in pieces), default=0)
    order_base = most ** len(pieces)
    unit = math.lcm(*(piece.cost.denominator for piece in pieces))
    ranked = []
    for number, piece in enumerate(pieces):
        rank = int(piece.cost * unit) * length_base + piece.length
        rank = (rank * balls_base + piece.balls) * order_base - most ** (len(pieces) - 1 - number)
        ranked.append(Ranked(number, piece.gain, rank))
    return ranked


def best_pick(picks: Iterable[Pick | None]) -> Pick | None:
    """Return the pick of least rank, or None where there is none."""
    return min((pick for pick in picks if pick), key=lambda pick: pick.rank, default=None)


def best_subset(pieces: Sequence[Ranked], target: int) -> Pick | None:
    """Return the best pick of `pieces`, each there once, that comes to `target`, or None."""
    to_come = sum(piece.gain for piece in pieces)
    best, short = None, [Pick()]
    for piece in pieces:
        to_come -= piece.gain
        picks = {pick.gain: pick for pick in sorted(_with_or_without(short, piece), reverse=True)}
        best = best_pick([best, *(pick for pick in picks.values() if pick.gain >= target)])
        short = [pick for pick in picks.values() if target - to_come <= pick.gain < target]
    return best


def best_filling(once: Sequence[Ranked], freely: Sequence[Ranked], target: int) -> Pick:
    """Return the best pick that comes to `target` from pieces there once and others at will.

    One of those at will, the basis, is the cheapest for its length and fills what is missing. Any
    other piece wastes something beside it, and no pick may waste more than the best one so far.
    Errors: ValueError if `freely` is empty.
    """
    basis = min(freely, key=lambda piece: Fraction(piece.rank, piece.gain))
    filling = _Filling(basis=basis, target=target, best=_filled(Pick(), basis, target))
    picks = [Pick()]
    for place, piece in enumerate(once):
        saving = sum(min(0, filling.waste(later)) for later in once[place + 1 :])
        picks = filling.sift(_with_or_without(picks, piece), saving)
    filling.spread(picks, [piece for piece in freely if piece != basis])
    return filling.best


def _with_or_without(picks: Sequence[Pick], piece: Ranked) -> list[Pick]:
    return [*picks, *(pick.plus(piece) for pick in picks)]


def _filled(pick: Pick, basis: Ranked, target: int) -> Pick:
    missing = max(0, target - pick.gain)
    return pick.plus(basis, times=-(-missing // basis.gain))


@dataclass(slots=True, kw_only=True)
class _Filling:
    """The search for the best filling: what is known so far."""

    basis: Ranked
    target: int
    best: Pick
    rests: list[int] = field(default_factory=list)
    least: dict[int, int] = field(default_factory=dict)

    def waste(self, taken: Pick | Ranked) -> int:
        """Return how much worse it is than as much length of the basis; it adds up."""
        return taken.rank * self.basis.gain - self.basis.rank * taken.gain

    def sift(self, picks: Iterable[Pick], saving: int = 0) -> list[Pick]:
        """Return the picks worth going on with, where what may come can still waste `saving`."""
        self.forget()
        return [pick for pick in sorted(picks) if self.keeps(pick, saving)]

    def spread(self, picks: Iterable[Pick], others: Sequence[Ranked]) -> None:
        """Add the pieces at will in every way worth it, the shortest pick first."""
        self.forget()
        heap = sorted(picks)
        while heap:
            pick = heappop(heap)
            if self.keeps(pick):
                for place in range(pick.place, len(others)):
                    heappush(heap, pick.plus(others[place], place=place))

    def keeps(self, pick: Pick, saving: int = 0) -> bool:
        """Fill the pick up, and tell whether it can lead to a better one than the best so far."""
        self.best = min(self.best, _filled(pick, self.basis, self.target), key=_rank)
        waste = self.waste(pick)
        budget = self.best.rank * self.basis.gain - self.basis.rank * self.target
        if pick.gain >= self.target or waste + saving >= budget:
            return False
        return self.stands_out(pick.gain % self.basis.gain, waste)

    def stands_out(self, rest: int, waste: int) -> bool:
        """Tell whether no earlier pick replaces one of this `rest` and waste, and remember it.

        Picks come in order of length, so an earlier one can be lengthened by the basis until it
        is as long or longer. If it is then no worse, it replaces the later whatever both add.
        """
        place = bisect_left(self.rests, rest)
        if self.rests:
            above = self.rests[place % len(self.rests)]
            longer = (above - rest) % self.basis.gain
            if self.least[above] + longer * self.basis.rank <= waste:
                return False
        if rest not in self.least:
            self.rests.insert(place, rest)
        self.least[rest] = waste
        return True

    def forget(self) -> None:
        """Start a new list of picks: only those that may still add the same are compared."""
        self.rests, self.least = [], {}


def _rank(pick: Pick) -> int:
    return pick.rank
