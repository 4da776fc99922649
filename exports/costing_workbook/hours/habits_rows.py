"""What holds of all timings and all stitching: rest, the turn of a row, ripping back."""

from __future__ import annotations

from dataclasses import dataclass

from exports.sheets.cells import Cell, Ref, words, yours
from exports.sheets.grid import Grid
from exports.sheets.number_formats import FINE, SHARE
from exports.sheets.rules import MEASURE
from exports.sheets.rules import SHARE as A_SHARE
from quoting.core.workshop.timings import mean
from quoting.core.workshop.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class HabitRefs:
    """The rest added to some timings, the minutes of a turn, the share that is ripped back."""

    rest: Ref
    turn: Ref
    rip_back: Ref


def habits_rows(grid: Grid, workshop: Workshop) -> HabitRefs:
    """Write what holds of all timings and all stitching; empty is what was not given."""
    minutes = workshop.minutes
    turn = "" if minutes.turn is None else mean(minutes.turn)
    lost = "" if minutes.rip_back is None else minutes.rip_back
    return HabitRefs(
        rest=_habit(
            grid,
            "Rest, added to minutes stopped at every pause",
            yours(workshop.pay.rest_allowance, SHARE, A_SHARE),
            "rest_allowance",
        ),
        turn=_habit(
            grid, "Turning a row, minutes", yours(turn, FINE, MEASURE.or_empty()), "turn_minutes"
        ),
        rip_back=_habit(
            grid,
            grid.worded("Pulling back, of the stitching"),
            yours(lost, SHARE, A_SHARE.or_empty()),
            "rip_back",
        ),
    )


def _habit(grid: Grid, label: str, cell: Cell, name: str) -> Ref:
    return grid.name(name, grid.line(words(label), None, cell)[1])
