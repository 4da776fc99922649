"""The shopping list: what the yarn of one order or of several takes from the shelf and the shop.

Orders whose yarn is not told to be there share the shelf once, and are bought for together. Of a
colour that was begun, or of which yarn was got, only what the log says is missing is bought: in
its lot, if that is known, and by itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from quoting.core.estimate.colour_work import ColourWork
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.shared_skeins import (
    FromLot,
    Need,
    NewBalls,
    Portion,
    kind_of,
    packs_for,
)
from quoting.core.estimate.skeins import Bought, offers_of
from quoting.core.estimate.skeins_together import skeins_together
from quoting.core.estimate.yarn_needed import with_reserve
from quoting.core.ground.errors import Refused
from quoting.core.making.log_lines import LogEntry, RowsReached, Session, YarnTaken, YarnUsed
from quoting.core.making.progress import of_colour
from quoting.core.making.shopping_lines import BuyLine, ForOrder, ShelfLine, ShoppingList
from quoting.core.making.yarn_left import YarnLeft, yarn_left
from quoting.core.order.design import ColourSource
from quoting.core.quote.quote import Quote
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Yarn


@dataclass(frozen=True, slots=True, kw_only=True)
class ToMake:
    """An order to buy for: its quote, and what was written down of it."""

    quote: Quote
    entries: tuple[LogEntry, ...] = ()


def shopping_list(orders: Sequence[ToMake], workshop: Workshop) -> ShoppingList:
    """Return the list for some orders, the first of them served first where it matters.

    Yarns, their prices and the shelf are those of the workshop; what an order needs is what its own
    quote estimated. Errors: `balls-too-short` and `too-many-balls`, as for the estimate.
    """
    pools: dict[ColourSource, _Pool] = {}
    there: list[tuple[int, str]] = []
    for number, order in enumerate(orders):
        for colour, left in _colours(order):
            source, yarn = colour.source, _yarn_of(colour.source.yarn, workshop, order.quote)
            pool = pools.setdefault(source, _Pool(yarn, source.colour))
            if left is None:
                pool.needs.append((number, _need(colour, order.quote)))
            elif left.to_buy.skeins:
                pool.missing.append((number, left))
            else:
                there.append((number, colour.colour))
    by_yarn = sorted(pools.values(), key=lambda pool: _first_of(pool.yarn.name, pools))
    found = [(pool, *pool.shared()) for pool in by_yarn]
    return ShoppingList(
        shelf=tuple(line for _, held, _ in found for line in held),
        to_buy=tuple(line for pool, _, new in found for line in (*new, *pool.lines_missing())),
        there=tuple(there),
    )


def _first_of(yarn: str, pools: dict[ColourSource, _Pool]) -> int:
    return [source.yarn for source in pools].index(yarn)


def _colours(order: ToMake) -> Iterator[tuple[ColourEstimate, YarnLeft | None]]:
    """Yield each colour, and what is left of it where its yarn is there, wholly or in part."""
    quote, entries = order.quote, order.entries
    if not any(
        isinstance(entry.line, YarnTaken | YarnUsed | RowsReached | Session) for entry in entries
    ):
        yield from ((colour, None) for colour in quote.estimate.colours)
        return
    for colour, left in zip(quote.estimate.colours, yarn_left(quote, entries), strict=True):
        yield colour, left if left.rows_done or _is_told(order, colour.colour) else None


def _is_told(order: ToMake, colour: str) -> bool:
    """Return whether yarn of a colour was got or used, as the log tells."""
    quote, entries = order.quote, order.entries
    got = of_colour(quote, entries, YarnTaken, colour)
    return bool(got or of_colour(quote, entries, YarnUsed, colour))


def _need(colour: ColourEstimate, quote: Quote) -> Need:
    work = ColourWork(
        yarn=colour.yarn, visits=colour.visits, blankets=colour.blankets, habits=colour.habits
    )
    return Need(
        need_m=with_reserve(colour.bare_m, colour.yarn.extras_m, colour.reserve),
        share=colour.reserve,
        work=work,
        mix_lots=quote.order.design.mix_lots,
    )


def _yarn_of(name: str, workshop: Workshop, quote: Quote) -> Yarn:
    """Return a yarn as it is sold now; one that the workshop has no more, as it was."""
    try:
        return workshop.yarn(name)
    except Refused:
        return quote.workshop.yarn(name)


class _Pool:
    """All that is needed of one colour of a yarn."""

    def __init__(self, yarn: Yarn, colour: str) -> None:
        self.yarn, self.colour = yarn, colour
        self.needs: list[tuple[int, Need]] = []
        self.missing: list[tuple[int, YarnLeft]] = []

    @property
    def code(self) -> str:
        return self.yarn.colours.get(self.colour, "")

    def shared(self) -> tuple[list[ShelfLine], list[BuyLine]]:
        """Return what is shared: from the shelf, and new."""
        if not self.needs:
            return [], []
        found = skeins_together([need for _, need in self.needs], self.yarn, self.colour)
        return [self._shelf_line(lot) for lot in found.held], [self._line(new) for new in found.new]

    def lines_missing(self) -> Iterator[BuyLine]:
        """Yield what is to be bought for yarn that is there already, in part."""
        for number, left in self.missing:
            for kind in dict.fromkeys(kind_of(some.put_up) for some in left.to_buy.bought):
                bought = tuple(b for b in left.to_buy.bought if kind_of(b.put_up) == kind)
                balls = sum(some.balls for some in bought)
                yield BuyLine(
                    yarn=self.yarn.name,
                    colour=self.colour,
                    code=self.code,
                    lot=left.lot,
                    bought=bought,
                    with_spare=self._packs(bought, balls + 1),
                    portions=(ForOrder(order=number, grams=balls * kind[0]),),
                )

    def _shelf_line(self, held: FromLot) -> ShelfLine:
        return ShelfLine(
            yarn=self.yarn.name,
            colour=self.colour,
            code=self.code,
            lot=held.lot,
            portions=self._portions(held.portions),
        )

    def _line(self, new: NewBalls) -> BuyLine:
        return BuyLine(
            yarn=self.yarn.name,
            colour=self.colour,
            code=self.code,
            bought=new.bought,
            with_spare=self._packs(new.bought, new.needed + 1),
            portions=self._portions(new.portions),
        )

    def _portions(self, portions: Sequence[Portion]) -> tuple[ForOrder, ...]:
        per_gram = self.yarn.metres_per_gram
        return tuple(
            ForOrder(order=self.needs[portion.need][0], grams=portion.metres / per_gram)
            for portion in portions
        )

    def _packs(self, bought: Sequence[Bought], balls: int) -> tuple[Bought, ...]:
        kind = kind_of(bought[0].put_up)
        sold = offers_of(self.yarn, self.colour, 0.0).shop
        still_sold = tuple(one for one in sold if kind_of(one) == kind)
        return packs_for(balls, still_sold or tuple(some.put_up for some in bought))
