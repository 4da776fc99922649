"""Skeins of one colour for several pieces of work together: what is left of a ball goes on.

What one need leaves of its last ball begins the next, as several blankets alike are worked, and as
there a ball that is used up wastes no more than two tails. So needs that take from one lot, or from
new balls of one kind, are enough served where these come to the sum of them; no need is cut in two,
but those that may mix lots, which take what is left wherever it lies. Which purchase is cheapest is
asked as at an edge: covers of the metres come in the order of their cost, and each is asked whether
the needs fit into it and into the lots of the shelf; what the shelf can hold at best bounds from
below what has to be bought. The first cover that fits is the cheapest, for all that are cheaper
were asked. It ends, since of one kind alone enough balls always fit, and only covers cheaper than
that are asked. Where needs end just with their balls, tails that are reckoned here are not needed:
so what each would have for itself, one after another, is taken where it costs less.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice

from quoting.core.estimate.cover import best_filling
from quoting.core.estimate.covers_in_order import covers_in_order
from quoting.core.estimate.fitting import fit, most_held
from quoting.core.estimate.picks import Pick, Ranked, best_pick, most_pieces, rank_pieces
from quoting.core.estimate.shared_skeins import (
    FromLot,
    Need,
    NewBalls,
    Portion,
    SharedSkeins,
    kind_of,
)
from quoting.core.estimate.skeins import UM_PER_M, Offers, offers_of
from quoting.core.estimate.skeins_apart import skeins_apart
from quoting.core.ground.sameness import NEAR
from quoting.core.workshop.yarns import Yarn

MOST_ASKED = 400
"""Purchases that are asked whether all fits, at the most; a few do in any list of a maker's."""


def skeins_together(needs: Sequence[Need], yarn: Yarn, colour: str) -> SharedSkeins:
    """Return the skeins for all needs, the cheapest that are bought beside the shelf.

    One alone has what its estimate chooses. Errors: as `choose`.
    """
    apart = skeins_apart(needs, yarn, colour)
    if len(needs) == 1 or any(need.at_an_edge for need in needs):
        return apart
    shared = _Sharing.of(needs, yarn, colour).best()
    return apart if shared is None or apart.cost < shared.cost else shared


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sharing:
    """Needs and what there is for them, in whole micrometres; `lots` have the pieces of each."""

    needs: Sequence[Need]
    offers: Offers
    names: tuple[str, ...]
    lots: tuple[int, ...]
    tails: int
    ranked: Sequence[Ranked]

    @classmethod
    def of(cls, needs: Sequence[Need], yarn: Yarn, colour: str) -> _Sharing:
        tail_m = max(need.tail_m for need in needs)
        offers = offers_of(yarn, colour, tail_m)
        lots: dict[str | int, int] = {}
        names: dict[str | int, str] = {}
        for number, (ball, piece) in enumerate(zip(offers.shelf, offers.held, strict=True)):
            lots[ball.lot or number] = lots.get(ball.lot or number, 0) + piece.gain
            names[ball.lot or number] = ball.lot
        smallest_first = sorted(lots, key=lambda lot: lots[lot])
        all_um = sum(_um(need.need_m) for need in needs)
        return cls(
            needs=needs,
            offers=offers,
            names=tuple(names[lot] for lot in smallest_first),
            lots=tuple(lots[lot] for lot in smallest_first),
            tails=round(2 * tail_m * UM_PER_M),
            ranked=rank_pieces(offers.pieces, 2 * most_pieces(offers.pieces, all_um)),
        )

    @property
    def new(self) -> Sequence[Ranked]:
        """The pieces of the shop."""
        return self.ranked[len(self.offers.shelf) :]

    @property
    def whole(self) -> list[int]:
        """The needs that are not cut in two, by their places."""
        return [number for number, need in enumerate(self.needs) if not need.mix_lots]

    def lengths(self, numbers: Sequence[int]) -> list[int]:
        """Return how long some needs are."""
        return [_um(self.needs[number].need_m) for number in numbers]

    @property
    def lot_rooms(self) -> list[int]:
        """How much each lot holds: what its last ball has beyond its tails can be worked, too."""
        return [lot + self.tails for lot in self.lots]

    def kind_rooms(self, pick: Pick) -> list[int]:
        """Return how much the balls of each kind hold that are bought."""
        counts = pick.counts()
        gains = (
            sum(counts[piece.number] * piece.gain for piece in kind)
            for kind in self.offers.kinds(self.ranked).values()
        )
        return [gain + self.tails if gain else 0 for gain in gains]

    @property
    def least_um(self) -> int:
        """What new balls have to bring at least: what no sharing of the shelf saves."""
        lengths = self.lengths(self.whole)
        unheld = sum(lengths) - most_held(lengths, self.lot_rooms)
        return max(unheld - self.tails, self.mixed_um, int(unheld > 0))

    @property
    def mixed_um(self) -> int:
        """What new balls have to bring so that those who may mix lots have enough."""
        if len(self.whole) == len(self.needs):
            return 0
        everything = sum(self.lengths(range(len(self.needs))))
        return max(0, everything - self.tails - sum(self.lots))

    def fitting(self, pick: Pick) -> tuple[int, ...] | None:
        """Return the room of each need that is not cut in two, the lots first, if all can be."""
        return fit(self.lengths(self.whole), [*self.lot_rooms, *self.kind_rooms(pick)])

    def best(self) -> SharedSkeins | None:
        """Return the cheapest purchase that serves, None where none was found."""
        for pick in self.picks():
            rooms = self.fitting(pick)
            if rooms is not None:
                return self.shared(pick, rooms)
        return None

    def picks(self) -> Iterator[Pick]:
        """Yield what could be bought, the cheapest first, and in the end what is sure to serve."""
        least = self.least_um
        if not least:
            yield Pick()
        kinds = self.offers.kinds(self.ranked).values()
        surest = best_pick(best_filling([], kind, max(1, least)) for kind in kinds)
        if surest is not None:
            spared = self.tails * (len(kinds) - 1)
            target = max(1, self.mixed_um, least - spared)
            covers = covers_in_order([], self.new, target, below=surest.rank)
            yield from islice(covers, MOST_ASKED)
            yield surest

    def shared(self, pick: Pick, rooms: Sequence[int]) -> SharedSkeins:
        """Return who has what of a purchase and of the shelf."""
        sizes = [*self.lot_rooms, *self.kind_rooms(pick)]
        portions: list[list[Portion]] = [[] for _ in sizes]
        for number, room in zip(self.whole, rooms, strict=True):
            length = _um(self.needs[number].need_m)
            sizes[room] -= length
            portions[room].append(Portion(need=number, metres=length / UM_PER_M))
        for number, need in enumerate(self.needs):
            if need.mix_lots:
                self.spread(number, sizes, portions)
        lots = len(self.lots)
        return SharedSkeins(
            held=tuple(
                FromLot(lot=name, portions=tuple(some))
                for name, some in zip(self.names, portions[:lots], strict=True)
                if some
            ),
            new=tuple(self.bought(pick, portions[lots:])),
        )

    def spread(self, number: int, sizes: list[int], portions: list[list[Portion]]) -> None:
        """Give a need that may mix lots what is left, wherever it lies."""
        wanted = _um(self.needs[number].need_m)
        for room, size in enumerate(sizes):
            taken = min(size, wanted)
            if taken:
                sizes[room] -= taken
                wanted -= taken
                portions[room].append(Portion(need=number, metres=taken / UM_PER_M))

    def bought(self, pick: Pick, portions: Sequence[Sequence[Portion]]) -> Iterator[NewBalls]:
        """Yield the balls of each kind that are bought."""
        choice, mixes = self.offers.choice(pick), len(self.whole) < len(self.needs)
        kinds = self.offers.kinds(self.ranked).items()
        for (kind, pieces), some in zip(kinds, portions, strict=True):
            packs = tuple(one for one in choice.bought if kind_of(one.put_up) == kind)
            if packs:
                balls = sum(one.balls for one in packs)
                gain = pieces[0].gain // pieces[0].balls
                used = round(math.fsum(portion.metres for portion in some) * UM_PER_M)
                fewest = max(1, -(-(used - self.tails) // gain))
                needed = balls if mixes else min(balls, fewest)
                yield NewBalls(bought=packs, needed=needed, portions=tuple(some))


def _um(need_m: float) -> int:
    return max(1, math.ceil((need_m - NEAR) * UM_PER_M))
