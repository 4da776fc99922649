"""The sheet of notes: what the order says, what to heed, and where the arithmetic comes from."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import wrap

from exports.workbook.cells import Look, clean_text, words
from exports.workbook.grid import LINE_POINTS, Grid
from quoting.core.cautions import Caution, Reader
from quoting.core.quote import Quote
from quoting.wording import Speech, caution_sentence

WIDTHS = (86,)
LINE_CHARACTERS = 92

FOLLOWS = (
    "Change a boxed figure and everything that rests on it follows: pay, prices of balls, minutes, "
    "fees, tax, target, rounding. Money is rounded half up to the currency's own decimals (ISO "
    "4217), hours to two decimals and grams to whole ones before they meet money.",
    "Rows, stitches, ends, carries and the choice of skeins are the program's own: they stay as "
    "they are. When the size, the stripes or a price of yarn changes much, ask for a new quote.",
    "The price is solved in one step, from costs, fees, tax and target, so that no cell has to "
    "look at itself.",
)

PRICE_SOURCES = (
    "Margin is profit over the net price, markup is profit over the costs: m = k/(1 + k) "
    "(textbook).",
    "Tax inside a price is price × rate/(1 + rate), rounded half up (HMRC, VAT guide, Notice 700, "
    "and VATREC12030; Regulation (EC) 1103/97, article 5).",
    "What fees take of a price is found from the sum of their rates (HMRC, PAYE72028, grossing "
    "up).",
)

SOURCES = (
    *PRICE_SOURCES,
    "The range of the hours: one timing may be 30 % off; from two timings up, the prediction of a "
    "total after Hahn and Meeker, 19 times in 20. Ranges of different timings add in squares, "
    "those that rest on one timing add up.",
    "A stitch that was never timed takes its time from its yarn-overs: chain 1, then 2, 3, 4, 6 "
    "for single, half double, double, treble (common practice, US names).",
    "The reserve of yarn follows from how well the yarn of a stitch is known (JCGM 100, combining "
    "of uncertainties), from tension, and from the length on the label.",
    "Skeins are the cheapest whole ones that are enough, two tails reckoned for each ball after "
    "the first; then least left over, then fewest balls.",
    "A colour is carried up the side when it waits at the edge where its next row begins, within "
    "the carrying limits of the workshop (common practice).",
)


def write_notes(grid: Grid, quote: Quote, speech: Speech) -> None:
    """Write every note as a whole sentence."""
    grid.line(words("Notes", Look.TITLE))
    notes_block(grid, "The order says", _order_notes(quote))
    for reader, title in ((Reader.MAKER, "For you to heed"), (Reader.BUYER, "To tell the buyer")):
        notes_block(grid, title, _sentences(quote.cautions, reader, speech))
    notes_block(grid, "How this workbook reckons", FOLLOWS)
    notes_block(grid, "Where the arithmetic comes from", SOURCES)


def _order_notes(quote: Quote) -> Iterator[str]:
    if quote.order.notes:
        yield quote.order.notes


def _sentences(cautions: Iterable[Caution], reader: Reader, speech: Speech) -> Iterator[str]:
    for caution in cautions:
        if caution.reader is reader:
            yield caution_sentence(caution, speech)


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
