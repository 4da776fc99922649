"""The yarn in the stitches of each colour: how many of each, and how much one takes."""

from __future__ import annotations

from exports.workbook.cells import Ref, counted, heads, reckoned, words, yours
from exports.workbook.grid import Grid
from exports.workbook.shapes import COUNT, FINE, TENTHS, Shapes
from quoting.core.estimate import ColourEstimate
from quoting.core.quote import Quote


def stitch_yarn_block(grid: Grid, quote: Quote, shapes: Shapes) -> list[list[Ref]]:
    """Write each colour's stitches and return the cells of their yarn, by colour."""
    grid.block("The yarn in the stitches")
    grid.line(
        *heads("", "colour", "stitch", "how many", figures_from=3),
        *heads(f"{shapes.short_unit} each", shapes.long_unit, "how sure", figures_from=0),
    )
    return [_colour(grid, colour, quote, shapes) for colour in quote.estimate.colours]


def _colour(grid: Grid, colour: ColourEstimate, quote: Quote, shapes: Shapes) -> list[Ref]:
    refs = []
    for stitch, count in colour.yarn.counts.items():
        gauge, row = quote.plan.gauges[colour.source.yarn, stitch], grid.next_row
        line = grid.line(
            None,
            words(colour.colour),
            words(shapes.speech.stitch(stitch)),
            counted(count, COUNT),
            yours(shapes.short(gauge.yarn_m), FINE),
            reckoned(
                f"Yarn!D{row}*Yarn!E{row}/{shapes.short_per_long}",
                shapes.long(count * gauge.yarn_m),
                TENTHS,
            ),
            words(gauge.sureness.value),
        )
        refs.append(line[4])
    return refs
