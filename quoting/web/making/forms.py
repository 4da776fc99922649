"""The forms beside an order that is made: a sitting, and lines that are written alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from flask import request
from wtforms import Form

from quoting.core.ground.errors import Mistake
from quoting.core.making.log_lines import Doing, LogEntry, Session
from quoting.schema.log_shapes import LogKind
from quoting.web.forms.lines import entries_of, typed_of
from quoting.web.forms.sent import Sent
from quoting.web.making.at_hand import AtHand
from quoting.web.making.labels import called_for
from quoting.web.making.line_forms import WRITTEN_ALONE, line_form, new_form, say_of_form
from quoting.web.making.sitting_form import new_sitting, say_of_sitting, sitting_form
from quoting.web.orders.order_answer import Said
from quoting.web.shop import Shop

SEEN, SESSION, AGAIN = "seen", "session", "again"
"""The hidden fields: the last line that the page showed, a session that is told of, a yes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Forms:
    """The forms of the page with what was typed in them, and what is said of it.

    `session` is the number of the session that a clock has timed and that is told of, or 0;
    `asks_again` says that the same money was written down before; `stale` that the page was
    opened before the program was started again.
    """

    sitting: Form
    alone: Mapping[LogKind, Form]
    said: tuple[Said, ...] = field(default=())
    session: int = 0
    asks_again: bool = False
    stale: bool = False

    @property
    def opens_yarn(self) -> bool:
        """Whether something stands in the fields of yarn and ends."""
        amounts = [typed_of(line, "amount") for line in entries_of(self.sitting, "used")]
        return any(field.typed for field in (*amounts, typed_of(self.sitting, "ends")))

    @property
    def opens_more(self) -> bool:
        """Whether something stands in the fields that are seldom used, or is wrong there."""
        times = [typed_of(self.sitting, name) for name in ("begun", "ended")]
        doing = typed_of(self.sitting, "doing")
        other = doing.typed != Doing.AT_THE_HOOK or bool(doing.mistake)
        return other or any(f.typed for f in times) or bool(typed_of(self.sitting, "day").says)


def new_forms(hand: AtHand, shop: Shop, timed: LogEntry | None = None) -> Forms:
    """Return the forms as they begin, that of a sitting with what a clock has timed."""
    session = timed.line if timed is not None and isinstance(timed.line, Session) else None
    return Forms(
        sitting=called_for(hand, sitting_form(new_sitting(hand, shop, session), shop)),
        alone={kind: new_form(kind, hand, shop) for kind in WRITTEN_ALONE},
        session=0 if timed is None else timed.id,
    )


def sitting_sent(
    sent: Sent, hand: AtHand, shop: Shop, mistakes: tuple[Mistake, ...] = (), *, stale: bool = False
) -> Forms:
    """Return the forms with a sitting as it was typed, and its mistakes."""
    form = called_for(hand, sitting_form(sent, shop))
    return Forms(
        sitting=form,
        alone={kind: new_form(kind, hand, shop) for kind in WRITTEN_ALONE},
        said=say_of_sitting(form, mistakes, sent, shop),
        session=sent.get(SESSION, 0, type=int),
        stale=stale,
    )


def line_sent(
    kind: LogKind,
    sent: Sent,
    hand: AtHand,
    shop: Shop,
    mistakes: tuple[Mistake, ...] = (),
    *,
    asks_again: bool = False,
    stale: bool = False,
) -> Forms:
    """Return the forms with one line as it was typed, and its mistakes."""
    fresh, form = new_forms(hand, shop), line_form(kind, sent, shop)
    said = say_of_form(form, mistakes, shop)
    alone = {**fresh.alone, kind: form}
    return replace(fresh, alone=alone, said=said, asks_again=asks_again, stale=stale)


def timed_session(hand: AtHand, number: int) -> LogEntry | None:
    """Return the session that holds and has this number, None where there is none."""
    for entry in hand.standing:
        if entry.id == number and isinstance(entry.line, Session):
            return entry
    return None


def seen_line() -> int | None:
    """Return the last line that the page showed whose form was sent."""
    return request.form.get(SEEN, type=int)
