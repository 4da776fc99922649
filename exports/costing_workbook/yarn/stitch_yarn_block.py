"""The yarn in one stitch: how much it takes, how sure that is, and what it rests on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from exports.costing_workbook.yarn.found_lines import FoundLines, as_length, as_share, counted_for
from exports.costing_workbook.yarn.motif_yarn_block import MotifYarnLines, of_motif
from exports.costing_workbook.yarn.yarn_assumptions_block import COUNTED, PACKS
from exports.costing_workbook.yarn.yarn_words import basis_words, motif_words, stitch_words
from exports.sheets.cells import Cell, Look, counted, heads, reckoned, words, yours
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import APART, FINE, SHARE, Shapes
from exports.sheets.rules import SHARE as SHARE_RULE
from exports.sheets.rules import SOME
from quoting.core.plan.gauge import Gauge
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import Motif
from quoting.wording import sureness_words

TITLE = "The yarn in one stitch"
PART = "0.000#%"
"""The format of a stitch's part of a whole motif."""


@dataclass(frozen=True, slots=True)
class StitchYarnLines:
    """The yarn of each stitch: found by yarn and stitch."""

    found: FoundLines

    def each(self, yarn: str, stitch: str) -> str:
        """Return the length in one stitch, in the short unit."""
        return self.found.one("E", yarn, stitch)

    def read_off(self, yarn: str, stitch: str) -> str:
        """Return the standard uncertainty that the swatch leaves."""
        return self.found.one("F", yarn, stitch)

    def guessed_off(self, yarn: str, stitch: str) -> str:
        """Return the 95 % limits of a guess."""
        return self.found.one("G", yarn, stitch)

    def rests_on(self, yarn: str, stitch: str) -> str:
        """Return the swatch that it goes by."""
        return self.found.text("I", yarn, stitch)


def stitch_yarn_block(
    grid: Grid, quote: Quote, motifs: MotifYarnLines, shapes: Shapes
) -> StitchYarnLines:
    """Write each stitch in each yarn of the work once, whatever the number of its colours."""
    judged = quote.workshop.habits.allowance is None
    estimates = quote.estimate.colours
    kinds = list(dict.fromkeys((c.source.yarn, s) for c in estimates for s in c.yarn.counts))
    grid.block(TITLE)
    headings = heads("", "yarn", "stitch", "how sure", figures_from=9)
    headings += heads(f"{shapes.short_unit} each", figures_from=0)
    if judged or motifs.found:
        sure = ("swatch off by", "guess within") if judged else ("", "")
        headings += heads(*sure, "of one motif" if motifs.found else "", figures_from=0)
        headings += heads("rests on", figures_from=9)
    lines = Lines(grid, len(kinds), headings)
    found, said = FoundLines(lines, "BC"), stitch_words(quote, shapes.speech)
    for yarn, stitch in kinds:
        gauge, called = quote.plan.gauges[stitch.made(yarn)], (yarn, said[stitch])
        if stitch.fabric.motif:
            motif = quote.workshop.motif(stitch.fabric.motif)
            _of_motif(grid, found, called, gauge, motif, motifs, quote, shapes)
        else:
            _stitch(grid, found, called, gauge, quote, shapes)
    lines.close(1)
    return StitchYarnLines(found)


def _stitch(
    grid: Grid,
    found: FoundLines,
    called: tuple[str, str],
    gauge: Gauge,
    quote: Quote,
    shapes: Shapes,
) -> None:
    row, length = grid.next_row, shapes.short(gauge.yarn_m)
    judged = quote.workshop.habits.allowance is None
    changed = counted_for(f"E{row}", length, COUNTED, as_length(length, shapes.short_unit))
    grid.line(
        None,
        *(words(word) for word in called),
        words(sureness_words(gauge.sureness)),
        yours(length, FINE, SOME.called("yarn")),
        *(_sure(gauge, quote, shapes) if judged else ()),
        faults=[
            found.twice(f"B{row}", f"C{row}"),
            changed,
            *(_unsure(row, gauge) if judged else ()),
        ],
    )


def _of_motif(
    grid: Grid,
    found: FoundLines,
    called: tuple[str, str],
    gauge: Gauge,
    motif: Motif,
    motifs: MotifYarnLines,
    quote: Quote,
    shapes: Shapes,
) -> None:
    """Write a stitch that takes its part of a motif's yarn, and is as far off as that is."""
    row, judged = grid.next_row, quote.workshop.habits.allowance is None
    share, mine = of_motif(gauge, motif, quote), f"I{row}"
    length = f"{motifs.length(mine)}*H{row}*{shapes.short_per_long}"
    guess = yours(gauge.guess_limits, SHARE, SHARE_RULE.called("guess within"))
    grid.line(
        None,
        *(words(word) for word in called),
        words(sureness_words(gauge.sureness)),
        reckoned(length, shapes.short(gauge.yarn_m), FINE),
        reckoned(motifs.read_off(mine), gauge.basis_error, SHARE) if judged else None,
        guess if judged else None,
        counted(share, PART + APART),
        words(motif_words(motif), Look.NOTE),
        faults=[
            found.twice(f"B{row}", f"C{row}"),
            motifs.unknown(mine),
            *([_guess_changed(row, gauge)] if judged else ()),
        ],
    )


def _sure(gauge: Gauge, quote: Quote, shapes: Shapes) -> Iterator[Cell | None]:
    """Yield how far off it may be: a reading by a standard uncertainty, a guess by 95 % limits."""
    yield yours(gauge.basis_error, SHARE, SHARE_RULE.called("swatch off by"))
    yield yours(gauge.guess_limits, SHARE, SHARE_RULE.called("guess within"))
    yield None
    yield words(basis_words(gauge, quote, shapes.speech), Look.NOTE)


def _unsure(row: int, gauge: Gauge) -> Iterator[Fault]:
    yield counted_for(f"F{row}", gauge.basis_error, PACKS, as_share(gauge.basis_error))
    yield _guess_changed(row, gauge)


def _guess_changed(row: int, gauge: Gauge) -> Fault:
    return counted_for(f"G{row}", gauge.guess_limits, PACKS, as_share(gauge.guess_limits))
