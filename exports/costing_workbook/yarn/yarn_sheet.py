"""The sheet of yarn: what each colour takes, what is bought for it, and what is left over."""

from __future__ import annotations

from dataclasses import dataclass

from openpyxl import Workbook

from exports.costing_workbook.yarn.ball_ends_block import ball_ends_block
from exports.costing_workbook.yarn.balls_block import PackLines, packs_block
from exports.costing_workbook.yarn.chance_block import chance_block
from exports.costing_workbook.yarn.colour_lines import ColourLines
from exports.costing_workbook.yarn.colours_block import ColourRests, colours_block, colours_head
from exports.costing_workbook.yarn.motif_yarn_block import motif_yarn_block
from exports.costing_workbook.yarn.prices_block import prices_block
from exports.costing_workbook.yarn.sewn_yarn_block import sewn_yarn_block
from exports.costing_workbook.yarn.shelf_block import ShelfLines, shelf_block
from exports.costing_workbook.yarn.stitch_yarn_block import stitch_yarn_block
from exports.costing_workbook.yarn.stitches_block import stitches_block
from exports.costing_workbook.yarn.yarn_assumptions_block import assumptions_block
from exports.costing_workbook.yarn.yarns_block import yarns_block
from exports.sheets.cells import Look, words
from exports.sheets.checks import Check, state_line
from exports.sheets.grid import Fault, Grid
from exports.sheets.legend import legend
from exports.sheets.number_formats import Shapes
from quoting.core.quote.quote import Quote
from quoting.wording import Speech

TITLE, FLAGS, LABELS = "Yarn", "V", "B"
WIDTHS = (3, 16, 19, 18, *[9.5] * 17, 60)


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnRefs:
    """What other sheets read of the yarn, all of it by the words of a colour.

    `checks` are what should hold of it.
    """

    colours: ColourLines
    packs: PackLines
    shelf: ShelfLines
    checks: tuple[Check, ...]


def yarn_grid(book: Workbook, speech: Speech) -> Grid:
    """Return the sheet, empty."""
    return Grid(book, TITLE, WIDTHS, flags=FLAGS, labels=LABELS, worded=speech.worded)


def write_yarn(grid: Grid, quote: Quote, shapes: Shapes) -> YarnRefs:
    """Write the sheet. What each colour needs stands on top, so it is written last."""
    grid.line(words(grid.worded("Yarn by colour"), Look.TITLE))
    state_line(grid, indent=1)
    legend(grid, indent=1)
    colours = colours_head(grid, quote, shapes)
    assumed = assumptions_block(grid, quote, shapes)
    prices = prices_block(grid, quote, shapes)
    yarns = yarns_block(grid, quote, prices, shapes)
    shelf = shelf_block(grid, quote, colours, yarns, shapes)
    packs = packs_block(grid, quote, colours, prices, shelf, assumed, shapes)
    motifs = motif_yarn_block(grid, quote, yarns, shapes)
    each = stitch_yarn_block(grid, quote, motifs, shapes)
    stitches = stitches_block(grid, quote, colours, each, yarns, assumed, shapes)
    sewn = sewn_yarn_block(grid, quote, colours, assumed, shapes)
    chance = chance_block(grid, quote)
    ball_ends_block(grid, quote)
    rests = ColourRests(
        lines=colours,
        stitches=stitches,
        sewn=sewn,
        chance=chance,
        packs=packs,
        shelf=shelf,
        yarns=yarns,
        assumed=assumed,
        quote=quote,
        shapes=shapes,
    )
    colours_block(grid, rests)
    checks = (_yarn_held(colours, shapes),)
    return YarnRefs(colours=colours, packs=packs, shelf=shelf, checks=checks)


def _yarn_held(colours: ColourLines, shapes: Shapes) -> Check:
    """Return the check that there is enough yarn of every colour."""
    short = f"SUM({colours.short_column})"
    said = f'ROUNDUP({short},1)&" {shapes.long_unit} short: see the packs wanted on Yarn"'
    return Check(shapes.speech.worded("Yarn held of each colour"), Fault(f"{short}>0", said))
