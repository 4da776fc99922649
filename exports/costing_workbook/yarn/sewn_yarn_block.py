"""The yarn that seams are sewn with, by colour: it has no stitches, and goes by a rule."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.yarn.colour_lines import TITLE as COLOURS
from exports.costing_workbook.yarn.colour_lines import ColourLines
from exports.costing_workbook.yarn.found_lines import FoundLines, as_share, counted_for
from exports.costing_workbook.yarn.yarn_assumptions_block import PACKS, Assumptions
from exports.sheets.cells import Cell, counted, heads, reckoned, words, yours
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import FINE, SHARE, TENTHS, Shapes
from exports.sheets.rules import SHARE as SHARE_RULE
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.plan.gauge import ESTIMATED_LIMITS, Z_95
from quoting.core.quote.quote import Quote

TITLE = "The yarn that is sewn with"


@dataclass(frozen=True, slots=True)
class SewnLines:
    """What is sewn: found by colour; None where nothing is."""

    found: FoundLines | None

    def length(self, colour: str) -> str:
        """Return the length that a colour is sewn with, in the long unit."""
        return self.found.total("D", colour) if self.found else "0"

    def square_off(self, colour: str) -> str:
        """Return the square of its standard uncertainty."""
        return self.found.total("G", colour) if self.found else "0"


def sewn_yarn_block(
    grid: Grid, quote: Quote, colours: ColourLines, assumed: Assumptions, shapes: Shapes
) -> SewnLines:
    """Write what every colour is sewn with; nothing where all seams are worked."""
    sewn = [colour for colour in quote.estimate.colours if colour.yarn.sewn_m]
    if not sewn:
        return SewnLines(None)
    judged, unit = quote.workshop.habits.allowance is None, shapes.long_unit
    grid.block(TITLE)
    off = heads("off within", f"off, {unit}", f"off, {unit}²", figures_from=0) if judged else []
    lines = Lines(grid, len(sewn), [*heads("", "colour", "yarn", unit, figures_from=3), *off])
    for colour in sewn:
        _sewn(grid, colour, colours, assumed if judged else None, shapes)
    lines.close(1)
    return SewnLines(FoundLines(lines, "B"))


def _sewn(
    grid: Grid,
    colour: ColourEstimate,
    colours: ColourLines,
    assumed: Assumptions | None,
    shapes: Shapes,
) -> None:
    row, length = grid.next_row, shapes.long(colour.yarn.sewn_m)
    cells: list[Cell | None] = [
        None,
        words(colour.colour),
        words(colour.source.yarn),
        counted(length, TENTHS),
    ]
    faults: list[Fault] = [colours.found.unknown(COLOURS, f"B{row}")]
    if assumed is not None:
        off = length * ESTIMATED_LIMITS / Z_95
        cells += [
            yours(ESTIMATED_LIMITS, SHARE, SHARE_RULE.called("off within")),
            reckoned(f"D{row}*{assumed.standard(f'N(E{row})')}", off, FINE),
            reckoned(f"F{row}^2", off**2, FINE),
        ]
        said = as_share(ESTIMATED_LIMITS)
        faults.append(counted_for(f"E{row}", ESTIMATED_LIMITS, PACKS, said))
    grid.line(*cells, faults=faults)
