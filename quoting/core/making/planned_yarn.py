"""The yarn of a colour row by row, as the estimate has it: stitches, carries and tails."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.making.made_rows import MadeRows, PassPlace


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedYarn:
    """One colour's yarn: `reach_m` up to each row, from none done to all of them done.

    `rows` are the numbers of its own rows. What extras take, `extras_m`, comes after all of them.
    """

    rows: tuple[int, ...]
    reach_m: tuple[float, ...]
    extras_m: float

    @property
    def all_m(self) -> float:
        """All its yarn, that of the extras too."""
        return self.reach_m[-1] + self.extras_m

    @property
    def last_row(self) -> int:
        """The last row of the order, of whatever colour."""
        return len(self.reach_m) - 1

    def share_upto(self, row: int) -> float:
        """Return what part of the yarn, without that of extras, is worked up to a row."""
        return self.reach_m[row] / self.reach_m[-1] if self.reach_m[-1] else 0.0

    def rows_upto(self, done: int) -> int:
        """Return how many of its own rows are among so many done."""
        return bisect_right(self.rows, done)

    def between_m(self, row: int, later: int) -> float:
        """Return the yarn worked after a row up to another; less than nothing backwards."""
        return self.reach_m[later] - self.reach_m[row]

    def left_m(self, done: int) -> float:
        """Return the yarn of the rows to come once so many are done."""
        return self.between_m(done, self.last_row)


def planned_yarn(colour: ColourEstimate, rows: MadeRows) -> PlannedYarn:
    """Return a colour's yarn row by row; together it is that of the estimate's strands."""
    of_one = sorted(
        {
            rows.row_of(PassPlace(0, visit.pass_index, copy))
            for visit in colour.visits
            if rows.is_row(visit.pass_index)
            for copy in range(visit.copies)
        }
    )
    in_row = [0.0] * (rows.all + 1)
    for row, yarn_m in _worked(colour, rows):
        in_row[row] += yarn_m
    return PlannedYarn(
        rows=tuple(b * rows.of_one + row for b in range(rows.blankets) for row in of_one),
        reach_m=tuple(accumulate(in_row)),
        extras_m=colour.yarn.extras_m,
    )


def _worked(colour: ColourEstimate, rows: MadeRows) -> Iterator[tuple[int, float]]:
    """Yield each piece of a colour's strands, and the row in which it is worked."""
    yarn_m = {visit.pass_index: visit.yarn_m for visit in colour.visits}
    for strand in colour.walk.strands:
        blanket, copy = strand.starts.blanket, strand.starts.copy
        for index in (strand.starts.pass_index, strand.ends.pass_index):
            yield rows.row_of(PassPlace(blanket, index, copy)), colour.tail_m
        for carry in strand.carries:
            yield rows.row_of(PassPlace(blanket, carry.to_pass, copy)), carry.yarn_m
        for part in strand.stretches:
            index, share = part.pass_index, part.ends - part.begins
            yield rows.row_of(PassPlace(blanket, index, copy)), share * yarn_m[index]
