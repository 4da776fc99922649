"""The notes of a comparison: which size pays, what is left out, what to heed, the sources."""

from __future__ import annotations

from collections.abc import Iterator

from exports.costing_workbook.notes_sheet import (
    caution_blocks,
    notes_block,
    order_block,
    reckoning_blocks,
)
from exports.sheets.cells import Look, words
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from quoting.core.ground.cautions import Reader
from quoting.core.weighing.comparison import Comparison
from quoting.wording import (
    COMPARISON_FOLLOWS,
    COMPARISON_SOURCES,
    Speech,
    caution_sentence,
    refusal_words,
    verdict,
)


def write_comparison_notes(grid: Grid, comparison: Comparison, speech: Speech) -> None:
    """Write every note as a whole sentence; where nothing is compared, nothing is checked."""
    if comparison.sizes:
        heading(grid, "Notes")
    else:
        grid.line(words("Notes", Look.TITLE))
    notes_block(grid, "When this was written", [verdict(comparison, speech)])
    left_out = (f"{some.size}: {refusal_words(some, speech)}" for some in comparison.refused)
    notes_block(grid, "Sizes left out", left_out)
    if comparison.sizes:
        order_block(grid, comparison.sizes[0].quote)
        caution_blocks(grid, lambda reader: _cautions(comparison, reader, speech))
        reckoning_blocks(grid, COMPARISON_FOLLOWS, COMPARISON_SOURCES)


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
