"""The sheet of rows: every row and round in the order worked, and what to do with the yarn."""

from __future__ import annotations

from exports.colours import colour_code
from exports.sheets.cells import Look, counted, heads, words
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from exports.sheets.number_formats import COUNT, TENTHS, Shapes
from quoting.core.estimate.row_guide import chains_made, heights_cm, row_notes
from quoting.core.ground.measures import CM_PER
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Stitch
from quoting.wording import edge_name, guide_sentences, notes_sentence, pass_words

WIDTHS = (4, 19, 16, 12, 10, 9, 11, 13, 84)


def write_rows(grid: Grid, quote: Quote, shapes: Shapes) -> int:
    """Write every row and round; return the row of the sheet that holds the headings."""
    plan, speech = quote.plan, shapes.speech
    heading(grid, "Rows and rounds")
    for sentence in guide_sentences(quote, speech):
        grid.line(words(sentence, Look.NOTE))
    grid.gap()
    heads_at = grid.next_row
    grid.line(
        *heads("", "row or round", "colour", "stitch", "stitches", "chains", figures_from=4),
        *heads(f"length so far, {speech.length_unit}", figures_from=0),
        *heads("begins at", "what to do with the yarn", figures_from=2),
    )
    notes = row_notes(quote.estimate.strands, len(plan.passes))
    per_unit = CM_PER[speech.length_unit]
    for worked, height_cm, own in zip(plan.passes, heights_cm(plan), notes, strict=True):
        stitches = sum(count for what, count in worked.stitches.items() if what != Stitch.CH)
        chains = chains_made(worked, plan, quote.workshop)
        row = grid.next_row
        grid.line(
            words(""),
            words(pass_words(worked)),
            words(worked.colour),
            words(speech.stitch(worked.stitch) if stitches else speech.stitch(Stitch.CH)),
            counted(stitches, COUNT) if stitches else None,
            counted(chains, COUNT) if chains else None,
            counted(height_cm / per_unit, TENTHS),
            words(edge_name(worked.starts, speech)),
            words(notes_sentence(own, worked, speech), Look.NOTE),
        )
        grid.fill(row, colour_code(worked.colour, quote))
    grid.filter_from(heads_at)
    return heads_at
