"""Quotes as rows keep them, and the rows as the quotes that they were."""

from __future__ import annotations

import json
from typing import Any

from sqlalchemy import ColumnElement, Connection, Row, Select, select

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.quote.given_number import GivenNumber
from quoting.schema.offer_shape import offer_record, read_offer
from quoting.store.quote_content import FrozenQuote, KeptQuote, QuoteLine
from quoting.store.records import order_of, order_record, workshop_of, workshop_record
from quoting.store.tables import AGREEMENTS, QUOTES

_LINES: Select[Any] = select(
    *(QUOTES.c[name] for name in ("order_id", "year", "running", "version")),
    *(QUOTES.c[name] for name in ("day", "valid_until", "workshop_version")),
    AGREEMENTS.c.quote_id.label("agreed"),
).outerjoin(AGREEMENTS, AGREEMENTS.c.quote_id == QUOTES.c.id)


def quote_columns(frozen: FrozenQuote) -> dict[str, object]:
    """Return what a row keeps of a quote, but for its number and its order."""
    return {
        "day": frozen.day,
        "valid_until": frozen.valid_until,
        "workshop_version": frozen.workshop_version,
        "workshop": workshop_record(frozen.workshop),
        "order_record": order_record(frozen.order),
        "results": json.dumps(frozen.results),
        "offer": json.dumps(offer_record(frozen.offer)),
        "page": frozen.page,
        "program": frozen.program,
    }


def quote_in(row: Row[Any]) -> KeptQuote:
    """Return the quote that a row keeps."""
    return KeptQuote(
        id=row.id,
        order_id=row.order_id,
        number=_number_in(row),
        given_at=row.given_at,
        revision=row.revision,
        frozen=FrozenQuote(
            day=row.day,
            valid_until=row.valid_until,
            workshop_version=row.workshop_version,
            workshop=workshop_of(row.workshop),
            order=order_of(row.order_record),
            results=json.loads(row.results),
            offer=read_offer(json.loads(row.offer)),
            page=row.page,
            program=row.program,
        ),
    )


def quote_numbered(connection: Connection, number: GivenNumber) -> KeptQuote:
    """Return the quote of a number. Errors: `quote-missing`."""
    row = connection.execute(select(QUOTES).where(is_numbered(number))).one_or_none()
    if row is None:
        raise refuse("", MistakeCode.QUOTE_MISSING)
    return quote_in(row)


def quote_agreed(connection: Connection, order_id: int) -> KeptQuote | None:
    """Return the quote that an order was agreed by, None where it was not."""
    query = select(QUOTES).join(AGREEMENTS, AGREEMENTS.c.quote_id == QUOTES.c.id)
    row = connection.execute(query.where(AGREEMENTS.c.order_id == order_id)).one_or_none()
    return None if row is None else quote_in(row)


def is_numbered(number: GivenNumber) -> ColumnElement[bool]:
    """Return whether a row is that of a number and its version."""
    return bears(number) & (QUOTES.c.version == number.version)


def bears(number: GivenNumber) -> ColumnElement[bool]:
    """Return whether a row is of any version of a number."""
    return (QUOTES.c.year == number.year) & (QUOTES.c.running == number.running)


def last_first(order_id: int) -> Select[Any]:
    """Return what asks for every version of an order's quote, the latest first."""
    its = select(QUOTES).where(QUOTES.c.order_id == order_id)
    return its.order_by(QUOTES.c.version.desc())


def lines_of(connection: Connection, *order_ids: int) -> tuple[QuoteLine, ...]:
    """Return every version of some orders' quotes as lists show it, the latest first."""
    its = _LINES.where(QUOTES.c.order_id.in_(order_ids)).order_by(QUOTES.c.version.desc())
    return tuple(map(_line_in, connection.execute(its)))


def _line_in(row: Row[Any]) -> QuoteLine:
    return QuoteLine(
        order_id=row.order_id,
        number=_number_in(row),
        day=row.day,
        valid_until=row.valid_until,
        workshop_version=row.workshop_version,
        is_agreed=row.agreed is not None,
    )


def _number_in(row: Row[Any]) -> GivenNumber:
    return GivenNumber(row.year, row.running, row.version)
