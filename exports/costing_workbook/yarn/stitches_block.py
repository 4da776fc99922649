"""The stitches of each colour: how many of each, and the yarn in them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from exports.costing_workbook.yarn.colour_lines import TITLE as COLOURS
from exports.costing_workbook.yarn.colour_lines import ColourLines
from exports.costing_workbook.yarn.found_lines import FoundLines
from exports.costing_workbook.yarn.stitch_yarn_block import TITLE as STITCHES
from exports.costing_workbook.yarn.stitch_yarn_block import StitchYarnLines
from exports.costing_workbook.yarn.yarn_assumptions_block import Assumptions
from exports.costing_workbook.yarn.yarn_words import basis_words, stitch_words
from exports.costing_workbook.yarn.yarns_block import YarnLines
from exports.sheets.cells import Cell, Formula, Look, counted, heads, reckoned, words
from exports.sheets.grid import Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import APART, COUNT, FINE, TENTHS, Shapes
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.yarn_needed import StitchIn
from quoting.core.plan.gauge import Z_95, Gauge
from quoting.core.quote.quote import Quote

TITLE = "The yarn in the stitches"


@dataclass(frozen=True, slots=True)
class StitchLines:
    """The stitches of the colours: found by colour, yarn and stitch."""

    found: FoundLines

    def count(self, colour: str) -> str:
        """Return the stitches and chains of a colour."""
        return self.found.total("E", colour)

    def length(self, colour: str) -> str:
        """Return the yarn in them."""
        return self.found.total("G", colour)

    def square_off(self, colour: str) -> str:
        """Return the square of its standard uncertainty by swatches and guesses."""
        borrowed = self.found.total("K", colour)
        return f"{self.found.total('J', colour)}+{borrowed}^2"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rests:
    """What a line of stitches rests on elsewhere in the sheet."""

    found: FoundLines
    colours: ColourLines
    each: StitchYarnLines
    yarns: YarnLines
    assumed: Assumptions
    quote: Quote
    shapes: Shapes


def stitches_block(
    grid: Grid,
    quote: Quote,
    colours: ColourLines,
    each: StitchYarnLines,
    yarns: YarnLines,
    assumed: Assumptions,
    shapes: Shapes,
) -> StitchLines:
    """Write the stitches of every colour, in their order."""
    unit, estimates = shapes.long_unit, quote.estimate.colours
    grid.block(TITLE)
    headings = [
        *heads("", "colour", "yarn", "stitch", "how many", figures_from=4),
        *heads(f"{shapes.short_unit} each", unit, figures_from=0),
    ]
    if quote.workshop.habits.allowance is None:
        off = (f"swatch, {unit}", f"guess, {unit}", f"off, {unit}²")
        lent = f"other yarn, {unit}" if any(c.yarn.borrowed for c in estimates) else ""
        headings += [*heads(*off, lent, figures_from=0), *heads("rests on")]
    lines = Lines(grid, sum(len(colour.yarn.counts) for colour in estimates), headings)
    rests = _Rests(
        found=FoundLines(lines, "BCD"),
        colours=colours,
        each=each,
        yarns=yarns,
        assumed=assumed,
        quote=quote,
        shapes=shapes,
    )
    said = stitch_words(quote, shapes.speech)
    for colour in estimates:
        for stitch in colour.yarn.counts:
            _stitch(grid, colour, stitch, said[stitch], rests)
    lines.close(1)
    return StitchLines(rests.found)


def _stitch(grid: Grid, colour: ColourEstimate, stitch: StitchIn, said: str, rests: _Rests) -> None:
    row, shapes, count = grid.next_row, rests.shapes, colour.yarn.counts[stitch]
    yarn = colour.source.yarn
    gauge, kind = rests.quote.plan.gauges[stitch.made(yarn)], (f"C{row}", f"D{row}")
    length = f"E{row}*F{row}/{shapes.short_per_long}"
    judged = rests.quote.workshop.habits.allowance is None
    grid.line(
        None,
        words(colour.colour),
        words(yarn),
        words(said),
        counted(count, COUNT),
        reckoned(rests.each.each(*kind), shapes.short(gauge.yarn_m), FINE),
        reckoned(length, shapes.long(count * gauge.yarn_m), TENTHS),
        *(_off(row, colour, gauge, count, rests) if judged else ()),
        faults=[
            rests.colours.found.unknown(COLOURS, f"B{row}"),
            rests.each.found.unknown(STITCHES, *kind),
        ],
    )


def _off(
    row: int, colour: ColourEstimate, gauge: Gauge, count: int, rests: _Rests
) -> Iterator[Cell | None]:
    """Yield how far off the yarn may be, H to L.

    Of what rests on one swatch all is off together, so each line has its part of that square;
    what is guessed is off by itself, but that a motif works up so in other rounds is one guess.
    """
    kind, shapes, column = (f"C{row}", f"D{row}"), rests.shapes, rests.found.lines.column
    length = shapes.long(count * gauge.yarn_m)
    read, guessed = length * gauge.basis_error, length * gauge.guess_limits / Z_95
    yield reckoned(f"G{row}*{rests.each.read_off(*kind)}", read, FINE)
    limits = rests.assumed.standard(rests.each.guessed_off(*kind))
    yield reckoned(f"G{row}*{limits}", guessed, FINE)
    shared = f"--EXACT({column('B')},B{row}),--EXACT({column('L')},L{row})"
    together, guess = f"SUMPRODUCT({shared},{column('H')})", f"I{row}"
    alike = [each for each in _gauges(colour, rests.quote).items() if each[1].basis == gauge.basis]
    off_m = _metres(colour, {s: g.yarn_m * g.basis_error for s, g in alike})
    guesses = guessed
    if gauge.one_guess:
        guess = f"SUMPRODUCT({shared},{column('I')})"
        guessed_m = _metres(colour, {s: g.yarn_m * g.guess_limits for s, g in alike})
        guesses = shapes.long(guessed_m) / Z_95
    square = read * shapes.long(off_m) + guessed * guesses
    yield reckoned(f"H{row}*{together}+I{row}*{guess}", square, FINE)
    limits = rests.assumed.standard(rests.yarns.borrowed(f"C{row}"))
    lent = length * gauge.borrowed_limits / Z_95
    yield reckoned(f"G{row}*{limits}", lent, FINE + APART) if gauge.borrowed_limits else None
    said = basis_words(gauge, rests.quote, shapes.speech)
    yield Cell(Formula(rests.each.rests_on(*kind), said), Look.NOTE)


def _gauges(colour: ColourEstimate, quote: Quote) -> dict[StitchIn, Gauge]:
    return {s: quote.plan.gauges[s.made(colour.source.yarn)] for s in colour.yarn.counts}


def _metres(colour: ColourEstimate, each_m: Mapping[StitchIn, float]) -> float:
    """Return what some of a colour's stitches come to together, at so much each."""
    return math.fsum(colour.yarn.counts[stitch] * metres for stitch, metres in each_m.items())
