"""The sheet of rows: every row and round in the order worked, and what to do with the yarn."""

from __future__ import annotations

from collections.abc import Iterator

from exports.row_notes import notes_sentence, row_notes
from exports.workbook.cells import Look, counted, heads, words
from exports.workbook.grid import Grid
from exports.workbook.shapes import COUNT, TENTHS, Shapes
from quoting.core.measures import CM_PER
from quoting.core.passes import Edge, Pass, Plan, Work
from quoting.core.quote import Quote
from quoting.core.stitches import Stitch
from quoting.core.workshop import Workshop
from quoting.wording import pass_words, speech_of

WIDTHS = (4, 19, 16, 12, 10, 9, 11, 13, 84)
BOTH_SIDES = 2


def write_rows(grid: Grid, quote: Quote, shapes: Shapes) -> int:
    """Write every row and round; return the row of the sheet that holds the headings."""
    plan, speech = quote.plan, shapes.speech
    grid.line(words("Rows and rounds", Look.TITLE))
    for sentence in _preface(quote):
        grid.line(words(sentence, Look.NOTE))
    grid.gap()
    heads_at = grid.next_row
    grid.line(
        *heads("", "row or round", "colour", "stitch", "stitches", "chains", figures_from=4),
        *heads(f"height so far, {speech.length_unit}", figures_from=0),
        *heads("begins at", "what to do with the yarn", figures_from=2),
    )
    notes = row_notes(quote.estimate.strands, len(plan.passes))
    per_unit = CM_PER[speech.length_unit]
    for worked, height_cm, own in zip(plan.passes, heights_cm(plan), notes, strict=True):
        stitches = sum(count for what, count in worked.stitches.items() if what != Stitch.CH)
        chains = _chains(worked, plan, quote.workshop)
        row = grid.next_row
        grid.line(
            words(""),
            words(pass_words(worked)),
            words(worked.colour),
            words(speech.stitch(worked.stitch) if stitches else speech.stitch(Stitch.CH)),
            counted(stitches, COUNT) if stitches else None,
            counted(chains, COUNT) if chains else None,
            counted(height_cm / per_unit, TENTHS),
            words(_edge(worked)),
            words(notes_sentence(own), Look.NOTE),
        )
        grid.fill(row, _colour_code(worked.colour, quote))
    return heads_at


def _preface(quote: Quote) -> Iterator[str]:
    yield "The start edge is the one where row 1 begins; the far edge is the other."
    counting = _counting_stitches(quote)
    if counting:
        named = ", ".join(counting)
        yield f"The chains that turn a row of {named} stand for its first stitch and are counted."
    if quote.order.quantity > 1:
        yield "Where balls are joined is that of the first blanket; in the others it differs."


def _counting_stitches(quote: Quote) -> list[str]:
    """Return the stitches whose turning chain counts as one of them."""
    worked = dict.fromkeys(row.stitch for row in quote.plan.rows)
    speech = speech_of(quote.workshop)
    return [speech.stitch(name) for name in worked if quote.workshop.turning_chain(name).counts]


def heights_cm(plan: Plan) -> Iterator[float]:
    """Yield the height of the blanket after each pass; a round of the border adds at both ends."""
    height = 0.0
    for worked in plan.passes:
        height += worked.height_cm * (BOTH_SIDES if worked.work is Work.ROUND else 1)
        yield height


def _chains(worked: Pass, plan: Plan, workshop: Workshop) -> int:
    """Return the chains to make: the foundation, those that turn a row, those at corners."""
    if worked.work is Work.CHAIN:
        return plan.foundation_chain
    if worked.work is Work.ROW:
        return workshop.turning_chain(worked.stitch).chains if worked.number > 1 else 0
    return worked.stitches.get(Stitch.CH, 0)


def _edge(worked: Pass) -> str:
    return {Edge.START: "start edge", Edge.FAR: "far edge", Edge.WITHIN: ""}[worked.starts]


def _colour_code(colour: str, quote: Quote) -> str:
    source = quote.order.design.source_of(colour)
    return quote.workshop.yarn(source.yarn).colours[source.colour]
