"""The notes of a comparison: which size pays, what is left out, what to heed, the sources."""

from __future__ import annotations

from collections.abc import Iterator

from exports.workbook.cells import Look, words
from exports.workbook.grid import Grid
from exports.workbook.notes_sheet import PRICE_SOURCES, notes_block
from quoting.core.cautions import Reader
from quoting.core.comparison import Comparison
from quoting.wording import Speech, caution_sentence, refusal_words, verdict

FOLLOWS = (
    "Change a boxed figure and everything that rests on it follows: pay, hours, yarn, delivery, "
    "fees, tax, target, rounding. Money is rounded half up to the currency's own decimals (ISO "
    "4217).",
    "To try prices of your own, choose given price on the sheet of terms, then type them on the "
    "sheet of sizes: the size that pays best for an hour is named.",
    "Stitches, rows, ends, skeins and yarn left are counted, and so are the hours and the yarn "
    "that you may change: a figure typed over does not change the others.",
)

SOURCES = (
    *PRICE_SOURCES,
    "The best size earns most for an hour, as the hours are what a maker has too few of: "
    "contribution for each unit of the limiting factor (cost accounting, textbook).",
    "Three times the materials, by area and by skein are the trade's rules of thumb (common "
    "practice). By area and by skein carry over the price of the order's own size, or each "
    "size's own where that cannot be made.",
)


def write_comparison_notes(grid: Grid, comparison: Comparison, speech: Speech) -> None:
    """Write every note as a whole sentence."""
    grid.line(words("Notes", Look.TITLE))
    notes_block(grid, "When this was written", [verdict(comparison, speech)])
    left_out = (f"{some.size}: {refusal_words(some, speech)}" for some in comparison.refused)
    notes_block(grid, "Sizes left out", left_out)
    notes_block(grid, "The order says", _order_notes(comparison))
    for reader, title in ((Reader.MAKER, "For you to heed"), (Reader.BUYER, "To tell the buyer")):
        notes_block(grid, title, _cautions(comparison, reader, speech))
    if comparison.sizes:
        notes_block(grid, "How this workbook reckons", FOLLOWS)
        notes_block(grid, "Where the arithmetic comes from", SOURCES)


def _order_notes(comparison: Comparison) -> Iterator[str]:
    for some in comparison.sizes[:1]:
        if some.quote.order.notes:
            yield some.quote.order.notes


def _cautions(comparison: Comparison, reader: Reader, speech: Speech) -> Iterator[str]:
    """Yield each caution once, after the sizes that it is about unless it is about all."""
    about: dict[str, list[str]] = {}
    for some in comparison.sizes:
        for caution in some.quote.cautions:
            if caution.reader is reader:
                about.setdefault(caution_sentence(caution, speech), []).append(str(some.size))
    for sentence, sizes in about.items():
        everywhere = len(sizes) == len(comparison.sizes)
        yield sentence if everywhere else f"{', '.join(sizes)}: {sentence}"
