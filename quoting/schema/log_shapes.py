"""The shapes of what is written down while an order is made; kept as records, by their kind."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import Any, cast

from quoting.core.ground.place import Document
from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogLine,
    Moved,
    Payment,
    Remark,
    RowsReached,
    Session,
    Withdrawn,
    YarnTaken,
    YarnUsed,
)
from quoting.core.order.stage import Stage
from quoting.schema.figures import BARE_GRAMS, COUNT, MONEY, NUMBER
from quoting.schema.instant import INSTANT
from quoting.schema.notation import RECORD
from quoting.schema.reading import Content, read_value
from quoting.schema.shape import Fields, Shape
from quoting.schema.words import DAY, NAME, TEXT, YES_NO, Choice

_session = Fields(Session)
SESSION = Shape(
    Session,
    _session(lambda session: session.day, DAY, "Day"),
    _session(lambda session: session.doing, Choice(Doing), "What you did"),
    _session(lambda session: session.minutes, NUMBER, "Minutes"),
    _session(lambda session: session.started, INSTANT),
    _session(lambda session: session.first_row, COUNT, "From row"),
    _session(lambda session: session.last_row, COUNT, "To row"),
)

_reached = Fields(RowsReached)
ROWS_REACHED = Shape(
    RowsReached,
    _reached(lambda reached: reached.day, DAY, "Day"),
    _reached(lambda reached: reached.rows, COUNT, "Rows done"),
)

_used = Fields(YarnUsed)
YARN_USED = Shape(
    YarnUsed,
    _used(lambda used: used.day, DAY, "Day"),
    _used(lambda used: used.colour, NAME, "Colour"),
    _used(lambda used: used.rows, COUNT, "Rows done"),
    _used(lambda used: used.grams, BARE_GRAMS, "Grams used"),
    _used(lambda used: used.balls, COUNT, "Balls used up"),
    _used(lambda used: used.ball_g, BARE_GRAMS, "Grams of one"),
)

_taken = Fields(YarnTaken)
YARN_TAKEN = Shape(
    YarnTaken,
    _taken(lambda taken: taken.day, DAY, "Day"),
    _taken(lambda taken: taken.colour, NAME, "Colour"),
    _taken(lambda taken: taken.grams, BARE_GRAMS, "Grams"),
    _taken(lambda taken: taken.lot, TEXT, "Dye lot"),
    _taken(lambda taken: taken.from_shelf, YES_NO, "From the shelf"),
    _taken(lambda taken: taken.cost, MONEY, "Paid for it"),
)

_woven = Fields(EndsWoven)
ENDS_WOVEN = Shape(
    EndsWoven,
    _woven(lambda woven: woven.day, DAY, "Day"),
    _woven(lambda woven: woven.ends, COUNT, "Ends woven in"),
)

_payment = Fields(Payment)
PAYMENT = Shape(
    Payment,
    _payment(lambda payment: payment.day, DAY, "Day"),
    _payment(lambda payment: payment.amount, MONEY, "Amount"),
    _payment(lambda payment: payment.currency, NAME, "Currency"),
)

_remark = Fields(Remark)
REMARK = Shape(
    Remark,
    _remark(lambda remark: remark.day, DAY, "Day"),
    _remark(lambda remark: remark.text, TEXT, "Note"),
)

_moved = Fields(Moved)
MOVED = Shape(
    Moved,
    _moved(lambda moved: moved.stage, Choice(Stage)),
    _moved(lambda moved: moved.before, Choice(Stage)),
    _moved(lambda moved: moved.quote, TEXT),
    _moved(lambda moved: moved.why, TEXT),
)

WITHDRAWN: Shape[Withdrawn] = Shape(Withdrawn)


class LogKind(StrEnum):
    """The word that a row names the kind of its line with."""

    SESSION = "session"
    ROWS_REACHED = "rows-reached"
    YARN_USED = "yarn-used"
    YARN_TAKEN = "yarn-taken"
    ENDS_WOVEN = "ends-woven"
    PAYMENT = "payment"
    REMARK = "remark"
    MOVED = "moved"
    WITHDRAWN = "withdrawn"


LOG_SHAPES: Mapping[LogKind, Shape[Any]] = MappingProxyType(
    {
        LogKind.SESSION: SESSION,
        LogKind.ROWS_REACHED: ROWS_REACHED,
        LogKind.YARN_USED: YARN_USED,
        LogKind.YARN_TAKEN: YARN_TAKEN,
        LogKind.ENDS_WOVEN: ENDS_WOVEN,
        LogKind.PAYMENT: PAYMENT,
        LogKind.REMARK: REMARK,
        LogKind.MOVED: MOVED,
        LogKind.WITHDRAWN: WITHDRAWN,
    }
)


def log_kind(line: LogLine) -> LogKind:
    """Return the kind of a line."""
    return next(kind for kind, shape in LOG_SHAPES.items() if isinstance(line, shape.value))


def log_record(line: LogLine) -> dict[str, object]:
    """Return a line as JSON holds it."""
    return LOG_SHAPES[log_kind(line)].write(line, RECORD)


def read_log_line(kind: str, record: Content) -> LogLine:
    """Return the line of a record. Errors: one refusal with every mistake."""
    shape = LOG_SHAPES[LogKind(kind)]
    return cast("LogLine", read_value(record, shape, Document.LOG, RECORD))
