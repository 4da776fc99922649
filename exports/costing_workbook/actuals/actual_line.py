"""A line of the actuals: what was estimated, what it really was, and by how much it was off."""

from __future__ import annotations

from dataclasses import dataclass

from exports.sheets.cells import Cell, Formula, Look, Ref, beside, reckoned
from exports.sheets.grid import Grid
from exports.sheets.number_formats import ROUGH_SHARE
from exports.sheets.rules import MEASURE, Rule

TO_FILL = MEASURE.or_empty()


@dataclass(frozen=True, slots=True)
class ActualLine:
    """The cells of one line; what really was may be empty."""

    estimated: Ref
    really: Ref

    @property
    def best(self) -> str:
        """What really was, where it is known, and else what was estimated."""
        return f'IF({self.really}="",{self.estimated},{self.really})'


def compare_line(
    grid: Grid, label: Cell, estimated: Formula, shape: str, really: Formula | Rule = TO_FILL
) -> ActualLine:
    """Write a line; what really was is an input of a rule, or follows from other inputs."""
    row = grid.next_row
    if isinstance(really, Rule):
        was = Cell("", Look.INPUT, shape, really)
    else:
        was = Cell(really, Look.PLAIN, shape)
    at, then = beside("C", row), beside("B", row)
    refs = grid.line(
        label,
        Cell(estimated, Look.PLAIN, shape),
        was,
        reckoned(f'IF({at}="","",{at}-{then})', "", shape),
        reckoned(f'IF({at}="","",IF({then}=0,"",{at}/{then}-1))', "", ROUGH_SHARE),
    )
    return ActualLine(refs[1], refs[2])
