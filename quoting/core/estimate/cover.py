"""Cover a length with pieces at least cost: whole numbers only, exact, no greedy guess.

The idea: of the pieces at will one, the basis, is cheapest for its length, and a best cover is
mostly basis. Whatever is picked beside it wastes something, which adds up: what it costs more than
as much length of the basis. So picks of other pieces are lengthened, the shortest first, and each
is filled up with the basis, which gives a cover and a new best one if it ranks lower. A pick is
dropped for two reasons, and neither can lose the best cover. It wastes as much as the best so far,
or its cost, length and balls cannot come under those of the best even if what is missing came at
the best rate of each: whole units count, so prices in proportion are no trap. Or a shorter pick
whose length leaves the same rest against the basis, or one that the basis lengthens to as much,
wastes no more: whatever the later one adds, the earlier one can add too. Rests are fewer than the
units of the basis and no pick passes the target, so it ends; what is left was not beaten.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from heapq import heappop, heappush
from typing import NamedTuple

from quoting.core.estimate.picks import Pick, Ranked, best_pick


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
    filling.spread(picks, freely)
    return filling.best


def _with_or_without(picks: Sequence[Pick], piece: Ranked) -> list[Pick]:
    return [*picks, *(pick.plus(piece) for pick in picks)]


def _filled(pick: Pick, basis: Ranked, target: int) -> Pick:
    missing = max(0, target - pick.gain)
    return pick.plus(basis, times=-(-missing // basis.gain))


class _Rates(NamedTuple):
    """The least cost and length for a gain, and the most gain of a ball, of pieces at will."""

    cost: Ranked
    length: Ranked
    ball: Ranked

    @classmethod
    def of(cls, pieces: Sequence[Ranked]) -> _Rates:
        return cls(
            min(pieces, key=lambda piece: Fraction(piece.cost, piece.gain)),
            min(pieces, key=lambda piece: Fraction(piece.length, piece.gain)),
            max(pieces, key=lambda piece: Fraction(piece.gain, piece.balls)),
        )

    def least(self, pick: Pick, target: int) -> tuple[int, int, int]:
        """Return digits that no way to fill a pick up comes under: whole units of each."""
        missing = max(0, target - pick.gain)
        return (
            pick.cost - -missing * self.cost.cost // self.cost.gain,
            pick.length - -missing * self.length.length // self.length.gain,
            pick.balls - -missing * self.ball.balls // self.ball.gain,
        )


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

    def spread(self, picks: Iterable[Pick], freely: Sequence[Ranked]) -> None:
        """Add the pieces at will in every way worth it, the shortest pick first."""
        self.forget()
        others = [piece for piece in freely if piece != self.basis]
        rates = _Rates.of(freely)
        heap = sorted(picks)
        while heap:
            pick = heappop(heap)
            if self.keeps(pick) and rates.least(pick, self.target) <= self.best.digits:
                for place in range(pick.place, len(others)):
                    heappush(heap, pick.plus(others[place], place=place))

    def keeps(self, pick: Pick, saving: int = 0) -> bool:
        """Fill the pick up, and tell whether it can lead to a better one than the best so far."""
        waste = self.waste(pick)
        budget = self.best.rank * self.basis.gain - self.basis.rank * self.target
        if waste + saving >= budget:
            return False
        short = pick.gain < self.target
        if short and not self.stands_out(pick.gain % self.basis.gain, waste):
            return False
        self.best = min(self.best, _filled(pick, self.basis, self.target), key=_rank)
        return short

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
