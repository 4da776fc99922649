"""The sheet of the working guide: the same words as its paper has, table by table."""

from __future__ import annotations

from itertools import zip_longest

from exports.sheets.cells import Cell, Look, heads, words
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from quoting.core.quote.quote import Quote
from quoting.wording.guide import guide_paper
from quoting.wording.paper import Facts, Listing, Words

TITLE = "Working guide"
WIDTHS = (4, 104, 74, 12)


def write_guide(grid: Grid, quote: Quote) -> None:
    """Write what the guide of a quote says. Errors: as `guide_paper`."""
    heading(grid, TITLE)
    for block in guide_paper(quote).blocks:
        match block:
            case Words():
                _words(grid, block)
            case Facts():
                for fact in block.facts:
                    grid.line(None, words(fact.name, Look.LABEL), words(fact.text, Look.PROSE))
            case Listing():
                _listing(grid, block)


def _words(grid: Grid, block: Words) -> None:
    if block.heading:
        grid.block(block.heading)
    for text in block.texts:
        grid.line(words(text, Look.NOTE))


def _listing(grid: Grid, block: Listing) -> None:
    """Write a table; the first cell of a row has its yarn's colour.

    All that it says are words, figures with their units among them, and stand to the left.
    """
    grid.block(block.heading)
    grid.line(*heads("", *block.heads, figures_from=1 + len(block.heads)))
    for row, code in zip_longest(block.rows, block.codes, fillvalue=""):
        at = grid.next_row
        grid.line(words(""), *(_cell(text) for text in row))
        if code:
            grid.fill(at, code)


def _cell(text: str) -> Cell | None:
    return words(text, Look.PROSE) if text else None
