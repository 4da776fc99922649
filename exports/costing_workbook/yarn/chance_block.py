"""The colours that are mixed by chance: how far off that alone may leave each."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.yarn.found_lines import FoundLines
from exports.sheets.cells import counted, heads, words
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import SHARE
from quoting.core.quote.quote import Quote

TITLE = "Colours mixed by chance"


@dataclass(frozen=True, slots=True)
class ChanceLines:
    """The colours of a pool: found by their name; None where nothing is left to chance."""

    found: FoundLines | None

    def square_off(self, colour: str) -> str:
        """Return the square of the share that chance leaves a colour off by."""
        return f"({self.found.one('D', colour)})^2" if self.found else "0"


def chance_block(grid: Grid, quote: Quote) -> ChanceLines:
    """Write every colour of a pool; nothing where a reserve is the maker's own, or all is fixed."""
    judged, widened = quote.workshop.habits.allowance is None, quote.workshop.ranges.yarn
    mixed = [colour for colour in quote.estimate.colours if colour.yarn.chance]
    if not mixed or not judged:
        return ChanceLines(None)
    grid.block(TITLE)
    lines = Lines(grid, len(mixed), heads("", "colour", "", "off by", figures_from=3))
    found = FoundLines(lines, "B")
    for colour in mixed:
        off = counted(colour.yarn.chance / widened, SHARE)
        grid.line(None, words(colour.colour), None, off, faults=[found.twice(f"B{grid.next_row}")])
    lines.close(1)
    return ChanceLines(found)
