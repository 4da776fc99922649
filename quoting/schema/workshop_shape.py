"""The shape of a workshop."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from quoting.core.ground.measures import Units
from quoting.core.workshop.calendar import WorkingCalendar
from quoting.core.workshop.habits import CONFIDENCE, Habits, Join
from quoting.core.workshop.ranges import Ranges
from quoting.core.workshop.stitches import Stitch, Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.schema.figures import COUNT, NUMBER, SHARE, SIDE
from quoting.schema.kind import Kind
from quoting.schema.measurement_shapes import MINUTES, MOTIF, PATTERN, SWATCH, TIMING, YARN
from quoting.schema.notation import Notation
from quoting.schema.selling_shapes import (
    DELIVERY,
    DOCUMENTS,
    EXCHANGE,
    FEE,
    OWN_WORDS,
    PAY,
    PRICING,
    TAX,
    WORDS_IN,
)
from quoting.schema.several import Several, named_spots
from quoting.schema.shape import Fields, Shape
from quoting.schema.spot import Spot
from quoting.schema.words import ANSWER, BASIC_STITCH, DAY, NAME, TEXT, YES_NO, Choice


class ByStitch(Kind[Mapping[Stitch, bool]]):
    """A table of yes or no, its keys named as stitches are in the document."""

    def read(self, spot: Spot) -> Mapping[Stitch, bool]:
        """Return the answers by stitch. Errors: `wrong-type`; as `BasicStitch`."""
        answers = {name: ANSWER.read(inner) for name, inner in named_spots(spot)}
        return MappingProxyType(
            {BASIC_STITCH.read(spot.at(name, name)): answer for name, answer in answers.items()}
        )

    def write(self, value: Mapping[Stitch, bool], notation: Notation) -> object:
        """Return the table."""
        return {
            str(BASIC_STITCH.write(stitch, notation)): ANSWER.write(answer, notation)
            for stitch, answer in value.items()
        }


_habits = Fields(Habits)
HABITS = Shape(
    Habits,
    _habits(lambda habits: habits.carry_rows, COUNT, "Yarn is carried up over at most"),
    _habits(lambda habits: habits.carry_height_cm, SIDE, "and at most", name="carry_height"),
    _habits(lambda habits: habits.tail_cm, SIDE, "A tail", name="tail"),
    _habits(lambda habits: habits.join, Choice(Join), "A new ball is joined"),
    _habits(
        lambda habits: habits.confidence,
        SHARE,
        "How sure the yarn is to be enough, %",
        usual=CONFIDENCE,
    ),
    _habits(lambda habits: habits.allowance, SHARE, "or an allowance of, %"),
    _habits(lambda habits: habits.tension, SHARE, "Allowance for uneven tension, %"),
    _habits(lambda habits: habits.carry_in_rounds, YES_NO, "Carried up between rounds, too"),
    _habits(lambda habits: habits.fringe_cm, SIDE, "Tail for a fringe", name="fringe"),
    _habits(lambda habits: habits.left_handed, YES_NO, "I work left-handed"),
    _habits(lambda habits: habits.counts_turning_chain, ByStitch(), "Turning chains that count"),
)

_calendar = Fields(WorkingCalendar)
CALENDAR = Shape(
    WorkingCalendar,
    _calendar(lambda calendar: calendar.yarn_arrives_days, COUNT, "Days until yarn arrives"),
    _calendar(lambda calendar: calendar.drying_days, COUNT, "Days of drying"),
    _calendar(lambda calendar: calendar.post_days, COUNT, "Days in the post"),
    _calendar(lambda calendar: calendar.hours_promised, NUMBER, "Hours promised elsewhere"),
    _calendar(lambda calendar: calendar.days_off, Several(DAY), "Days off"),
)

_ranges = Fields(Ranges)
RANGES = Shape(
    Ranges,
    _ranges(lambda ranges: ranges.hours, NUMBER, "Range of hours, times as wide"),
    _ranges(lambda ranges: ranges.yarn, NUMBER, "Range of yarn, times as wide"),
)

_workshop = Fields(Workshop)
_head = Fields(Workshop, table="workshop")
WORKSHOP = Shape(
    Workshop,
    _head(lambda workshop: workshop.name, TEXT, "Name"),
    _head(lambda workshop: workshop.locale, TEXT, "Language and country"),
    _head(lambda workshop: workshop.currency, NAME, "Currency"),
    _head(lambda workshop: workshop.units, Choice(Units), "Sizes in"),
    _head(lambda workshop: workshop.speaks, Choice(Vocabulary), "Stitch names"),
    _head(lambda workshop: workshop.hours_per_week, NUMBER, "Hours a week"),
    _head.inline(lambda workshop: workshop.own_words, OWN_WORDS),
    _head.inline(lambda workshop: workshop.habits, HABITS),
    _workshop(lambda workshop: workshop.words_in, Several(WORDS_IN), "Words in other languages"),
    _workshop(lambda workshop: workshop.documents, DOCUMENTS, "Documents"),
    _workshop(lambda workshop: workshop.yarns, Several(YARN), "Yarns"),
    _workshop(lambda workshop: workshop.patterns, Several(PATTERN), "Stitch patterns"),
    _workshop(lambda workshop: workshop.swatches, Several(SWATCH), "Swatches"),
    _workshop(lambda workshop: workshop.motifs, Several(MOTIF), "Motifs"),
    _workshop(lambda workshop: workshop.timings, Several(TIMING), "Timings"),
    _workshop(lambda workshop: workshop.minutes, MINUTES, "Minutes"),
    _workshop(lambda workshop: workshop.pay, PAY, "Pay"),
    _workshop(lambda workshop: workshop.pricing, PRICING, "Price", name="price"),
    _workshop(lambda workshop: workshop.fees, Several(FEE), "Fees"),
    _workshop(lambda workshop: workshop.tax, TAX, "Tax"),
    _workshop(lambda workshop: workshop.delivery, DELIVERY, "Delivery"),
    _workshop(lambda workshop: workshop.calendar, CALENDAR, "Calendar"),
    _workshop(lambda workshop: workshop.ranges, RANGES, "Ranges"),
    _workshop(lambda workshop: workshop.exchange, EXCHANGE, "Rates of exchange"),
)
