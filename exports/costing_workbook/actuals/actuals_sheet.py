"""The sheet to fill in when it is made: what it really took, beside what was estimated."""

from __future__ import annotations

from decimal import Decimal

from exports.costing_workbook.actuals.actual_line import EMPTY, ActualLine, compare_line
from exports.costing_workbook.actuals.actual_money_block import money_block
from exports.costing_workbook.actuals.known import Actuals
from exports.costing_workbook.costing.found import Found
from exports.costing_workbook.hours.parts_block import HourRefs
from exports.costing_workbook.yarn.colour_lines import ColourLines
from exports.costing_workbook.yarn.yarn_sheet import YarnRefs
from exports.sheets.cells import Formula, Look, beside, heads, span_of, words
from exports.sheets.grid import Grid
from exports.sheets.heading import heading
from exports.sheets.number_formats import COUNT, FINE, HOURS, Shapes
from quoting.core.estimate.chores import Part
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.ground.money import MINUTES_PER_HOUR, round_half_up
from quoting.core.making.made_rows import made_rows
from quoting.core.plan.parts import PartKind
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, part_words
from quoting.wording.making_words import projected_words
from quoting.wording.motif_words import minutes_a_motif

TITLE = "Actuals"
WIDTHS = (40, 15, 15, 15, 17, 40)
FLAGS = "F"
HEADS = heads("", "estimated", "really", "difference", "of the estimate")

TO_BE_FILLED_IN = "Fill in what you know; the rest stays as it was estimated."
FROM_LOG = (
    "Filled in from what was written down. No clock tells turns, changes and joins apart: they are "
    "as estimated, and the stitching is the rest."
)


def write_actuals(
    grid: Grid, quote: Quote, yarns: YarnRefs, found: Found, shapes: Shapes, known: Actuals
) -> None:
    """Write the sheet: hours by part, pace, yarn by colour, and what an hour really earned.

    What is known already is filled in.
    """
    heading(grid, "What it really took")
    grid.line(words(FROM_LOG if known.is_from_log else TO_BE_FILLED_IN, Look.NOTE))
    if said := projected_words(known.projected, made_rows(quote), shapes.speech):
        grid.line(words(said, Look.NOTE))
    hours = _hours(grid, quote, found.sums.hours, yarns.colours, shapes.speech, known)
    _yarn(grid, quote, yarns, shapes, known)
    money_block(grid, quote, found, hours, shapes, known)


def _hours(
    grid: Grid,
    quote: Quote,
    hours: HourRefs,
    colours: ColourLines,
    speech: Speech,
    known: Actuals,
) -> ActualLine:
    """Write the hours of each part, of all of them, and the pace of the stitching."""
    own = quote.estimate.hours
    grid.block("Hours")
    grid.line(*HEADS)
    parts = {
        part: compare_line(
            grid,
            words(part_words(part, speech, quote)),
            Formula(str(ref), ref.value),
            HOURS,
            known=known.hours.get(part),
        )
        for part, ref in hours.parts.items()
    }
    typed = span_of([line.really for line in parts.values()])
    best = "+".join(line.best for line in parts.values())
    told = any(line.is_known for line in parts.values())
    sum_of = sum((line.best_value for line in parts.values()), Decimal(0))
    together = Formula(f'IF(COUNT({typed})=0,"",{best})', sum_of if told else EMPTY)
    total = Formula(str(hours.total), own.total)
    every = compare_line(grid, words("All hours", Look.FOOT), total, HOURS, together)
    _pace(grid, quote, hours, colours, parts[Part.STITCHING])
    if quote.plan.copies_of(PartKind.MOTIF):
        _motif_pace(grid, quote, hours, parts[Part.STITCHING])
    return every


def _pace(
    grid: Grid, quote: Quote, hours: HourRefs, colours: ColourLines, stitched: ActualLine
) -> None:
    """Write how long a stitch takes, ripping back and all, and how long it really took."""
    stitching, really = hours.parts[Part.STITCHING], stitched.really
    stitches = f"MAX(1,{colours.all_stitches})"
    counted = sum(sum(colour.yarn.counts.values()) for colour in quote.estimate.colours)
    per_hour = MINUTES_PER_HOUR / max(1, counted)
    each = float(stitching.value) * per_hour
    took = float(stitched.best_value) * per_hour if stitched.is_known else EMPTY
    compare_line(
        grid,
        words(grid.worded("Minutes a stitch, pulling back with it")),
        Formula(f"{stitching}*{MINUTES_PER_HOUR}/{stitches}", each),
        FINE,
        Formula(f'IF({really}="","",{really}*{MINUTES_PER_HOUR}/{stitches})', took),
    )


def _motif_pace(grid: Grid, quote: Quote, hours: HourRefs, stitched: ActualLine) -> None:
    """Write how long a motif takes: its part of the stitching, ripping back and all."""
    stitching, really, in_motifs = hours.parts[Part.STITCHING], stitched.really, hours.motif_minutes
    motifs = quote.plan.copies_of(PartKind.MOTIF) * quote.order.quantity
    every = hours.stitching_minutes
    all_minutes = float(every.value)
    of_each = float(in_motifs.value) / all_minutes / motifs if all_minutes else 0.0
    each_expression = f"IF({every}>0,({in_motifs.expression})/{every},0)/{motifs}"
    per_hour = of_each * MINUTES_PER_HOUR
    compare_line(
        grid,
        words(grid.worded(minutes_a_motif(quote))),
        Formula(
            f"{stitching}*{MINUTES_PER_HOUR}*{each_expression}", float(stitching.value) * per_hour
        ),
        FINE,
        Formula(
            f'IF({really}="","",{really}*{MINUTES_PER_HOUR}*{each_expression})',
            float(stitched.best_value) * per_hour if stitched.is_known else EMPTY,
        ),
    )


def _yarn(grid: Grid, quote: Quote, yarns: YarnRefs, shapes: Shapes, known: Actuals) -> None:
    """Write the grams of each colour, and the yarn that a stitch of it took."""
    colours = quote.estimate.colours
    grid.block("Yarn, g")
    grid.line(*HEADS)
    lines = []
    for colour in colours:
        grams = yarns.colours.grams(beside("A", grid.next_row))
        expected = Formula(grams, round_half_up(colour.grams, 0))
        really = known.grams.get(colour.colour)
        lines.append(compare_line(grid, words(colour.colour), expected, COUNT, known=really))
    grid.block(f"Yarn in a stitch, {shapes.short_unit}")
    grid.line(*HEADS)
    for colour, line in zip(colours, lines, strict=True):
        _stitch_yarn(grid, colour, yarns.colours, line, shapes)


def _stitch_yarn(
    grid: Grid, colour: ColourEstimate, lines: ColourLines, weighed: ActualLine, shapes: Shapes
) -> None:
    """Write the yarn that a stitch of one colour took: of all of it less what is no stitch."""
    name = beside("A", grid.next_row)
    stitches = max(1, sum(colour.yarn.counts.values()))
    short = shapes.short_per_long / stitches
    each, really = shapes.long(colour.yarn.stitches_m) * short, weighed.really
    sewn = lines.length_in_stitches(name)
    took = f"{really}*{lines.length_per_gram(name)}-({lines.expected(name)}-{sewn})"
    per_stitch = f"{shapes.short_per_long}/MAX(1,{lines.stitches(name)})"
    compare_line(
        grid,
        words(colour.colour),
        Formula(f"{sewn}*{per_stitch}", each),
        FINE,
        Formula(f'IF({really}="","",({took})*{per_stitch})', _took(colour, weighed, shapes, short)),
    )


def _took(colour: ColourEstimate, weighed: ActualLine, shapes: Shapes, short: float) -> float | str:
    """Return what the yarn in a stitch really was, where the colour was weighed."""
    if not weighed.is_known:
        return EMPTY
    all_m = float(weighed.best_value) * colour.metres_per_gram
    other_m = colour.metres - colour.yarn.stitches_m
    return shapes.long(all_m - other_m) * short
