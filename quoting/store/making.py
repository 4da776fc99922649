"""What is written down of an order that is made, and what the shelf loses and gets back by it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from sqlalchemy import Connection

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.making.log_lines import LogEntry, LogLine, YarnTaken
from quoting.core.order.design import ColourSource
from quoting.store.book import Book
from quoting.store.log import correctable, log_in, put_line
from quoting.store.shelf import give_back_to_shelf, take_from_shelf

Sources = Mapping[str, ColourSource]
"""The yarn, and the colour of it, that each colour of the design is."""


def write_down(
    book: Book,
    order_id: int,
    lines: tuple[LogLine, ...],
    sources: Sources,
    *,
    now: datetime,
    seen: int | None = None,
) -> tuple[LogEntry, ...]:
    """Write lines down, all or none, and take from the shelf what they took from it.

    `seen` is the last line that the page showed, 0 of an empty log. Errors: `order-missing`;
    `log-overtaken` where more was written since; as `take_from_shelf`.
    """
    with book.writing() as connection:
        entries = log_in(connection, order_id)
        if seen is not None and seen != last_of(entries):
            raise refuse("", MistakeCode.LOG_OVERTAKEN)
        for line in lines:
            _take(connection, line, sources)
        return tuple(put_line(connection, order_id, line, now=now) for line in lines)


def correct_line(
    book: Book,
    order_id: int,
    entry_id: int,
    lines: tuple[LogLine, ...],
    sources: Sources,
    *,
    now: datetime,
) -> tuple[LogEntry, ...]:
    """Put the first of some lines in the place of one, and write down any more.

    What the line had taken from the shelf goes back first. Errors: as `write_down`;
    `log-line-missing`.
    """
    with book.writing() as connection:
        wrong = correctable(log_in(connection, order_id), entry_id)
        _give_back(connection, wrong.line, sources)
        for line in lines:
            _take(connection, line, sources)
        first, *more = lines
        right = put_line(connection, order_id, first, now=now, corrects=entry_id)
        return right, *(put_line(connection, order_id, line, now=now) for line in more)


def last_of(entries: tuple[LogEntry, ...]) -> int:
    """Return the number of the last line of a log, 0 where there is none."""
    return entries[-1].id if entries else 0


def _take(connection: Connection, line: LogLine, sources: Sources) -> None:
    if isinstance(line, YarnTaken) and line.from_shelf:
        take_from_shelf(connection, _lot(line, sources), line.grams)


def _give_back(connection: Connection, line: LogLine, sources: Sources) -> None:
    if isinstance(line, YarnTaken) and line.from_shelf:
        give_back_to_shelf(connection, _lot(line, sources), line.grams)


def _lot(line: YarnTaken, sources: Sources) -> tuple[str, str, str]:
    """Return what a lot is known by. Errors: `unknown-colour`."""
    source = sources.get(line.colour)
    if source is None:
        raise refuse("colour", MistakeCode.UNKNOWN_COLOUR, read=line.colour, known=tuple(sources))
    return source.yarn, source.colour, line.lot
