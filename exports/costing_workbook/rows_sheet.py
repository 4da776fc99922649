"""The sheet of rows: every row and round in the order worked, and what to do with the yarn.

Where motifs are joined it has each round of a motif of each layout, the seams and the border, once
each, with how often they are worked.
"""

from __future__ import annotations

from dataclasses import dataclass

from exports.colours import colour_code
from exports.sheets.cells import Cell, Look, Span, counted, heads, reckoned, summed, words
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from exports.sheets.number_formats import APART, COUNT, TENTHS, Shapes
from quoting.core.estimate.row_guide import chains_made, heights_cm, row_notes
from quoting.core.ground.measures import CM_PER
from quoting.core.plan.passes import Pass
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Stitch
from quoting.wording import (
    begins_words,
    each_part_words,
    guide_sentences,
    notes_sentence,
    sewn_sentence,
)

WIDTHS = (4, 19, 16, 12, 10, 9, 11, 13, 84)
SEWN = "sewn"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """A row or round, the length of the blanket after it, and what is done with its yarn."""

    worked: Pass
    length_cm: float
    said: str


def write_rows(grid: Grid, quote: Quote, shapes: Shapes) -> int:
    """Write every row and round; return the row of the sheet that holds the headings."""
    speech, joined = shapes.speech, quote.plan.grid is not None
    title, each = _named(quote)
    heading(grid, title)
    for sentence in guide_sentences(quote, speech):
        grid.line(words(sentence, Look.NOTE))
    grid.gap()
    heads_at = grid.next_row
    grid.line(
        *heads("", each, "colour", "stitch", "stitches", "chains", figures_from=4),
        *(_part_heads() if joined else _length_heads(shapes)),
        *heads("what to do with the yarn"),
    )
    for row in _rows(quote, shapes):
        at = grid.next_row
        middle = _times(at, row.worked, quote) if joined else _length(row, quote, shapes)
        grid.line(*_counts(row.worked, quote, shapes), *middle, words(row.said, Look.NOTE))
        grid.fill(at, colour_code(row.worked.colour, quote))
    grid.filter_from(heads_at)
    if joined:
        _together(grid, heads_at, quote)
    return heads_at


def _named(quote: Quote) -> tuple[str, str]:
    """Return what the sheet lists, and what one of them is: rows only where there are some."""
    if quote.plan.in_rows:
        return "Rows and rounds", "row or round"
    return ("Rounds", "round") if quote.plan.grid is None else ("Rounds and seams", "round or seam")


def _rows(quote: Quote, shapes: Shapes) -> list[_Row]:
    """Return every row and round; of parts that are made several times, of the first of them."""
    plan, speech = quote.plan, shapes.speech
    first = [strand for strand in quote.estimate.strands if strand.starts.copy == 0]
    notes = row_notes(first, len(plan.passes))
    return [
        _Row(
            worked=worked,
            length_cm=length_cm,
            said=sewn_sentence(worked, speech) + notes_sentence(own, worked, plan, speech),
        )
        for worked, length_cm, own in zip(plan.passes, heights_cm(plan), notes, strict=True)
    ]


def _counts(worked: Pass, quote: Quote, shapes: Shapes) -> list[Cell | None]:
    """Return what is worked, A to F: its colour, its stitches and its chains."""
    stitches, chains = _stitches(worked), chains_made(worked, quote.plan, quote.workshop)
    stitch = worked.stitch if stitches else Stitch.CH
    return [
        words(""),
        words(each_part_words(worked, quote.plan)),
        words(worked.colour),
        words(SEWN if worked.sewn_m else shapes.speech.stitch(stitch)),
        counted(stitches, COUNT) if stitches else None,
        counted(chains, COUNT) if chains else None,
    ]


def _stitches(worked: Pass) -> int:
    return sum(count for what, count in worked.stitches.items() if what != Stitch.CH)


def _length_heads(shapes: Shapes) -> list[Cell]:
    so_far = heads(f"length so far, {shapes.speech.length_unit}", figures_from=0)
    return [*so_far, *heads("begins at")]


def _length(row: _Row, quote: Quote, shapes: Shapes) -> list[Cell | None]:
    speech = shapes.speech
    length = row.length_cm / CM_PER[speech.length_unit]
    begins = begins_words(row.worked, quote.plan, speech)
    return [counted(length, TENTHS), words(begins)]


def _part_heads() -> list[Cell]:
    return heads("how often", "stitches and chains in all", figures_from=0)


def _times(row: int, worked: Pass, quote: Quote) -> list[Cell | None]:
    """Return how often a round is worked, and its stitches in all; a seam that is sewn has none."""
    times, each = quote.plan.times(worked), sum(worked.stitches.values())
    in_all = reckoned(f"(N(E{row})+N(F{row}))*G{row}", each * times, COUNT + APART)
    return [counted(times, COUNT), in_all if each else None]


def _together(grid: Grid, heads_at: int, quote: Quote) -> None:
    """Write all stitches and chains of one blanket under the list."""
    plan = quote.plan
    column = Span(grid.title, "H", heads_at, grid.next_row - 1)
    every = sum(sum(worked.stitches.values()) * plan.times(worked) for worked in plan.passes)
    label = words("all of one blanket", Look.FOOT)
    grid.line(None, label, *[None] * 5, summed(f"SUM({column})", every, COUNT + APART))
