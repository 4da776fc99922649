"""What is one for all balls of a yarn: its length for a gram, and what a gram of it costs."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.yarn.found_lines import FoundLines, as_share, counted_for
from exports.costing_workbook.yarn.prices_block import PriceLines, yarns_of
from exports.costing_workbook.yarn.yarn_assumptions_block import PACKS
from exports.sheets.cells import heads, reckoned, words, yours
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import SHARE, Shapes
from exports.sheets.rules import SHARE as SHARE_RULE
from exports.sheets.sheet_rows import number_text
from quoting.core.quote.quote import Quote
from quoting.core.workshop.yarns import Yarn

TITLE = "Each yarn"


@dataclass(frozen=True, slots=True)
class YarnLines:
    """What is one for all balls of a yarn: found by its name."""

    found: FoundLines

    def length_per_gram(self, yarn: str) -> str:
        """Return the length for a gram, by the label of its smallest ball."""
        return self.found.one("D", yarn)

    def length_or(self, yarn: str, known: float) -> str:
        """Return it for a yarn that may be none of the order's: then as it is known."""
        return f"IF({self.found.count(yarn)}=0,{number_text(known)},{self.length_per_gram(yarn)})"

    def price_per_gram(self, yarn: str) -> str:
        """Return the least that a gram of it costs: what is taken from the shelf is charged so."""
        return self.found.one("E", yarn)

    def borrowed(self, yarn: str) -> str:
        """Return the 95 % limits of the guess that it works up as the yarn that was measured."""
        return self.found.one("F", yarn)


def yarns_block(grid: Grid, quote: Quote, prices: PriceLines, shapes: Shapes) -> YarnLines:
    """Write every yarn of the order; how far off another's swatch may be, where that is asked."""
    yarns, judged = yarns_of(quote), quote.workshop.habits.allowance is None
    grid.block(TITLE)
    borrowed = heads("by another yarn's swatch, within", figures_from=0) if judged else []
    unit = shapes.long_unit
    headings = heads("", "yarn", "", f"{unit} a gram", "price of a gram", figures_from=3)
    lines = Lines(grid, len(yarns), [*headings, *borrowed])
    found = FoundLines(lines, "B")
    for yarn in yarns:
        _yarn(grid, found, yarn, prices, quote, shapes)
    lines.close(1)
    return YarnLines(found)


def _yarn(
    grid: Grid, found: FoundLines, yarn: Yarn, prices: PriceLines, quote: Quote, shapes: Shapes
) -> None:
    row, faults, judged = grid.next_row, [], quote.workshop.habits.allowance is None
    word = f"B{row}"
    cells = [
        None,
        words(yarn.name),
        None,
        reckoned(prices.length_per_gram(word), shapes.long(yarn.metres_per_gram), "0.00"),
        reckoned(prices.cheapest_per_gram(word), yarn.cheapest_per_gram, shapes.fine_money),
    ]
    if judged:
        gauges = (
            quote.plan.gauges[stitch.made(yarn.name)]
            for colour in quote.estimate.colours
            for stitch in colour.yarn.counts
            if colour.source.yarn == yarn.name
        )
        limits = max((gauge.borrowed_limits for gauge in gauges), default=0.0)
        cells.append(yours(limits, SHARE, SHARE_RULE))
        faults.append(counted_for(f"F{row}", limits, PACKS, as_share(limits)))
    grid.line(*cells, faults=[found.twice(word), *faults])
