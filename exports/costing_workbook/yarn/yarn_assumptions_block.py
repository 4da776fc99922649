"""What the yarn rests on: the tail, how sure it should be, and what is off by how much."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from exports.costing_workbook.yarn.found_lines import as_length, as_share, counted_for
from exports.sheets.cells import Cell, Look, heads, words, yours
from exports.sheets.grid import Grid
from exports.sheets.number_formats import FINE, SHARE, TENTHS, Shapes
from exports.sheets.rules import FACTOR, SOME, share_like
from exports.sheets.rules import SHARE as SHARE_RULE
from quoting.core.estimate.estimate import habits_for
from quoting.core.estimate.yarn_needed import LABEL_ERROR
from quoting.core.plan.gauge import Z_95
from quoting.core.quote.quote import Quote

CONFIDENCE = replace(SHARE_RULE, wanted="a share from 50% to 99.99%", least=0.5, most=0.9999)
PACKS, COUNTED = "packs were", "ends, joins and packs were"


@dataclass(frozen=True, slots=True)
class Assumptions:
    """The numbers that the yarn rests on, each as an expression, by its name."""

    found: dict[str, str] = field(default_factory=dict)

    def __getitem__(self, name: str) -> str:
        """Return one of them: nothing where what stands in its cell is no number."""
        return self.found[name]

    @property
    def deviations(self) -> str:
        """How many standard uncertainties the reserve covers (one side of the normal)."""
        sure = self["confidence"]
        return f"IF(AND({sure}>0,{sure}<1),NORMSINV({sure}),0)"

    @property
    def shared_square(self) -> str:
        """The square of what all of a colour's yarn is off by together: tension and label."""
        return f"{self['tension']}^2+{self['label_off']}^2"

    def standard(self, limits: str) -> str:
        """Return the standard uncertainty of 95 % limits."""
        return f"{limits}/MAX({self['within_95']},0.000001)"


def assumptions_block(grid: Grid, quote: Quote, shapes: Shapes) -> Assumptions:
    """Write each of them with its unit and where it comes from."""
    grid.block("What the yarn rests on")
    grid.line(*heads("", "", "", "", "unit", "", "", "from", figures_from=99))
    found, habits = Assumptions(), habits_for(quote.plan, quote.order, quote.workshop)
    tail, unit = shapes.short(habits.tail_m), shapes.short_unit
    _one(grid, found, "tail", "one tail", yours(tail, TENTHS, SOME), unit, "your workshop")
    if habits.allowance is not None:
        reserve = yours(habits.allowance, SHARE, share_like(habits.allowance))
        _one(grid, found, "allowance", "your reserve", reserve, "more", "your workshop")
        return found
    sure = yours(habits.confidence, SHARE, CONFIDENCE)
    _one(grid, found, "confidence", "sure that it is enough", sure, "", "your workshop")
    drift = yours(habits.tension, SHARE, SHARE_RULE)
    standard = "standard uncertainty"
    _one(
        grid,
        found,
        "tension",
        grid.worded("allowance for uneven tension"),
        drift,
        standard,
        "your workshop",
    )
    label = yours(LABEL_ERROR, SHARE, SHARE_RULE)
    said = "what the length on a label is taken to be off by"
    _one(grid, found, "label_off", "labels are off by", label, standard, said)
    within = yours(Z_95, "0.00", SOME)
    said = "of the normal distribution: a guess is given by the limits of 95%"
    _one(grid, found, "within_95", "95% limits lie at", within, "standard uncertainties", said)
    wider = yours(quote.workshop.ranges.yarn, FINE, FACTOR)
    said = "your workshop, from what finished orders really took"
    _one(grid, found, "yarn_widened", "all of it off by", wider, "times as much", said)
    return found


def _one(
    grid: Grid, found: Assumptions, name: str, label: str, cell: Cell, unit: str, source: str
) -> None:
    at, value = f"D{grid.next_row}", cell.content
    assert isinstance(value, float | int), "an assumption is a number"  # noqa: S101
    is_share = cell.shape == SHARE
    what = COUNTED if name == "tail" else PACKS
    shown = as_share(value) if is_share else as_length(value, unit)
    ref = grid.line(
        None,
        words(label, Look.NOTE),
        None,
        cell,
        words(f" {unit}", Look.NOTE) if unit else None,
        None,
        None,
        words(source, Look.NOTE),
        faults=[counted_for(at, value, what, shown)],
    )[1]
    found.found[name] = f"N({grid.name(name, ref)})"
