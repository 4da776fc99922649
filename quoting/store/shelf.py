"""The shelf as it is now: the lots that the workshop has, each with the grams that are left."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, replace

from sqlalchemy import Connection, delete, func, insert, select, update

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks, refuse
from quoting.core.ground.measures import LEAST_G
from quoting.core.ground.sameness import NEAR
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Stock
from quoting.store.book import Book
from quoting.store.tables import LOTS


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """A ball of a dye lot, or the rest of one; its `id` stays, however much is left of it."""

    id: int
    yarn: str
    colour: str
    lot: str
    grams: float

    @property
    def identity(self) -> tuple[str, str, str]:
        """What it is known by when the workshop is saved anew."""
        return self.yarn, self.colour, self.lot


def lots_on_shelf(book: Book) -> tuple[Lot, ...]:
    """Return the lots, in the order that the workshop lists them."""
    with book.reading() as connection:
        return lots_in(connection)


def lots_in(connection: Connection) -> tuple[Lot, ...]:
    """Return the lots that a connection sees."""
    columns = (LOTS.c.id, LOTS.c.yarn, LOTS.c.colour, LOTS.c.lot, LOTS.c.grams)
    rows = connection.execute(select(*columns).order_by(LOTS.c.position))
    return tuple(Lot(**row._mapping) for row in rows)


def weigh_lot(book: Book, lot_id: int, grams: float) -> None:
    """Keep what the rest of a lot weighs now; the workshop's versions stay as they are.

    Errors: `lot-missing`; as a `Stock` refuses its grams.
    """
    checks = Checks()
    checks.number("grams", grams, above=0, most=100_000)
    checks.done()
    with book.writing() as connection:
        done = connection.execute(update(LOTS).where(LOTS.c.id == lot_id).values(grams=grams))
        if not done.rowcount:
            raise refuse("", MistakeCode.LOT_MISSING)


def take_from_shelf(connection: Connection, what: tuple[str, str, str], grams: float) -> None:
    """Take grams of a lot, known by its `identity`, the balls that are listed first before others.

    Errors: `lot-missing` at `lot` where there is none of it; `lot-too-small` at `grams`.
    """
    balls = [lot for lot in lots_in(connection) if lot.identity == what]
    if not balls:
        raise refuse("lot", MistakeCode.LOT_MISSING)
    held = math.fsum(ball.grams for ball in balls)
    if grams > held + NEAR:
        raise refuse("grams", MistakeCode.LOT_TOO_SMALL, read=grams, limit=held)
    for ball in balls:
        taken = min(ball.grams, grams)
        grams -= taken
        _leave(connection, ball.id, ball.grams - taken)


def give_back_to_shelf(connection: Connection, what: tuple[str, str, str], grams: float) -> None:
    """Put grams of a lot back: to its first ball that is there, or as a ball of its own."""
    lots = lots_in(connection)
    for lot in lots:
        if lot.identity == what:
            _leave(connection, lot.id, lot.grams + grams)
            return
    yarn, colour, name = what
    last = connection.scalar(select(func.max(LOTS.c.position))) or 0
    row = {"yarn": yarn, "colour": colour, "lot": name, "grams": grams, "position": last + 1}
    connection.execute(insert(LOTS).values(**row))


def _leave(connection: Connection, lot_id: int, grams: float) -> None:
    """Leave so many grams of a ball; where that is nothing, it is gone."""
    its = LOTS.c.id == lot_id
    if grams < LEAST_G:
        connection.execute(delete(LOTS).where(its))
    else:
        connection.execute(update(LOTS).where(its).values(grams=grams))


def put_on_shelf(connection: Connection, workshop: Workshop) -> None:
    """Make the shelf what a workshop says; a lot that was there before keeps its id."""
    known: dict[tuple[str, str, str], list[int]] = defaultdict(list)
    for lot in lots_in(connection):
        known[lot.identity].append(lot.id)
    for position, (yarn, stock) in enumerate(_stocks(workshop), 1):
        same = known[yarn, stock.colour, stock.lot]
        place = {"position": position, "grams": stock.weight_g}
        if same:
            connection.execute(update(LOTS).where(LOTS.c.id == same.pop(0)).values(**place))
        else:
            row = place | {"yarn": yarn, "colour": stock.colour, "lot": stock.lot}
            connection.execute(insert(LOTS).values(**row))
    gone = [lot_id for ids in known.values() for lot_id in ids]
    if gone:
        connection.execute(delete(LOTS).where(LOTS.c.id.in_(gone)))


def with_shelf(workshop: Workshop, lots: tuple[Lot, ...]) -> Workshop:
    """Return a workshop whose yarns have what is on the shelf now."""
    yarns = (
        replace(
            yarn,
            stock=tuple(
                Stock(colour=lot.colour, weight_g=lot.grams, lot=lot.lot)
                for lot in lots
                if lot.yarn == yarn.name
            ),
        )
        for yarn in workshop.yarns
    )
    return replace(workshop, yarns=tuple(yarns))


def shelf_is(workshop: Workshop, lots: tuple[Lot, ...]) -> bool:
    """Return whether the yarns of a workshop have just those lots."""
    has = sorted((yarn, *_known_by(stock)) for yarn, stock in _stocks(workshop))
    return has == sorted((lot.yarn, lot.colour, lot.lot, lot.grams) for lot in lots)


def _known_by(stock: Stock) -> tuple[str, str, float]:
    return stock.colour, stock.lot, stock.weight_g


def _stocks(workshop: Workshop) -> Iterator[tuple[str, Stock]]:
    for yarn in workshop.yarns:
        for stock in yarn.stock:
            yield yarn.name, stock
