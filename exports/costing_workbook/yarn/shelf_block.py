"""What comes from the shelf: balls by their weight."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.yarn.colour_lines import TITLE as COLOURS
from exports.costing_workbook.yarn.colour_lines import ColourLines
from exports.costing_workbook.yarn.found_lines import FoundLines, as_length, counted_for
from exports.costing_workbook.yarn.yarn_assumptions_block import COUNTED
from exports.costing_workbook.yarn.yarns_block import YarnLines
from exports.sheets.cells import heads, reckoned, words, yours
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import TENTHS, Shapes
from exports.sheets.rules import SOME
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.quote.quote import Quote
from quoting.core.workshop.yarns import Stock


@dataclass(frozen=True, slots=True)
class ShelfLines:
    """The balls from the shelf, found by colour; None where nothing is taken from it."""

    found: FoundLines | None

    def balls(self, colour: str) -> str:
        """How many balls of a colour there are."""
        return self.found.count(colour) if self.found else "0"

    def length(self, colour: str) -> str:
        """Return the length of them."""
        return self.found.total("F", colour) if self.found else "0"

    def price_per_gram(self, colour: str) -> str:
        """Return what a gram of them is charged at."""
        return self.found.one("G", colour) if self.found else "0"


def shelf_block(
    grid: Grid, quote: Quote, colours: ColourLines, yarns: YarnLines, shapes: Shapes
) -> ShelfLines:
    """Write every ball that is taken, in the order of the colours; nothing where none is."""
    balls = [(colour, ball) for colour in quote.estimate.colours for ball in colour.choice.stock]
    if not balls:
        return ShelfLines(None)
    grid.block("From the shelf")
    headings = [
        *heads("", "colour", "yarn", "dye lot", "g", shapes.long_unit, figures_from=4),
        *heads("price of a gram", figures_from=0),
    ]
    lines = Lines(grid, len(balls), headings)
    for colour, ball in balls:
        _ball(grid, colour, ball, quote, colours, yarns, shapes)
    lines.close(1)
    return ShelfLines(FoundLines(lines, "B"))


def _ball(
    grid: Grid,
    colour: ColourEstimate,
    ball: Stock,
    quote: Quote,
    colours: ColourLines,
    yarns: YarnLines,
    shapes: Shapes,
) -> None:
    row, stuff = grid.next_row, quote.workshop.yarn(colour.source.yarn)
    length = shapes.long(ball.weight_g * colour.metres_per_gram)
    grid.line(
        None,
        words(colour.colour),
        words(stuff.name),
        words(ball.lot) if ball.lot else None,
        yours(ball.weight_g, TENTHS, SOME.called("weight")),
        reckoned(f"N(E{row})*{yarns.length_per_gram(f'C{row}')}", length, TENTHS),
        reckoned(yarns.price_per_gram(f"C{row}"), stuff.cheapest_per_gram, shapes.fine_money),
        faults=[
            colours.found.unknown(COLOURS, f"B{row}"),
            counted_for(
                f"E{row}",
                ball.weight_g,
                COUNTED,
                as_length(ball.weight_g, "g"),
            ),
        ],
    )
