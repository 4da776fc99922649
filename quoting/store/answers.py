"""What a buyer answered to a quote that was given: accepted or declined."""

from __future__ import annotations

from datetime import date, datetime

from sqlalchemy import Connection, insert, update

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.making.log_lines import Moved
from quoting.core.order.stage import Stage, check_open
from quoting.core.quote.given_number import GivenNumber
from quoting.store.book import Book
from quoting.store.quote_content import KeptQuote
from quoting.store.quote_rows import quote_agreed, quote_numbered
from quoting.store.stages import move_order, stage_of
from quoting.store.tables import AGREEMENTS

DECLINED = "declined"
"""Why an order is called off whose buyer does not want it."""

_AGREED_BEFORE = frozenset({Stage.ASKED, Stage.QUOTED})


def accept_quote(
    book: Book, number: GivenNumber, *, day: date, although_ended: bool = False, now: datetime
) -> KeptQuote:
    """Agree an order by a quote, in the place of the version that it was agreed by, if any.

    It keeps its turn where it was agreed before; accepted again, nothing happens. Errors:
    `quote-missing`; `quote-ended` on a later `day`, unless `although_ended`; as `check_open`.
    """
    with book.writing() as connection:
        quote = quote_numbered(connection, number)
        stage = stage_of(connection, quote.order_id)
        check_open(stage)
        replaced = quote_agreed(connection, quote.order_id)
        if replaced is not None and replaced.id == quote.id:
            return quote
        if not (although_ended or quote.frozen.holds_on(day)):
            raise refuse("", MistakeCode.QUOTE_ENDED, ended=quote.frozen.valid_until)
        moved = Moved(
            stage=Stage.AGREED if stage in _AGREED_BEFORE else stage,
            before=stage,
            quote=str(number),
            why="" if replaced is None else f"in the place of {replaced.number}",
        )
        _agree(connection, quote, now, again=replaced is not None)
        move_order(connection, quote.order_id, moved, now=now)
        return quote


def decline_quote(book: Book, number: GivenNumber, *, now: datetime) -> KeptQuote:
    """Call an order off whose quote was declined; brought back, it is quoted again.

    Errors: `quote-missing`; `stage-skipped` where it is agreed or further.
    """
    with book.writing() as connection:
        quote = quote_numbered(connection, number)
        stage = stage_of(connection, quote.order_id)
        if stage is Stage.CALLED_OFF:
            return quote
        if stage not in _AGREED_BEFORE:
            raise refuse("stage", MistakeCode.STAGE_SKIPPED)
        moved = Moved(stage=Stage.CALLED_OFF, before=Stage.QUOTED, quote=str(number), why=DECLINED)
        move_order(connection, quote.order_id, moved, now=now)
        return quote


def _agree(connection: Connection, quote: KeptQuote, now: datetime, *, again: bool) -> None:
    if again:
        its = update(AGREEMENTS).where(AGREEMENTS.c.order_id == quote.order_id)
        connection.execute(its.values(quote_id=quote.id))
        return
    row = {"order_id": quote.order_id, "quote_id": quote.id, "agreed_at": now}
    connection.execute(insert(AGREEMENTS).values(**row))
