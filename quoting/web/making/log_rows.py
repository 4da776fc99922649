"""The log of an order that is made, line by line as its page shows it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime

from quoting.core.making.line_checks import rows_again
from quoting.core.making.log_lines import (
    Doing,
    LogEntry,
    Moved,
    Payment,
    Session,
    Withdrawn,
    standing,
)
from quoting.core.making.made_rows import MadeRows, made_rows
from quoting.web.making.at_hand import AtHand
from quoting.wording import Speech
from quoting.wording.log_words import log_words
from quoting.wording.making_words import rows_again_words


@dataclass(frozen=True, slots=True, kw_only=True)
class LogRow:
    """A line of the log as it is shown; one that was corrected is struck, and stays.

    `is_receivable` says that a receipt can be made of it.
    """

    id: int
    day: date
    written: datetime
    words: str
    again: str
    holds: bool
    stands_for: int | None
    can_change: bool
    is_receivable: bool = False


def log_rows(hand: AtHand, speech: Speech) -> Iterator[LogRow]:
    """Yield the lines, the latest first."""
    holding, rows = {entry.id for entry in standing(hand.entries)}, made_rows(hand.quote)
    for entry in reversed(hand.entries):
        written = entry.at.astimezone()
        yield LogRow(
            id=entry.id,
            day=getattr(entry.line, "day", written.date()),
            written=written,
            words=log_words(entry.line, rows, speech),
            again=_worked_again(hand, entry, rows, speech) if entry.id in holding else "",
            holds=entry.id in holding or isinstance(entry.line, Withdrawn),
            stands_for=entry.corrects,
            can_change=entry.id in holding and not isinstance(entry.line, Moved),
            is_receivable=entry.id in holding and _came(entry),
        )


def _came(entry: LogEntry) -> bool:
    return isinstance(entry.line, Payment) and entry.line.amount > 0


def _worked_again(hand: AtHand, entry: LogEntry, rows: MadeRows, speech: Speech) -> str:
    """Return which rows of a session an earlier one has told already; nothing where none."""
    before = tuple(each for each in hand.entries if each.id < entry.id)
    again = rows_again(before, entry.line, corrects=entry.corrects)
    return "" if again is None else rows_again_words(rows, *again, speech)


def untold_session(hand: AtHand) -> LogEntry | None:
    """Return the last session that a clock timed and that no rows are told of yet."""
    for entry in reversed(hand.standing):
        match entry.line:
            case Session(doing=Doing.AT_THE_HOOK, started=datetime(), last_row=None):
                return entry
            case Session():
                return None
    return None
