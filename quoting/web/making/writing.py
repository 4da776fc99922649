"""What was typed of an order that is made, looked at as the core does and written into its log."""

from __future__ import annotations

from collections.abc import Hashable

from werkzeug.datastructures import MultiDict

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Mistake, Refused, refuse
from quoting.core.making.line_checks import check_line
from quoting.core.making.log_lines import LogEntry, LogLine, Session
from quoting.core.making.sitting import Sitting
from quoting.schema.figures import NUMBER
from quoting.schema.words import DAY
from quoting.store.making import correct_line, write_down
from quoting.web.forms.sent import Sent
from quoting.web.kept import book_now, moment_now
from quoting.web.making.at_hand import AtHand
from quoting.web.making.forms import SESSION, seen_line
from quoting.web.making.sitting_form import in_sitting, read_sitting
from quoting.web.shop import Shop


def write_sitting(sent: Sent, hand: AtHand, shop: Shop, timed: LogEntry | None) -> None:
    """Write a sitting down; one that a clock has timed stands in the place of its session.

    Errors: one refusal with every mistake; then nothing is written.
    """
    try:
        lines = _lines_of(sent, hand, shop, timed)
    except Refused as refused:
        others = _others(refused, sent, hand, shop, timed)
        raise Refused(*refused.mistakes, *others) from refused
    if timed is None:
        write_lines(hand, lines)
        return
    if not isinstance(lines[0], Session):
        raise refuse("minutes", MistakeCode.MISSING)
    put_in_place(hand, timed.id, lines)


def _lines_of(sent: Sent, hand: AtHand, shop: Shop, timed: LogEntry | None) -> tuple[LogLine, ...]:
    """Return the lines of a sitting, which all can be true. Errors: each that one look finds."""
    session = timed.line if timed is not None and isinstance(timed.line, Session) else None
    sitting, lines = read_sitting(sent, hand, shop, session)
    _check(hand, shop, sitting, lines, None if timed is None else timed.id)
    return lines


def _others(
    refused: Refused, sent: Sent, hand: AtHand, shop: Shop, timed: LogEntry | None
) -> tuple[Mistake, ...]:
    """Return what is wrong with a sitting besides: looked for with the mistaken fields blank.

    What only follows from their being blank is none.
    """
    told = {mistake.path for mistake in refused.mistakes}
    rest: Sent = MultiDict(
        [(name, "" if name in told else text) for name, text in sent.items(multi=True)]
    )
    try:
        _lines_of(rest, hand, shop, timed)
    except Refused as more:
        found = (one for one in more.mistakes if one.code is not MistakeCode.NOTHING_WRITTEN)
        return tuple(one for one in found if one.path not in told)
    return ()


def write_lines(hand: AtHand, lines: tuple[LogLine, ...]) -> None:
    """Write lines down, unless more was written since the page was opened. Errors: as the store."""
    write_down(book_now(), hand.id, lines, hand.sources, now=moment_now(), seen=seen_line())


def put_in_place(hand: AtHand, entry_id: int, lines: tuple[LogLine, ...]) -> None:
    """Correct a line. Errors: as the store."""
    correct_line(book_now(), hand.id, entry_id, lines, hand.sources, now=moment_now())


def with_minutes(sent: Sent, timed: LogEntry, shop: Shop) -> Sent:
    """Return what was typed of a sitting with what the clock has timed."""
    filled: Sent = MultiDict(sent)
    if isinstance(timed.line, Session):
        filled["minutes"] = NUMBER.show(timed.line.minutes, shop.notation)
        filled["day"] = DAY.show(timed.line.day, shop.notation)
        filled[SESSION] = str(timed.id)
    return filled


def _check(
    hand: AtHand,
    shop: Shop,
    sitting: Sitting,
    lines: tuple[LogLine, ...],
    corrects: int | None,
) -> None:
    """Refuse a sitting of which a line cannot be true, each mistake at the field it comes from."""
    mistakes: dict[Hashable, Mistake] = {}
    for line in lines:
        try:
            check_line(hand.quote, hand.entries, line, today=shop.today(), corrects=corrects)
        except Refused as refused:
            found = in_sitting(refused.mistakes, line, sitting)
            mistakes |= {mistake.identity: mistake for mistake in found}
    if mistakes:
        raise Refused(*mistakes.values())
