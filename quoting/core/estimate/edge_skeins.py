"""Skeins where balls are joined at an edge only: the cheapest that the walk gets through with.

How much is wasted at an edge follows from where each ball ends, so no sum of metres tells how many
balls it takes: only the walk does. Covers are asked in the order of their cost, from the cheapest
that has the metres, until the walk gets through with one, so no cheaper one would do. Of balls of
one kind the walk itself tells how many it begins with, and no asking is needed; that also bounds
what is asked of mixed balls, so the asking ends.

A walk with less yarn in every stitch can need a ball more, as its part balls fall otherwise. So
balls must serve with none of the reserve, with all of it and at every hundredth between: a larger
one asks all the hundredths that a smaller one asks, and so does not come to fewer balls.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import islice

from quoting.core.estimate.ball_walk import ColourWalk
from quoting.core.estimate.balls import Supply
from quoting.core.estimate.cover import best_filling
from quoting.core.estimate.covers_in_order import covers_in_order, subsets_in_order
from quoting.core.estimate.picks import Pick, Ranked, best_pick, rank_pieces
from quoting.core.estimate.skeins import (
    MOST_BALLS,
    Offers,
    SkeinChoice,
    offers_of,
    rank_shelf,
    target_um,
)
from quoting.core.ground.sameness import HAIR
from quoting.core.workshop.yarns import Yarn

PASSES_ASKED = 600_000
"""Rows and rounds that are walked with balls that are only asked, at the most."""

FEWEST_ASKED = 3

SHARES = (*(n / 100 for n in range(30)), *(n / 10 for n in range(3, 10)), 1.0, 2.0, 3.0, 5.0)
"""Shares of more yarn at which balls must serve, too, where the reserve is larger."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeWork:
    """What has to be worked of one colour: `walk` with a supply and a share more yarn.

    `passes` is how many passes one walk has; `share` the reserve; `extras_m` comes from what is
    left.
    """

    walk: Callable[[Supply, float], ColourWalk]
    passes: int
    share: float
    extras_m: float

    @property
    def shares(self) -> tuple[float, ...]:
        """The shares of more yarn that balls must serve at: all the reserve first, and none."""
        return (self.share, *(share for share in SHARES if share < self.share))

    def gets_through(self, balls_m: Sequence[float], full_m: float) -> bool:
        """Return whether the balls are enough at every share, and for the extras."""
        walks = (self.walk(Supply(balls_m=balls_m, full_m=full_m), s) for s in self.shares)
        return all(walk.missing_m <= HAIR and self.extras_m <= walk.left_m + HAIR for walk in walks)

    def balls_needed(self, held_m: Sequence[float], more_m: float, full_m: float) -> int | None:
        """Return how many balls of one length are enough after those held; None: none are."""
        supply = Supply(balls_m=held_m, more_m=more_m, full_m=full_m)
        most = 0
        for share in self.shares:
            walk = self.walk(supply, share)
            if walk.missing_m > HAIR:
                return None
            short_m = max(0.0, self.extras_m - walk.left_m - HAIR)
            begun = len(walk.ball_used_m) - len(held_m)
            most = max(most, begun + math.ceil(short_m / more_m))
        return most


def skeins_at_an_edge(
    work: EdgeWork, need_m: float, yarn: Yarn, colour: str, *, tail_m: float, mix_lots: bool
) -> SkeinChoice:
    """Return the cheapest skeins that the work gets through with, `need_m` its least metres.

    They join no row that a ball on sale could finish. As `choose_skeins`, stock that is enough
    comes first.
    """
    search = _Search(
        work=work,
        offers=offers_of(yarn, colour, tail_m),
        metres_per_gram=yarn.metres_per_gram,
        full_m=max(put_up.length_m for put_up in yarn.put_ups),
        target=target_um(need_m, tail_m),
    )
    pick = search.from_shelf(mix_lots=mix_lots) or search.bought(mix_lots=mix_lots)
    assert pick is not None, "some balls are enough where joins are free"  # noqa: S101
    return search.offers.choice(pick)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Search:
    work: EdgeWork
    offers: Offers
    metres_per_gram: float
    full_m: float
    target: int

    def first_of(self, picks: Iterable[Pick]) -> Pick | None:
        """Return the first pick that the work gets through with, of as many as may be asked."""
        asked = max(FEWEST_ASKED, PASSES_ASKED // max(1, self.work.passes))
        return next((pick for pick in islice(picks, asked) if self.serves(pick)), None)

    def serves(self, pick: Pick) -> bool:
        balls_m = self.offers.choice(pick).balls_m(self.metres_per_gram)
        return self.work.gets_through(balls_m, self.full_m)

    def from_shelf(self, *, mix_lots: bool) -> Pick | None:
        """Choose among the lots, or where lots may be mixed among all there is on the shelf."""
        ranked = rank_shelf(self.offers, self.target)
        pick = self.first_of(subsets_in_order(self.offers.lots(ranked), self.target))
        if pick is None and mix_lots:
            return self.first_of(subsets_in_order([ranked], self.target))
        return pick

    def bought(self, *, mix_lots: bool) -> Pick | None:
        """Choose new skeins of one put-up, or with `mix_lots` from everything there is."""
        ranked = rank_pieces(self.offers.pieces, 2 * MOST_BALLS)
        held, new = ranked[: len(self.offers.shelf)], ranked[len(self.offers.shelf) :]
        best = self.of_one_kind(ranked, [])
        if not mix_lots or best is None:
            return best
        with_shelf = self.of_one_kind(ranked, held)
        best = min(best, with_shelf or best, key=lambda pick: pick.rank)
        covers = covers_in_order(held, new, self.target, below=best.rank)
        return self.first_of(covers) or best

    def of_one_kind(self, ranked: Sequence[Ranked], held: Sequence[Ranked]) -> Pick | None:
        """Choose enough balls of one kind, whole packs, after all those held.

        A kind is not walked with whose metres alone rank no better than the best so far.
        """
        shelf = Pick()
        for piece in held:
            shelf = shelf.plus(piece)
        held_m = self.offers.choice(shelf).balls_m(self.metres_per_gram)
        missing = max(0, self.target - shelf.gain)
        kinds = sorted(
            (best_filling([], kind, missing).rank, length_m, kind)
            for (_, length_m), kind in self.offers.kinds(ranked).items()
        )
        best: Pick | None = None
        for least, length_m, kind in kinds:
            if best is not None and shelf.rank + least >= best.rank:
                break
            balls = self.enough(kind[0], length_m, missing, held_m)
            if balls is not None:
                by_ball = [piece._replace(gain=piece.balls) for piece in kind]
                packs = best_filling([], by_ball, balls)
                best = best_pick([best, _with_packs(shelf, packs, ranked)])
        return best

    def enough(
        self, piece: Ranked, length_m: float, missing: int, held_m: Sequence[float]
    ) -> int | None:
        """Return how many balls of one kind bring what is missing and serve, if any number does."""
        fewest = -(-missing * piece.balls // piece.gain)
        needed = self.work.balls_needed(held_m, length_m, self.full_m)
        return None if needed is None else max(fewest, needed)


def _with_packs(pick: Pick, packs: Pick, ranked: Sequence[Ranked]) -> Pick:
    for number, times in packs.counts().items():
        pick = pick.plus(ranked[number], times=times)
    return pick
