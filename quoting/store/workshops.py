"""The workshop in the book: each save is a further version, and nothing is overwritten."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime

from sqlalchemy import Connection, Select, delete, insert, select

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.workshop.workshop import Workshop
from quoting.store.book import Book
from quoting.store.order_renames import rename_in_orders
from quoting.store.records import are_alike, workshop_of, workshop_record
from quoting.store.renames import Renames
from quoting.store.shelf import lots_in, put_on_shelf, shelf_is, with_shelf
from quoting.store.tables import FIRST_ANSWERS
from quoting.store.tables import WORKSHOP_VERSIONS as VERSIONS

_LATEST = select(VERSIONS.c.number).order_by(VERSIONS.c.number.desc()).limit(1)


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkshopVersion:
    """One version, from 1; `brought_back` is the number of the earlier one that it repeats."""

    number: int
    saved_at: datetime
    brought_back: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptWorkshop:
    """A workshop as it is kept, and which version that is."""

    version: WorkshopVersion
    workshop: Workshop


def current_workshop(book: Book, known: KeptWorkshop | None = None) -> KeptWorkshop | None:
    """Return the workshop as it is now, its shelf included; None of a book without any.

    `known` is what was returned before: it is returned again where nothing has changed since, and
    its record is not read anew where only the shelf has.
    """
    with book.reading() as connection:
        if known is None or connection.scalar(_LATEST) != known.version.number:
            return _current(connection)
        lots = lots_in(connection)
    if shelf_is(known.workshop, lots):
        return known
    return replace(known, workshop=with_shelf(known.workshop, lots))


def save_workshop(
    book: Book,
    workshop: Workshop,
    *,
    now: datetime,
    based_on: int | None = None,
    renames: Renames | None = None,
) -> WorkshopVersion:
    """Keep a workshop as the version from now on; where it is as it was, there is no new one.

    `based_on` is the version that was changed; orders that are not yet quoted follow `renames` in
    the same transaction. Errors: `workshop-overtaken` where another has
    been saved since, for it would be undone in silence.
    """
    with book.writing() as connection:
        current = _current(connection)
        if current is not None:
            if are_alike(current.workshop, workshop):
                return current.version
            number = current.version.number
            if based_on not in (None, number):
                raise refuse("", MistakeCode.WORKSHOP_OVERTAKEN, read=number)
        if renames:
            rename_in_orders(connection, renames)
        return _append(connection, workshop, now)


def bring_back(book: Book, number: int, *, now: datetime) -> WorkshopVersion:
    """Keep an earlier version, its shelf included, as the one from now on.

    Errors: `version-missing`.
    """
    with book.writing() as connection:
        earlier = _only(connection, _version(number))
        return _append(connection, earlier.workshop, now, brought_back=number)


def workshop_versions(book: Book) -> tuple[WorkshopVersion, ...]:
    """Return every version, the latest first."""
    with book.reading() as connection:
        columns = (VERSIONS.c.number, VERSIONS.c.saved_at, VERSIONS.c.brought_back)
        rows = connection.execute(select(*columns).order_by(VERSIONS.c.number.desc()))
        return tuple(WorkshopVersion(**row._mapping) for row in rows)


def workshop_version(book: Book, number: int) -> KeptWorkshop:
    """Return the workshop of a version, as it was saved. Errors: `version-missing`."""
    with book.reading() as connection:
        return _only(connection, _version(number))


def workshop_on(book: Book, moment: datetime) -> KeptWorkshop | None:
    """Return the workshop as it was saved last at a moment; None before there was any."""
    earlier = select(VERSIONS).where(VERSIONS.c.saved_at <= moment)
    with book.reading() as connection:
        return _kept(connection, earlier.order_by(VERSIONS.c.number.desc()).limit(1))


def _current(connection: Connection) -> KeptWorkshop | None:
    kept = _kept(connection, select(VERSIONS).order_by(VERSIONS.c.number.desc()).limit(1))
    if kept is None:
        return None
    workshop = with_shelf(kept.workshop, lots_in(connection))
    return KeptWorkshop(version=kept.version, workshop=workshop)


def _version(number: int) -> Select[tuple[object, ...]]:
    return select(VERSIONS).where(VERSIONS.c.number == number)


def _only(connection: Connection, query: Select[tuple[object, ...]]) -> KeptWorkshop:
    kept = _kept(connection, query)
    if kept is None:
        raise refuse("", MistakeCode.VERSION_MISSING)
    return kept


def _kept(connection: Connection, query: Select[tuple[object, ...]]) -> KeptWorkshop | None:
    row = connection.execute(query).one_or_none()
    if row is None:
        return None
    version = WorkshopVersion(
        number=row.number, saved_at=row.saved_at, brought_back=row.brought_back
    )
    return KeptWorkshop(version=version, workshop=workshop_of(row.record))


def _append(
    connection: Connection, workshop: Workshop, now: datetime, brought_back: int | None = None
) -> WorkshopVersion:
    number = (connection.scalar(_LATEST) or 0) + 1
    row = {"number": number, "saved_at": now, "brought_back": brought_back}
    connection.execute(insert(VERSIONS).values(**row, record=workshop_record(workshop)))
    connection.execute(delete(FIRST_ANSWERS))
    put_on_shelf(connection, workshop)
    return WorkshopVersion(number=number, saved_at=now, brought_back=brought_back)
