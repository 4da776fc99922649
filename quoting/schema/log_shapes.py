"""The shapes of what is written down while an order is made; kept as records, by their kind."""

from __future__ import annotations

from collections.abc import Mapping
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
from quoting.core.making.sitting import Consumed, Sitting
from quoting.core.order.stage import Stage
from quoting.schema.figures import COUNT, MONEY, NUMBER
from quoting.schema.notation import RECORD
from quoting.schema.reading import Content, read_value
from quoting.schema.several import Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.time_of_day import TIME_OF_DAY
from quoting.schema.words import DAY, INSTANT, NAME, TEXT, YES_NO, Choice

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
    _used(lambda used: used.grams, NUMBER, "Grams used"),
    _used(lambda used: used.balls, COUNT, "Balls used up"),
    _used(lambda used: used.ball_g, NUMBER, "Grams of one"),
)

_taken = Fields(YarnTaken)
YARN_TAKEN = Shape(
    YarnTaken,
    _taken(lambda taken: taken.day, DAY, "Day"),
    _taken(lambda taken: taken.colour, NAME, "Colour"),
    _taken(lambda taken: taken.grams, NUMBER, "Grams"),
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

_consumed = Fields(Consumed)
CONSUMED = Shape(
    Consumed,
    _consumed(lambda consumed: consumed.colour, NAME, "Colour"),
    _consumed(lambda consumed: consumed.amount, NUMBER, "Used up"),
    _consumed(lambda consumed: consumed.ball_g, NUMBER, "of"),
)

_sitting = Fields(Sitting)
SITTING = Shape(
    Sitting,
    _sitting(lambda sitting: sitting.day, DAY, "Day"),
    _sitting(lambda sitting: sitting.rows, COUNT, "Rows done"),
    _sitting(lambda sitting: sitting.doing, Choice(Doing), "What you did"),
    _sitting(lambda sitting: sitting.minutes, NUMBER, "Minutes"),
    _sitting(lambda sitting: sitting.begun, TIME_OF_DAY, "or from"),
    _sitting(lambda sitting: sitting.ended, TIME_OF_DAY, "to"),
    _sitting(lambda sitting: sitting.ends, COUNT, "Ends woven in"),
    _sitting(lambda sitting: sitting.used, Several(CONSUMED), "Yarn used up"),
)
"""What is typed of a sitting at once, and comes to several lines."""

LOG_SHAPES: Mapping[str, Shape[Any]] = MappingProxyType(
    {
        "session": SESSION,
        "rows-reached": ROWS_REACHED,
        "yarn-used": YARN_USED,
        "yarn-taken": YARN_TAKEN,
        "ends-woven": ENDS_WOVEN,
        "payment": PAYMENT,
        "remark": REMARK,
        "moved": MOVED,
        "withdrawn": WITHDRAWN,
    }
)
"""The shape of each kind of line, by the word that a row names it with."""


def log_kind(line: LogLine) -> str:
    """Return the word for the kind of a line."""
    return next(kind for kind, shape in LOG_SHAPES.items() if isinstance(line, shape.value))


def log_record(line: LogLine) -> dict[str, object]:
    """Return a line as JSON holds it."""
    return LOG_SHAPES[log_kind(line)].write(line, RECORD)


def read_log_line(kind: str, record: Content) -> LogLine:
    """Return the line of a record. Errors: one refusal with every mistake."""
    return cast("LogLine", read_value(record, LOG_SHAPES[kind], Document.LOG, RECORD))
