"""What comes out of each size: all that was counted, row by row, and no formula can follow."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.comparison_workbook.size_rows import Rows, Sized
from exports.sheets.cells import Ref, counted, heads, words
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, TENTHS, Shapes
from quoting.core.ground.measures import CM_PER
from quoting.core.ground.money import exact
from quoting.core.plan.passes import Plan
from quoting.core.weighing.comparison import ball_grams
from quoting.wording import body_pass
from quoting.wording.ends import ends_of_all


@dataclass(frozen=True, slots=True)
class CountRefs:
    """What the rules of thumb carry a price over by: the area, and the weight of the balls."""

    area: Ref
    grams: Ref


def counts_table(grid: Grid, rows: Rows, shapes: Shapes) -> list[CountRefs]:
    """Write what every size comes out as; return the cells that formulas read, in order."""
    unit = shapes.speech.length_unit
    grid.block("What comes out of each size")
    grid.line(
        *heads("size", f"width, {unit}", f"length, {unit}", f"area, {unit}²"),
        *heads(
            *_body_heads(rows.first.plan),
            ends_of_all(sized.quote for sized in rows.all),
            "balls to buy",
            "balls, g",
            figures_from=0,
        ),
        *heads(f"yarn left, {shapes.long_unit}", figures_from=0),
    )
    return [_size(grid, sized, shapes) for sized in rows.all]


def _body_heads(plan: Plan) -> tuple[str, str]:
    """Return what heads the counts that a size closes on."""
    if plan.grid is not None:
        return "motifs across", "motifs down"
    row = body_pass(plan)
    return f"stitches in {'a' if plan.in_rows else 'the last'} {row}", f"{row}s"


def _body_counts(plan: Plan) -> tuple[int, int]:
    if plan.grid is not None:
        return plan.grid.columns, plan.grid.rows
    return plan.stitches, len(plan.rows)


def square_cm(shapes: Shapes) -> Decimal:
    """Return the square centimetres of a square of the workshop's unit of length."""
    return exact(CM_PER[shapes.short_unit]) ** 2


def _size(grid: Grid, sized: Sized, shapes: Shapes) -> CountRefs:
    plan, estimate = sized.quote.plan, sized.quote.estimate
    per_unit = CM_PER[shapes.speech.length_unit]
    area = exact(plan.area_cm2) / square_cm(shapes)
    refs = grid.line(
        words(sized.name),
        counted(plan.width_cm / per_unit, TENTHS),
        counted(plan.height_cm / per_unit, TENTHS),
        counted(area, COUNT),
        *(counted(count, COUNT) for count in _body_counts(plan)),
        counted(estimate.ends, COUNT),
        counted(estimate.skeins, COUNT),
        counted(ball_grams(sized.quote), COUNT),
        counted(shapes.long(estimate.metres_left), TENTHS),
    )
    return CountRefs(area=refs[3], grams=refs[8])
