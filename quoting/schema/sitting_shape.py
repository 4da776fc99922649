"""The shape of a sitting: all that is typed of it at once."""

from __future__ import annotations

from quoting.core.making.log_lines import Doing
from quoting.core.making.sitting import Consumed, Sitting
from quoting.schema.figures import BARE_GRAMS, COUNT, NUMBER
from quoting.schema.several import Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.time_of_day import TIME_OF_DAY
from quoting.schema.words import DAY, NAME, YES_NO, Choice

_consumed = Fields(Consumed)
CONSUMED = Shape(
    Consumed,
    _consumed(lambda consumed: consumed.colour, NAME, "Colour"),
    _consumed(lambda consumed: consumed.amount, BARE_GRAMS, "Used up"),
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
    _sitting(lambda sitting: sitting.pulled_back, YES_NO, "Some rows were pulled back"),
)
