"""The sheet of yarn: what each colour takes, what is bought for it, and what is left over."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from exports.colours import colour_code
from exports.costing_workbook.ball_ends_block import ball_ends_block
from exports.costing_workbook.balls_block import BallRefs, balls_block
from exports.costing_workbook.prices_block import PriceRefs, prices_block
from exports.costing_workbook.stitch_yarn_block import StitchYarnRefs, stitch_yarn_block
from exports.sheets.cells import (
    Cell,
    Look,
    Ref,
    counted,
    heads,
    reckoned,
    rounded,
    summed,
    total_of,
    words,
    yours,
)
from exports.sheets.grid import Grid
from exports.sheets.legend import legend
from exports.sheets.number_formats import COUNT, ROUGH_SHARE, SHARE, TENTHS, Shapes
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.yarn_needed import LABEL_ERROR
from quoting.core.ground.money import round_half_up
from quoting.core.plan.gauge import ESTIMATED_LIMITS, Z_95
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits

WIDTHS = (3, 18, 20, 11, 11, 9, 10, 11, 13, 10, 10, 11, 10, 11, 9, 11)
HEADS_ROWS = 3
FOOT_ROWS = 6
"""The sums of all colours, and what the workshop says of tails and of the reserve."""

SUMMED = frozenset("DEFGHIJLMNOP")


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnRefs:
    """One colour's cells that the costing reads, and how its yarn is sold."""

    estimate: ColourEstimate
    grams: Ref
    stock_g: Ref
    balls: BallRefs
    prices: PriceRefs


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rests:
    """What a colour's line rests on further down the sheet."""

    stitches: StitchYarnRefs
    balls: BallRefs
    prices: PriceRefs
    habits: _HabitCells


@dataclass(frozen=True, slots=True)
class _HabitCells:
    """Where the foot of the colours says how long a tail is, and what the reserve covers."""

    first_row: int

    @property
    def tail(self) -> str:
        """The length of one tail."""
        return f"Yarn!G{self.first_row}"

    @property
    def wanted(self) -> str:
        """How sure it should be that the yarn is enough, or the reserve itself where it is set."""
        return f"Yarn!G{self.first_row + 1}"

    @property
    def shared_square(self) -> str:
        """The square of what all of a colour's yarn is off by together: tension and label."""
        return f"Yarn!G{self.first_row + 2}^2+Yarn!G{self.first_row + 3}^2"

    @property
    def borrowed_square(self) -> str:
        """The square of what a yarn may be off by that goes by the swatch of another."""
        return f"(Yarn!G{self.first_row + 4}/{Z_95})^2"


def write_yarn(grid: Grid, quote: Quote, shapes: Shapes) -> list[YarnRefs]:
    """Write the sheet and return each colour's cells, in the order of the estimate.

    What each colour needs stands on top, so it is written last.
    """
    colours = quote.estimate.colours
    grid.line(words("Yarn by colour", Look.TITLE))
    legend(grid, indent=1)
    top = grid.next_row
    habits = _HabitCells(top + HEADS_ROWS + len(colours) + 1)
    grid.next_row = top + HEADS_ROWS + len(colours) + FOOT_ROWS
    prices = prices_block(grid, quote, shapes)
    balls = balls_block(grid, quote, prices, shapes)
    stitches = stitch_yarn_block(grid, quote, shapes)
    ball_ends_block(grid, quote)
    grid.next_row = top
    _headings(grid, shapes)
    rests = [
        _Rests(stitches=sewn, balls=held, prices=prices[colour.source.yarn], habits=habits)
        for colour, held, sewn in zip(colours, balls, stitches, strict=True)
    ]
    lines = [
        _colour(grid, colour, rest, quote, shapes)
        for colour, rest in zip(colours, rests, strict=True)
    ]
    _foot(grid, lines, quote, shapes)
    return [
        YarnRefs(
            estimate=colour, grams=line[12], stock_g=line[13], balls=rest.balls, prices=rest.prices
        )
        for colour, rest, line in zip(colours, rests, lines, strict=True)
    ]


def _headings(grid: Grid, shapes: Shapes) -> None:
    unit = shapes.long_unit
    grid.block("What each colour takes")
    grid.line(
        *heads("", "colour", "yarn", f"stitches, {unit}", f"carried, {unit}", figures_from=3),
        *heads("ends", f"tails, {unit}", f"extras, {unit}", f"expected, {unit}", figures_from=0),
        *heads(f"of it for joins, {unit}", "reserve", f"to have, {unit}", figures_from=0),
        *heads("weight, g", "from the shelf, g", "skeins", f"left over, {unit}", figures_from=0),
    )


def _colour(
    grid: Grid, colour: ColourEstimate, rests: _Rests, quote: Quote, shapes: Shapes
) -> list[Ref]:
    """Write one colour's line: A to P, a swatch first."""
    row, source = grid.next_row, colour.source
    at = {letter: f"Yarn!{letter}{row}" for letter in "DEFGHIJKLMNOP"}
    said = source.yarn if source.colour == colour.colour else f"{source.yarn}, {source.colour}"
    refs = grid.line(
        words(""),
        words(colour.colour),
        words(said),
        *_taken(colour, rests, at, shapes),
        *_to_have(colour, rests, at, quote.workshop.habits, shapes),
    )
    grid.fill(row, colour_code(colour.colour, quote))
    return refs


def _taken(
    colour: ColourEstimate, rests: _Rests, at: Mapping[str, str], shapes: Shapes
) -> Iterator[Cell]:
    """Yield what the work takes, D to J: in stitches, carries, tails, extras, and together."""
    long = shapes.long
    tails = f"{at['F']}*{rests.habits.tail}/{shapes.short_per_long}"
    yield reckoned(total_of(rests.stitches.lengths), long(colour.yarn.stitches_m), TENTHS)
    yield counted(long(colour.carried_m), TENTHS)
    yield counted(colour.ends, COUNT)
    yield reckoned(tails, long(colour.tails_m), TENTHS)
    yield counted(long(colour.yarn.extras_m), TENTHS)
    together = f"{at['D']}+{at['E']}+{at['G']}+{at['H']}"
    yield reckoned(together, long(colour.metres), TENTHS)
    yield counted(long(colour.metres - colour.bare_m), TENTHS)


def _to_have(
    colour: ColourEstimate,
    rests: _Rests,
    at: Mapping[str, str],
    habits: Habits,
    shapes: Shapes,
) -> Iterator[Cell]:
    """Yield what to have for it, K to P: reserve, length, weight, shelf, skeins, left over."""
    balls, long = rests.balls, shapes.long
    joins = f"MAX(0,{at['O']}+{len(balls.shelf)}-1)"
    tails = f"{joins}*2*{rests.habits.tail}/{shapes.short_per_long}"
    have = f"({at['I']}-{at['J']}-{at['H']})*(1+{at['K']})+{at['H']}+{tails}"
    grams = rounded(f"{at['I']}/({rests.prices.length_per_gram})", 0)
    bought = total_of([some.length for some in balls.bought])
    skeins = total_of([some.balls for some in balls.bought])
    left = f"{bought}+{total_of(balls.shelf)}-{at['I']}"
    yield reckoned(_reserve(colour, rests, at["D"], habits), colour.reserve, ROUGH_SHARE)
    yield reckoned(have, long(colour.metres_to_buy), TENTHS)
    yield reckoned(grams, round_half_up(colour.grams, 0), COUNT)
    yield counted(round_half_up(colour.from_stock_g, 0), COUNT)
    yield reckoned(skeins, colour.choice.skeins, COUNT)
    yield reckoned(left, long(colour.metres_left), TENTHS)


def _reserve(colour: ColourEstimate, rests: _Rests, stitches: str, habits: Habits) -> str:
    """Return the share to have on top, from what the swatches, tension and the label leave."""
    cells = rests.habits
    if habits.allowance is not None:
        return cells.wanted
    if not rests.stitches.lengths:
        return "0"
    swatches = f"({rests.stitches.square_off})/{stitches}^2"
    borrowed = f"+{cells.borrowed_square}" if colour.yarn.borrowed else ""
    return f"NORMSINV({cells.wanted})*SQRT({swatches}+{cells.shared_square}{borrowed})"


def _foot(grid: Grid, lines: Sequence[Sequence[Ref]], quote: Quote, shapes: Shapes) -> None:
    """Write the sums of all colours, the length of a tail, and what the reserve covers."""
    shape_of = {"F": COUNT, "M": COUNT, "N": COUNT, "O": COUNT}
    columns = {column[0].column: column for column in zip(*lines, strict=True)}
    sums = [
        summed(total_of(refs), _sum(refs), shape_of.get(letter, TENTHS))
        if letter in SUMMED
        else words("", Look.TOTAL)
        for letter, refs in columns.items()
    ]
    grid.line(None, words("all colours", Look.FOOT), *sums[2:])
    habits = quote.workshop.habits
    tail = yours(shapes.short(habits.tail_m), TENTHS)
    _habit(grid, "tail", f"one tail, {shapes.short_unit}", tail)
    if habits.allowance is not None:
        _habit(grid, "allowance", "your reserve", yours(habits.allowance, SHARE))
        return
    _habit(grid, "confidence", "sure that it is enough", yours(habits.confidence, SHARE))
    _habit(grid, "tension", "tension drifts by", yours(habits.tension, SHARE))
    _habit(grid, "label_off", "labels are off by", yours(LABEL_ERROR, SHARE))
    if any(colour.yarn.borrowed for colour in quote.estimate.colours):
        within = yours(ESTIMATED_LIMITS, SHARE)
        _habit(grid, "borrowed_off", "a yarn without a swatch, within", within)


def _habit(grid: Grid, name: str, label: str, cell: Cell) -> None:
    grid.name(name, grid.line(None, words(label), *[None] * 4, cell)[1])


def _sum(refs: Sequence[Ref]) -> float | int:
    numbers = [ref.value for ref in refs if not isinstance(ref.value, str)]
    return math.fsum(float(number) for number in numbers)
