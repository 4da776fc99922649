"""Forms that write one line of the log each: yarn that was got, money, a note, a correction."""

from __future__ import annotations

from typing import cast

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Mistake, refuse
from quoting.core.ground.money import round_money
from quoting.core.ground.place import Document
from quoting.core.making.log_lines import LogEntry, LogLine, Payment
from quoting.schema.log_shapes import LOG_SHAPES, LogKind, log_kind
from quoting.schema.reading import read_value
from quoting.schema.words import DAY
from quoting.web.beside import label_of, say_beside
from quoting.web.forms.from_shape import form_of
from quoting.web.forms.sent import Sent, content_of, line_numbers, sent_as
from quoting.web.making.at_hand import AtHand
from quoting.web.orders.order_answer import Said
from quoting.web.shop import Shop

WRITTEN_ALONE = (LogKind.YARN_TAKEN, LogKind.PAYMENT, LogKind.REMARK)
"""The kinds that have a form of their own, beside that of a sitting."""


def line_form(kind: LogKind, sent: Sent, shop: Shop) -> Form:
    """Return the form of a kind of line with what was sent in it, its fields named for the kind."""
    meta = {"shop": shop, "lines": line_numbers(sent)}
    return form_of(LOG_SHAPES[kind])(sent, prefix=f"{kind}.", meta=meta)


def new_form(kind: LogKind, hand: AtHand, shop: Shop) -> Form:
    """Return a form for a further line: of today, in the currency that the buyer is asked."""
    today = DAY.show(shop.today(), shop.notation)
    filled = {"day": today, "currency": hand.currencies[-1]}
    return line_form(kind, MultiDict(sent_as(filled, kind)), shop)


def form_of_entry(entry: LogEntry, shop: Shop) -> Form:
    """Return a form with a line in it, to be corrected."""
    kind = log_kind(entry.line)
    written = LOG_SHAPES[kind].write(entry.line, shop.notation)
    return line_form(kind, MultiDict(sent_as(written, kind)), shop)


def read_line(kind: LogKind, sent: Sent, shop: Shop) -> LogLine:
    """Return the line that was typed. Errors: one refusal with every mistake."""
    content = content_of(sent).get(kind, {})
    typed = content if isinstance(content, dict) else {}
    line = cast("LogLine", read_value(typed, LOG_SHAPES[kind], Document.LOG, shop.notation))
    if isinstance(line, Payment) and round_money(line.amount, line.currency) != line.amount:
        code = MistakeCode.NOT_WHOLE_MINOR_UNITS
        raise refuse("amount", code, read=line.amount, currency=line.currency)
    return line


def say_of_form(form: Form, mistakes: tuple[Mistake, ...], shop: Shop) -> tuple[Said, ...]:
    """Put mistakes beside the fields of a form, and return them for the head of the page."""
    return say_beside(form, mistakes, shop.speech, label_of)
