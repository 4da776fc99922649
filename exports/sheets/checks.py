"""The sheet of checks: what should hold, whether it does, and where to look if it does not."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from exports.sheets.cells import Cell, Formula, Look, Ref, Span, heads, reckoned, words
from exports.sheets.grid import NOT_RECKONED, Fault, Grid
from exports.sheets.number_formats import COUNT

TITLE = "Checks"
WIDTHS = (44, 96, 10)
STATE_ROW = 2
WELL, ALL_WELL = "well", "All checks are well."


@dataclass(frozen=True, slots=True)
class Check:
    """What should hold, and what is said where it does not."""

    label: str
    fault: Fault


def state_line(grid: Grid, indent: int = 0) -> None:
    """Write at the head of a sheet whether all is well, or where to look."""
    state = Formula(f"{TITLE}!$A${STATE_ROW}", ALL_WELL)
    grid.line(*[None] * indent, Cell(state, Look.STATE))


def write_checks(grid: Grid, checked: Sequence[Grid], checks: Sequence[Check]) -> None:
    """Write what the lines of every sheet say of themselves, then the other checks.

    The answer on top comes from below. Errors: none; a check that fails as the file is written
    says so in it.
    """
    grid.line(words("Checks", Look.TITLE))
    grid.next_row = STATE_ROW + 1
    grid.block("What is checked")
    grid.line(*heads("", "", "to look at", figures_from=2))
    every = [*(_lines_of(sheet) for sheet in checked), *checks]
    lines = [_line(grid, check) for check in every]
    labels, said, found = (
        Span(grid.title, letter, lines[0].row, lines[-1].row) for letter in "ABC"
    )
    first = f"MATCH(1,{found},0)"
    look = f'"Look here: "&INDEX({labels},{first})&". "&INDEX({said},{first})'
    grid.next_row = STATE_ROW
    state = Formula(f'IF(SUM({found})=0,"{ALL_WELL}",{look})', _state_now(every))
    grid.name("state", grid.line(Cell(state, Look.STATE))[0])


def _line(grid: Grid, check: Check) -> Ref:
    """Write one check: what it says, and one where there is something to look at."""
    row, fault = grid.next_row, check.fault
    told = f'IF({fault.condition},{fault.said},"{WELL}")'
    said = Formula(f'IFERROR({told},"{NOT_RECKONED}")', fault.now or WELL)
    counted = reckoned(f'IF(B{row}="{WELL}",0,1)', int(bool(fault.now)), COUNT)
    return grid.line(words(check.label), Cell(said, Look.LABEL), counted)[-1]


def _lines_of(grid: Grid) -> Check:
    """Return the check that no line of a sheet says that something is wrong with it."""
    flags, labels = grid.flagged, Span(grid.title, grid.labels, 1, grid.flagged.last)
    first = f'MATCH("?*",{flags},0)'
    said = f'INDEX({labels},{first})&", "&INDEX({flags},{first})'
    return Check(f"The lines of {grid.title}", Fault(f"SUMPRODUCT(--(LEN({flags})>0))>0", said))


def _state_now(checks: Sequence[Check]) -> str:
    failing = next((check for check in checks if check.fault.now), None)
    return ALL_WELL if failing is None else f"Look here: {failing.label}. {failing.fault.now}"
