"""A line of the actuals: what was estimated, what it really was, and by how much it was off."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.sheets.cells import Cell, Formula, Look, Ref, Value, beside, reckoned
from exports.sheets.grid import Grid
from exports.sheets.number_formats import ROUGH_SHARE
from exports.sheets.rules import MEASURE, Rule
from quoting.core.ground.money import exact

TO_FILL = MEASURE.or_empty()
EMPTY = ""


@dataclass(frozen=True, slots=True)
class ActualLine:
    """The cells of one line; what really was may be empty."""

    estimated: Ref
    really: Ref

    @property
    def best(self) -> str:
        """What really was, where it is known, and else what was estimated."""
        return f'IF({self.really}="",{self.estimated},{self.really})'

    @property
    def is_known(self) -> bool:
        """Whether what really was is known."""
        return self.really.value != EMPTY

    @property
    def best_value(self) -> Decimal:
        """What `best` comes to."""
        return number_of(self.really.value if self.is_known else self.estimated.value)


def compare_line(
    grid: Grid,
    label: Cell,
    estimated: Formula,
    shape: str,
    really: Formula | Rule = TO_FILL,
    *,
    known: Decimal | None = None,
) -> ActualLine:
    """Write a line; what really was is an input of a rule, or follows from other inputs.

    An input has in it what is `known` already.
    """
    row = grid.next_row
    if isinstance(really, Rule):
        was = Cell(EMPTY if known is None else known, Look.INPUT, shape, really)
    else:
        was = Cell(really, Look.PLAIN, shape)
    at, then = beside("C", row), beside("B", row)
    value = really.value if isinstance(really, Formula) else was.content
    more, share = _off(value, estimated.value)
    refs = grid.line(
        label,
        Cell(estimated, Look.PLAIN, shape),
        was,
        reckoned(f'IF({at}="","",{at}-{then})', more, shape),
        reckoned(f'IF({at}="","",IF({then}=0,"",{at}/{then}-1))', share, ROUGH_SHARE),
    )
    return ActualLine(refs[1], refs[2])


def _off(really: object, estimated: Value) -> tuple[Value, Value]:
    """Return by how much, and by which share, what really was is off, where it is known."""
    if not isinstance(really, Decimal | float | int):
        return EMPTY, EMPTY
    was, then = number_of(really), number_of(estimated)
    return was - then, was / then - 1 if then else EMPTY


def number_of(value: Value) -> Decimal:
    """Return a figure as formulas reckon with it."""
    assert not isinstance(value, str), "a text is no figure"  # noqa: S101
    return value if isinstance(value, Decimal) else exact(float(value))
