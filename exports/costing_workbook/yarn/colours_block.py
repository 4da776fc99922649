"""What each colour takes, what there is of it, and whether that is enough."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from exports.colours import colour_code
from exports.costing_workbook.yarn.balls_block import TITLE as TO_BUY
from exports.costing_workbook.yarn.balls_block import PackLines
from exports.costing_workbook.yarn.chance_block import ChanceLines
from exports.costing_workbook.yarn.colour_lines import TITLE, ColourLines
from exports.costing_workbook.yarn.found_lines import FoundLines
from exports.costing_workbook.yarn.sewn_yarn_block import SewnLines
from exports.costing_workbook.yarn.shelf_block import ShelfLines
from exports.costing_workbook.yarn.stitches_block import StitchLines
from exports.costing_workbook.yarn.yarn_assumptions_block import Assumptions
from exports.costing_workbook.yarn.yarns_block import TITLE as YARNS
from exports.costing_workbook.yarn.yarns_block import YarnLines
from exports.sheets.cells import Cell, Look, Ref, counted, heads, reckoned, rounded, summed, words
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, ROUGH_SHARE, TENTHS, Shapes
from quoting.core.estimate.enough import ROUNDING_M, metres_short
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.ground.money import round_half_up
from quoting.core.quote.quote import Quote

WHOLE = frozenset("EHQRS")
SUMMED = "EFGHIJKLNOPQRST"


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourRests:
    """What a colour's line rests on further down the sheet."""

    lines: ColourLines
    stitches: StitchLines
    sewn: SewnLines
    chance: ChanceLines
    packs: PackLines
    shelf: ShelfLines
    yarns: YarnLines
    assumed: Assumptions
    quote: Quote
    shapes: Shapes


@dataclass(frozen=True, slots=True)
class At:
    """The cells of one colour's own line."""

    row: int

    def __getitem__(self, letter: str) -> str:
        """Return one of them."""
        return f"{letter}{self.row}"


def colours_head(grid: Grid, quote: Quote, shapes: Shapes) -> ColourLines:
    """Write the headings of the colours, and leave room for their lines and the sums."""
    unit = shapes.long_unit
    grid.block(TITLE)
    headings = [
        *heads("", "colour", "yarn", "its colour", figures_from=9),
        *heads("stitches", f"in stitches, {unit}", figures_from=0),
        *heads(f"carried, {unit}", "ends", f"tails, {unit}", f"extras, {unit}", figures_from=0),
        *heads(f"yarn used, {unit}", f"of it for joins, {unit}", "reserve", figures_from=0),
        *heads(f"to have, {unit}", f"held, {unit}", f"short, {unit}", "weight, g", figures_from=0),
        *heads("from the shelf, g", "balls", f"left over, {unit}", figures_from=0),
        *heads(f"{unit} a gram", figures_from=0),
    ]
    lines = Lines(grid, len(quote.estimate.colours), headings)
    grid.next_row = lines.closing_row + 2
    return ColourLines(FoundLines(lines, "B"))


def colours_block(grid: Grid, rests: ColourRests) -> None:
    """Write the line of every colour and the sums of all."""
    after, lines = grid.next_row, rests.lines.found.lines
    grid.next_row = lines.heads_row + 1
    written = [_colour(grid, colour, rests) for colour in rests.quote.estimate.colours]
    lines.close(1)
    _foot(grid, written, lines)
    grid.next_row = after


def _colour(grid: Grid, colour: ColourEstimate, rests: ColourRests) -> list[Ref]:
    """Write one colour's line: A to U, a swatch first."""
    at, source = At(grid.next_row), colour.source
    refs = grid.line(
        words(""),
        words(colour.colour),
        words(source.yarn),
        words(source.colour),
        *_taken(colour, rests, at),
        *_to_have(colour, rests, at),
        *_weighed(colour, rests, at),
        faults=list(_faults(colour, rests, at)),
    )
    grid.fill(at.row, colour_code(colour.colour, rests.quote))
    return refs


def _taken(colour: ColourEstimate, rests: ColourRests, at: At) -> Iterator[Cell]:
    """Yield what the work takes, E to L: in stitches, carries, tails, extras, and together."""
    long, yarn = rests.shapes.long, colour.yarn
    tails = f"{at['H']}*{rests.assumed['tail']}/{rests.shapes.short_per_long}"
    yield reckoned(rests.stitches.count(at["B"]), sum(yarn.counts.values()), COUNT)
    worked = f"{rests.stitches.length(at['B'])}+{rests.sewn.length(at['B'])}"
    yield reckoned(worked, long(yarn.stitches_m), TENTHS)
    yield counted(long(colour.carried_m), TENTHS)
    yield counted(colour.ends, COUNT)
    yield reckoned(tails, long(colour.tails_m), TENTHS)
    yield counted(long(yarn.extras_m), TENTHS)
    together = f"{at['F']}+{at['G']}+{at['I']}+{at['J']}"
    yield reckoned(together, long(colour.metres), TENTHS)
    yield counted(long(colour.metres - colour.bare_m), TENTHS)


def _to_have(colour: ColourEstimate, rests: ColourRests, at: At) -> Iterator[Cell]:
    """Yield what to have for it, M to P: reserve, length, what there is, what is missing."""
    long, word = rests.shapes.long, at["B"]
    joins = f"MAX(0,{at['S']}+{rests.shelf.balls(word)}-1)"
    tails = f"{joins}*2*{rests.assumed['tail']}/{rests.shapes.short_per_long}"
    have = f"({at['K']}-{at['L']}-{at['J']})*(1+{at['M']})+{at['J']}+{tails}"
    held = f"{rests.packs.length(word)}+{rests.shelf.length(word)}"
    short = f"IF({at['N']}-{at['O']}>{long(ROUNDING_M)!r},{at['N']}-{at['O']},0)"
    yield reckoned(_reserve(rests, at), colour.reserve, ROUGH_SHARE)
    yield reckoned(have, long(colour.metres_to_buy), TENTHS)
    yield reckoned(held, long(math.fsum(colour.balls_m)), TENTHS)
    yield reckoned(short, long(metres_short(colour)), TENTHS)


def _weighed(colour: ColourEstimate, rests: ColourRests, at: At) -> Iterator[Cell]:
    """Yield weight, shelf, skeins, what is left over, and the length of a gram: Q to U.

    What comes from the shelf follows the weight where the whole of a colour does.
    """
    long = rests.shapes.long
    grams = rounded(f"IF({at['U']}>0,{at['K']}/{at['U']},0)", 0)
    yield reckoned(grams, round_half_up(colour.grams, 0), COUNT)
    shelf_g = round_half_up(colour.from_stock_g, 0)
    from_shelf = not colour.choice.bought and math.isclose(colour.from_stock_g, colour.grams)
    yield reckoned(at["Q"], shelf_g, COUNT) if from_shelf else counted(shelf_g, COUNT)
    yield reckoned(rests.packs.balls(at["B"]), colour.choice.skeins, COUNT)
    yield reckoned(f"{at['O']}-{at['K']}", long(colour.metres_left), TENTHS)
    per_gram = rests.yarns.length_per_gram(at["C"])
    yield reckoned(per_gram, long(colour.metres_per_gram), "0.00")


def _reserve(rests: ColourRests, at: At) -> str:
    """Return the share to have on top, from what the swatches, tension and the label leave."""
    assumed = rests.assumed
    if rests.quote.workshop.habits.allowance is not None:
        return assumed["allowance"]
    own = f"{rests.stitches.square_off(at['B'])}+{rests.sewn.square_off(at['B'])}"
    off = f"SQRT(({own})/{at['F']}^2+{assumed.shared_square}+{rests.chance.square_off(at['B'])})"
    return f"IF({at['F']}>0,{assumed.deviations}*{off}*{assumed['yarn_widened']},0)"


def _faults(colour: ColourEstimate, rests: ColourRests, at: At) -> Iterator[Fault]:
    """Yield what may be wrong with a colour: not enough, or not what was counted with."""
    unit, word, skeins = rests.shapes.long_unit, at["B"], colour.choice.skeins
    packs = f'IF({rests.packs.ways(word)}=1,{rests.packs.wanted(word)}&" packs wanted",'
    where = f'"see the packs wanted under {TO_BUY}")'
    yield rests.lines.found.twice(word)
    yield rests.yarns.found.unknown(YARNS, at["C"])
    yield Fault(f"{at['P']}>0", f'ROUNDUP({at["P"]},1)&" {unit} short: "&{packs}{where}')
    balls = "ball" if skeins == 1 else "balls"
    yield Fault(
        f"{at['S']}<>{skeins}", f'"ends and joins were counted for {skeins} {balls} to buy"'
    )


def _foot(grid: Grid, written: Sequence[Sequence[Ref]], lines: Lines) -> None:
    """Write the sums of all colours; a reserve and a length for a gram are not added up."""
    cells = []
    for column in list(zip(*written, strict=True))[4:]:
        letter = column[0].column
        shape = COUNT if letter in WHOLE else TENTHS
        if letter not in SUMMED:
            cells.append(words("", Look.TOTAL))
            continue
        total = math.fsum(float(ref.value) for ref in column)
        cells.append(summed(f"SUM({lines.column(letter)})", total, shape))
    grid.line(None, words(grid.worded("all colours"), Look.FOOT), None, None, *cells)
