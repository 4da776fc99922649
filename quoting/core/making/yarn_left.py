"""How far the yarn of each colour lasts, by what it really takes, and what to buy now."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.skeins import SkeinChoice
from quoting.core.making.log_lines import LogEntry, YarnTaken, YarnUsed
from quoting.core.making.made_rows import MadeRows, made_rows
from quoting.core.making.planned_yarn import PlannedYarn, planned_yarn
from quoting.core.making.progress import of_colour, rows_done
from quoting.core.making.yarn_in_hand import YarnHad, yarn_had
from quoting.core.making.yarn_to_come import yarn_to_come
from quoting.core.making.yarn_use import YarnUse, reserve_left
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnLeft:
    """One colour's yarn once `rows_done` of the rows of all colours are done; lengths in metres.

    `use` is what was told of it up to row `told_rows`, none where that is 0. `reserve` is the share
    to have on top of what is still needed. `rows_to_come` are rows of this colour, and of them
    those that what is in hand lasts for: as expected, and with the reserve. `to_buy` are whole new
    balls, in `lot` if it is known; where the reserve is in hand, too, it is none.
    """

    colour: str
    metres_per_gram: float
    planned: PlannedYarn
    rows_done: int
    told_rows: int
    use: YarnUse
    reserve: float
    had: YarnHad
    rows_to_come: int
    rows_lasting: int
    rows_lasting_surely: int
    to_buy: SkeinChoice

    @property
    def ratio(self) -> float:
        """How many times as much yarn it takes as was planned."""
        return self.use.ratio

    @property
    def lot(self) -> str:
        """The dye lot to buy of, empty where it is not known."""
        return self.had.lot

    @property
    def row_planned_m(self) -> float:
        """What one of its rows was planned to take: those told of, or all of them."""
        upto = self.told_rows if self.use.planned_m else self.planned.last_row
        rows = self.planned.rows_upto(upto)
        return self.planned.reach_m[upto] / rows if rows else 0.0

    @property
    def row_really_m(self) -> float:
        """What one of its rows really takes."""
        return self.use.really_m(self.row_planned_m)

    @property
    def used_m(self) -> float:
        """What is used by now: as told, and for the rows done since then as they go."""
        since_m = self.planned.between_m(self.told_rows, self.rows_done)
        return self.use.used_m + self.use.really_m(since_m)

    @property
    def in_hand_m(self) -> float:
        """What is left of the balls that there are."""
        return max(0.0, self.had.all_m - self.used_m)

    @property
    def needed_m(self) -> float:
        """What is still needed, as expected: for the rows to come, and what extras are given."""
        return self.use.really_m(self.planned.left_m(self.rows_done)) + self.planned.extras_m

    @property
    def needed_low_m(self) -> float:
        """The least that is likely to be needed still."""
        return max(0.0, self.needed_m - self._unsure_m)

    @property
    def needed_high_m(self) -> float:
        """What is to be in hand, so that it is enough as surely as wanted."""
        return self.needed_m + self._unsure_m

    @property
    def _unsure_m(self) -> float:
        return self.use.really_m(self.planned.left_m(self.rows_done)) * self.reserve

    @property
    def whole_m(self) -> float:
        """What all of the colour will have taken."""
        return self.used_m + self.needed_m

    @property
    def is_enough(self) -> bool:
        """Whether nothing has to be bought."""
        return not self.to_buy.skeins


def yarn_left(quote: Quote, entries: tuple[LogEntry, ...]) -> tuple[YarnLeft, ...]:
    """Return how far each colour's yarn lasts, in the order of the estimate.

    Errors: `balls-too-short` and `too-many-balls`, as for the estimate, where more is to be bought.
    """
    rows = made_rows(quote)
    done = min(rows.all, rows_done(entries))
    return tuple(
        _colour_left(
            quote,
            rows,
            done,
            colour,
            of_colour(quote, entries, YarnUsed, colour.colour),
            of_colour(quote, entries, YarnTaken, colour.colour),
        )
        for colour in quote.estimate.colours
    )


def _colour_left(
    quote: Quote,
    rows: MadeRows,
    done: int,
    colour: ColourEstimate,
    used: Sequence[YarnUsed],
    taken: Sequence[YarnTaken],
) -> YarnLeft:
    planned, yarn = planned_yarn(colour, rows), quote.workshop.yarn(colour.source.yarn)
    use, told_rows = yarn_use(colour, planned, used)
    reserve = reserve_left(colour.reserve, planned.share_upto(told_rows))
    had, ahead = yarn_had(colour, yarn, taken), yarn_to_come(colour, rows, done)
    balls_m = had.left_m(use.used_m + use.really_m(planned.between_m(told_rows, done)))
    more, surely = use.ratio - 1, use.ratio * (1 + reserve) - 1
    as_surely = ahead.walk(balls_m, surely)
    return YarnLeft(
        colour=colour.colour,
        metres_per_gram=colour.metres_per_gram,
        planned=planned,
        rows_done=done,
        told_rows=told_rows,
        use=use,
        reserve=reserve,
        had=had,
        rows_to_come=len(ahead.rows),
        rows_lasting=ahead.rows_lasting(ahead.walk(balls_m, more)),
        rows_lasting_surely=ahead.rows_lasting(as_surely),
        to_buy=ahead.to_buy(as_surely, surely, yarn, mix_lots=quote.order.design.mix_lots),
    )


def yarn_use(
    colour: ColourEstimate, planned: PlannedYarn, used: Sequence[YarnUsed]
) -> tuple[YarnUse, int]:
    """Return what was told of a colour's yarn, and up to which row.

    Yarn of rows that were ripped back since is worked again, and so is still used of that row.
    """
    if not used:
        return YarnUse(), 0
    upto = min(planned.last_row, max(line.rows for line in used))
    used_m = math.fsum(line.used_g for line in used) * colour.metres_per_gram
    return YarnUse(used_m=used_m, planned_m=planned.reach_m[upto]), upto
