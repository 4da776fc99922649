"""What is written down while an order is made: one value for each kind of thing that happens.

Rows are the rows and rounds of a blanket in the order worked, its border's rounds among them and
its foundation chain not; a motif and a seam count as one each. Where several blankets are made they
are counted on from one to the next.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from enum import StrEnum

from quoting.core.estimate.chores import Part
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.order.stage import Stage

MOST_MINUTES = 24 * 60.0
"""Of one session: who enters a week at once enters it by days."""

MOST_ROWS = 1_000_000
MOST_GRAMS = 1_000_000
MOST_REMARK = 4_000
MOST_LOT = 80
"""Characters."""


class Doing(StrEnum):
    """What a session was spent on, as a maker can tell it by the clock."""

    AT_THE_HOOK = "at-the-hook"
    WEAVING_IN = "weaving-in"
    FINISHING = "finishing"
    OFFICE = "office"

    @property
    def parts(self) -> tuple[Part, ...]:
        """The parts of an estimate that it takes in."""
        return _PARTS[self]


_PARTS = {
    Doing.AT_THE_HOOK: (
        Part.STITCHING,
        Part.TURNING,
        Part.CHANGING,
        Part.JOINING,
        Part.ASSEMBLING,
    ),
    Doing.WEAVING_IN: (Part.WEAVING_IN,),
    Doing.FINISHING: (Part.FINISHING,),
    Doing.OFFICE: (Part.OFFICE,),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Session:
    """Minutes of work on a day; at the hook from a first row to a last, both whole, if told.

    `started` is when it began, where that is known.
    """

    day: date
    doing: Doing
    minutes: float
    started: datetime | None = None
    first_row: int | None = None
    last_row: int | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("minutes", self.minutes, above=0, most=MOST_MINUTES)
        checks.number("first_row", self.first_row, least=1, most=MOST_ROWS)
        checks.number("last_row", self.last_row, least=self.first_row or 1, most=MOST_ROWS)
        if (self.first_row is None) != (self.last_row is None):
            checks.add("first_row" if self.first_row is None else "last_row", MistakeCode.MISSING)
        checks.done()

    @property
    def rows(self) -> int:
        """The rows that were worked, 0 where they were not told."""
        if self.first_row is None or self.last_row is None:
            return 0
        return self.last_row - self.first_row + 1


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsReached:
    """So many rows are done, however long they took."""

    day: date
    rows: int

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("rows", self.rows, least=0, most=MOST_ROWS)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnUsed:
    """Yarn of a colour of the design that was used since the line before of that colour.

    Either `grams`, or whole `balls` of `ball_g` each that were used up. `rows` are those done then.
    """

    day: date
    colour: str
    rows: int
    grams: float | None = None
    balls: int | None = None
    ball_g: float | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("colour", self.colour)
        checks.number("rows", self.rows, least=0, most=MOST_ROWS)
        checks.number("grams", self.grams, above=0, most=MOST_GRAMS)
        checks.number("balls", self.balls, least=1, most=10_000)
        checks.number("ball_g", self.ball_g, above=0, most=MOST_GRAMS)
        if (self.grams is None) == (self.balls is None):
            checks.add("grams", MistakeCode.MISSING)
        if (self.balls is None) != (self.ball_g is None):
            checks.add("ball_g", MistakeCode.MISSING)
        checks.done()

    @property
    def used_g(self) -> float:
        """What was used, in grams."""
        return self.grams if self.grams is not None else (self.balls or 0) * (self.ball_g or 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnTaken:
    """Yarn of a colour that was got for the order: new balls, or a lot from the shelf.

    `lot` is its dye lot, empty where it is not known; what it `cost` was paid for new balls.
    """

    day: date
    colour: str
    grams: float
    lot: str = ""
    from_shelf: bool = False
    cost: Decimal | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("colour", self.colour)
        checks.number("grams", self.grams, above=0, most=MOST_GRAMS)
        checks.text("lot", self.lot, most=MOST_LOT)
        checks.number("cost", self.cost, least=0, most=10**9)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class EndsWoven:
    """So many ends more were woven in."""

    day: date
    ends: int

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("ends", self.ends, least=1, most=MOST_ROWS)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Payment:
    """Money from the buyer, in a currency; what is less than nothing was paid back."""

    day: date
    amount: Decimal
    currency: str

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("amount", self.amount, least=-(10**9), most=10**9)
        if not self.amount:
            checks.add("amount", MistakeCode.MISSING)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """Anything in words."""

    day: date
    text: str

    def __post_init__(self) -> None:
        checks = Checks()
        if not self.text.strip():
            checks.add("text", MistakeCode.MISSING)
        checks.text("text", self.text, most=MOST_REMARK, lines=True)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """The order came to a stage; `quote` is the number of the one that it was about, if any."""

    stage: Stage
    before: Stage
    quote: str = ""
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Withdrawn:
    """The line that is corrected was wrong altogether, and nothing stands in its place."""


LogLine = (
    Session | RowsReached | YarnUsed | YarnTaken | EndsWoven | Payment | Remark | Moved | Withdrawn
)


@dataclass(frozen=True, slots=True, kw_only=True)
class LogEntry:
    """A line as it was written down: when, and the `id` of the line that it corrects."""

    id: int
    at: datetime
    line: LogLine
    corrects: int | None = None


def standing(entries: tuple[LogEntry, ...]) -> tuple[LogEntry, ...]:
    """Return the entries that hold: none that was corrected, and none that only withdraws."""
    corrected = {entry.corrects for entry in entries}
    return tuple(
        entry
        for entry in entries
        if entry.id not in corrected and not isinstance(entry.line, Withdrawn)
    )
