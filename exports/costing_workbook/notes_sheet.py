"""The sheet of notes: what the order says, what to heed, and where the arithmetic comes from."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from textwrap import wrap

from exports.sheets.cells import Look, clean_text, words
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from exports.sheets.line_heights import LINE_POINTS
from quoting.core.ground.cautions import Reader
from quoting.core.quote.quote import Quote
from quoting.wording import QUOTE_FOLLOWS, Speech, caution_sentence, quote_sources

WIDTHS = (86,)
LINE_CHARACTERS = 92

Told = Callable[[Reader], Iterable[str]]
"""Says the cautions for one reader."""


def write_notes(grid: Grid, quote: Quote, speech: Speech) -> None:
    """Write every note as a whole sentence."""
    heading(grid, "Notes")
    order_block(grid, quote)
    caution_blocks(grid, lambda reader: _cautions(quote, reader, speech))
    reckoning_blocks(grid, QUOTE_FOLLOWS, quote_sources(speech))


def _cautions(quote: Quote, reader: Reader, speech: Speech) -> Iterator[str]:
    for caution in quote.cautions:
        if caution.reader is reader:
            yield caution_sentence(caution, speech)


def order_block(grid: Grid, quote: Quote) -> None:
    """Write what the buyer's order says beside its figures."""
    notes_block(grid, "The order says", [quote.order.notes] if quote.order.notes else [])


def caution_blocks(grid: Grid, cautions_for: Told) -> None:
    """Write the cautions, those for the maker first."""
    notes_block(grid, "For you to note", cautions_for(Reader.MAKER))
    notes_block(grid, "To tell the buyer", cautions_for(Reader.BUYER))


def reckoning_blocks(grid: Grid, follows: Iterable[str], sources: Iterable[str]) -> None:
    """Write what follows a change, and where the arithmetic comes from."""
    notes_block(grid, "How this workbook calculates", map(grid.worded, follows))
    notes_block(grid, "Where the arithmetic comes from", map(grid.worded, sources))


def notes_block(grid: Grid, title: str, sentences: Iterable[str]) -> None:
    """Write a block of sentences; nothing where there are none."""
    said = list(sentences)
    if not said:
        return
    grid.block(title)
    for sentence in said:
        grid.line(words(sentence, Look.PROSE), height=lines_of(sentence) * LINE_POINTS)


def lines_of(text: str) -> int:
    """Return how many lines a text takes in the column, for the height of its row."""
    return sum(len(wrap(line, LINE_CHARACTERS)) or 1 for line in clean_text(text).splitlines())
