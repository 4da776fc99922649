"""The yarn in the stitches of each colour: how many of each, how much one takes, how sure it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from exports.sheets.cells import Ref, counted, heads, reckoned, total_of, words, yours
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, FINE, SHARE, TENTHS, Shapes
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.plan.gauge import Z_95
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True)
class StitchYarnRefs:
    """One colour's cells: the yarn of its stitches, and how far off that may be.

    `read_off` are lengths by the swatch they rest on, which go together; `guessed_off` lengths
    that go each by itself.
    """

    lengths: list[Ref] = field(default_factory=list)
    read_off: dict[str, list[Ref]] = field(default_factory=dict)
    guessed_off: list[Ref] = field(default_factory=list)

    @property
    def square_off(self) -> str:
        """The square of the standard uncertainty of the yarn together, as an expression."""
        return "+".join(f"{total_of(refs)}^2" for refs in self._together())

    def _together(self) -> Sequence[Sequence[Ref]]:
        return [*self.read_off.values(), *([ref] for ref in self.guessed_off)]


def stitch_yarn_block(grid: Grid, quote: Quote, shapes: Shapes) -> list[StitchYarnRefs]:
    """Write each colour's stitches and return their cells, by colour."""
    unit = shapes.long_unit
    grid.block("The yarn in the stitches")
    grid.line(
        *heads("", "colour", "stitch", "how many", figures_from=3),
        *heads(f"{shapes.short_unit} each", unit, "how sure", figures_from=0),
        *heads("swatch off by", "guess within", f"swatch, {unit}", f"guess, {unit}"),
        *heads("rests on"),
    )
    return [_colour(grid, colour, quote, shapes) for colour in quote.estimate.colours]


def _colour(grid: Grid, colour: ColourEstimate, quote: Quote, shapes: Shapes) -> StitchYarnRefs:
    """Write the lines of one colour.

    A reading is off by a standard uncertainty, a guess by 95 % limits.
    """
    found = StitchYarnRefs()
    for stitch, count in colour.yarn.counts.items():
        gauge, row = quote.plan.gauges[colour.source.yarn, stitch], grid.next_row
        length = shapes.long(count * gauge.yarn_m)
        line = grid.line(
            None,
            words(colour.colour),
            words(shapes.speech.stitch(stitch)),
            counted(count, COUNT),
            yours(shapes.short(gauge.yarn_m), FINE),
            reckoned(f"Yarn!D{row}*Yarn!E{row}/{shapes.short_per_long}", length, TENTHS),
            words(gauge.sureness.value),
            yours(gauge.basis_error, SHARE),
            yours(gauge.guess_limits, SHARE),
            reckoned(f"Yarn!F{row}*Yarn!H{row}", length * gauge.basis_error, FINE),
            reckoned(f"Yarn!F{row}*Yarn!I{row}/{Z_95}", length * gauge.guess_limits / Z_95, FINE),
            words(gauge.basis),
        )
        found.lengths.append(line[4])
        found.read_off.setdefault(gauge.basis, []).append(line[8])
        found.guessed_off.append(line[9])
    return found
