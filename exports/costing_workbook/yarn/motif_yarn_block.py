"""The yarn in one motif: what so many of them weighed, or what unravelling them gave."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from exports.costing_workbook.yarn.found_lines import FoundLines, as_length, counted_for
from exports.costing_workbook.yarn.yarn_assumptions_block import COUNTED
from exports.costing_workbook.yarn.yarn_words import motif_words
from exports.costing_workbook.yarn.yarns_block import YarnLines
from exports.sheets.cells import Cell, Ref, heads, reckoned, words, yours
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import COUNT, FINE, SHARE, TENTHS, Shapes
from exports.sheets.rules import SOME, SOME_WHOLE
from quoting.core.plan.gauge import Gauge
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import Motif, WeighedMotifs
from quoting.core.workshop.swatches import READING_STEPS

TITLE = "The yarn in one motif"


@dataclass(frozen=True, slots=True)
class MotifYarnLines:
    """The yarn of each motif: found by its name; None where no motif is worked."""

    found: FoundLines | None

    def length(self, motif: str) -> str:
        """Return the length in one, in the long unit."""
        return self.found.one("I", motif) if self.found else "0"

    def read_off(self, motif: str) -> str:
        """Return the standard uncertainty that weighing, or unravelling, leaves of it."""
        return self.found.one("J", motif) if self.found else "0"

    def unknown(self, motif: str) -> Fault:
        """Return the fault of a stitch whose motif is no line of the list."""
        assert self.found, "a stitch of a motif has one"  # noqa: S101
        return self.found.unknown(TITLE, motif)


def motifs_of(quote: Quote) -> list[Motif]:
    """Return the motifs that stitches of an order are measured by, in their order."""
    counts = (stitch for colour in quote.estimate.colours for stitch in colour.yarn.counts)
    names = dict.fromkeys(stitch.fabric.motif for stitch in counts)
    return [quote.workshop.motif(name) for name in names if name]


def of_motif(gauge: Gauge, motif: Motif, quote: Quote) -> float:
    """Return what part of all a motif's yarn one of its stitches takes."""
    return gauge.yarn_m / motif.metres(quote.workshop.yarn(motif.yarn).metres_per_gram)


def motif_yarn_block(grid: Grid, quote: Quote, yarns: YarnLines, shapes: Shapes) -> MotifYarnLines:
    """Write every motif that is worked; nothing where there is none."""
    motifs, unit = motifs_of(quote), shapes.long_unit
    if not motifs:
        return MotifYarnLines(None)
    grid.block(TITLE)
    headings = [
        *heads("", "yarn", "motif", "how measured", figures_from=9),
        *heads("weighed together", "their weight, g", "scale reads to, g", figures_from=0),
        *heads(f"{unit} a gram", f"{unit} each", "off by", figures_from=0),
    ]
    lines = Lines(grid, len(motifs), headings)
    found = FoundLines(lines, "C")
    for number, motif in enumerate(motifs, 1):
        measured = _motif(grid, found, motif, quote, yarns, shapes)
        grid.name(f"motif_measured_{number}", measured)
    lines.close(1)
    return MotifYarnLines(found)


def _motif(
    grid: Grid, found: FoundLines, motif: Motif, quote: Quote, yarns: YarnLines, shapes: Shapes
) -> Ref:
    """Write one motif and return the cell that its yarn was measured in: a weight, or a length."""
    figures = (
        _unravelled(grid.next_row, motif, shapes)
        if motif.weighed is None
        else _weighed(grid.next_row, motif, motif.weighed, quote, yarns, shapes)
    )
    refs = grid.line(
        None,
        words(motif.yarn),
        words(motif_words(motif)),
        words("unravelled" if motif.weighed is None else "weighed"),
        *figures,
        faults=[found.twice(f"C{grid.next_row}"), *_changed(grid.next_row, motif, shapes)],
    )
    letter = "I" if motif.weighed is None else "F"
    return next(ref for ref in refs if ref.column == letter)


def _weighed(
    row: int, motif: Motif, weighed: WeighedMotifs, quote: Quote, yarns: YarnLines, shapes: Shapes
) -> Iterator[Cell]:
    """Yield how many were weighed, what that gave, and the yarn of one: E to J."""
    per_gram = shapes.long(quote.workshop.yarn(motif.yarn).metres_per_gram)
    yield yours(weighed.motifs, COUNT, SOME_WHOLE.called("weighed together"))
    yield yours(weighed.weight_g, TENTHS, SOME.called("weight"))
    yield yours(weighed.scale_step_g, FINE, SOME.called("scale reads to"))
    yield reckoned(yarns.length_or(f"B{row}", per_gram), per_gram, "0.00")
    each = per_gram * weighed.weight_g / weighed.motifs
    yield reckoned(f"IF(N(E{row})>0,N(F{row})*H{row}/E{row},0)", each, FINE)
    off = f"IF(N(F{row})>0,N(G{row})/{READING_STEPS!r}/F{row},0)"
    yield reckoned(off, motif.reading_error, SHARE)


def _unravelled(row: int, motif: Motif, shapes: Shapes) -> Iterator[Cell | None]:
    """Yield the yarn of all rounds of one, and how far off its ruler leaves it: E to J."""
    each = shapes.long(sum(motif.rounds_m))
    yield from [None] * 4
    yield yours(each, FINE, SOME.called("yarn"))
    yield reckoned(
        f"IF(N(I{row})>0,{motif.reading_error * each!r}/I{row},0)", motif.reading_error, SHARE
    )


def _changed(row: int, motif: Motif, shapes: Shapes) -> Iterator[Fault]:
    """Yield what a changed measurement does not do: count ends, joins and packs anew."""
    if motif.weighed is None:
        each = shapes.long(sum(motif.rounds_m))
        yield counted_for(f"I{row}", each, COUNTED, as_length(each, shapes.long_unit))
        return
    weighed = motif.weighed
    together = f'{weighed.motifs}&" weighed together"'
    yield counted_for(f"E{row}", weighed.motifs, COUNTED, together)
    yield counted_for(f"F{row}", weighed.weight_g, COUNTED, as_length(weighed.weight_g, "g"))
    step = as_length(weighed.scale_step_g, "g")
    yield counted_for(f"G{row}", weighed.scale_step_g, COUNTED, step)
