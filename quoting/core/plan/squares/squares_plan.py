"""The plan of a body of joined motifs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import chain

from quoting.core.ground.cautions import Caution, for_maker
from quoting.core.ground.codes import CautionCode, MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.money import round_count
from quoting.core.ground.place import at
from quoting.core.order.joined_squares import MOST_SQUARES, JoinedSquares, JoinMethod
from quoting.core.plan.body_plan import BodyPlan, Setting
from quoting.core.plan.border import Rim, StitchesAlong
from quoting.core.plan.motif_gauges import MotifWork, motif_gauges, motif_growth_cm
from quoting.core.plan.parts import BlanketPart, PartKind
from quoting.core.plan.passes import Edge, Pass
from quoting.core.plan.round_passes import round_passes
from quoting.core.plan.squares.layouts import LaidOut, laid_out, placed
from quoting.core.plan.squares.seams import Seams, join_chores, seams_of
from quoting.core.plan.squares_grid import SquaresGrid

BETWEEN_MOTIFS = 2
"""Border stitches into the join between two motifs (common practice)."""

FEW_WEIGHED = 5
"""Of fewer motifs weighed together the scale's step is too much of each."""


def plan_squares(body: JoinedSquares, setting: Setting) -> BodyPlan:
    """Return the motifs layout by layout, then their joins.

    Errors: `less-than-a-motif`, with the smallest side; `too-many-squares`; as `laid_out`.
    """
    work = motif_work(body, setting)
    columns, rows = _across(body, setting, work.side_cm)
    layouts = laid_out(body, work.rounds, columns * rows)
    grid = SquaresGrid(
        columns=columns,
        rows=rows,
        side_cm=work.side_cm,
        gap_cm=body.join.gap_cm,
        layouts=placed([layout.count for layout in layouts], columns),
        method=body.join.method,
    )
    seams = seams_of(body.join, grid, work)
    return BodyPlan(
        passes=_numbered([*_motifs(body, work, layouts, grid), *seams.passes]),
        stitches=work.counted.round(work.rounds).stitches,
        width_cm=_length_cm(columns, grid),
        height_cm=_length_cm(rows, grid),
        rim=_rim(setting, work, grid),
        ends=Edge.START,
        gauges=motif_gauges(work, setting),
        parts=_parts(layouts, seams),
        border_apart=True,
        chores=_chores(body, grid),
        chance=_chance(body, work, grid),
        grid=grid,
        counted=work.counted,
        count_cautions=tuple(_cautions(work)),
    )


def motif_work(body: JoinedSquares, setting: Setting) -> MotifWork:
    """Return the motif as it is worked here. Errors: `unknown-motif`; `less-than-a-round`."""
    motif = setting.workshop.motif(body.motif)
    kind = setting.workshop.basic_stitch(motif.stitch, "stitch")
    growth_cm = motif_growth_cm(motif, setting.gauges[motif.yarn, motif.stitch])
    return MotifWork(
        motif=motif,
        counted=motif.counted(kind),
        rounds=body.rounds or motif.rounds,
        first_cm=motif.side_cm - growth_cm * (motif.rounds - 1),
        growth_cm=growth_cm,
    )


def _across(body: JoinedSquares, setting: Setting, side_cm: float) -> tuple[int, int]:
    """Return the columns and rows: the maker's own, else those that come nearest to the size."""
    gap_cm = body.join.gap_cm
    counts = []
    for own, wanted_cm, key in (
        (body.columns, setting.width_cm, "width"),
        (body.rows, setting.height_cm, "height"),
    ):
        count = own or round_count(max(0.0, (wanted_cm + gap_cm) / (side_cm + gap_cm)))
        if count < 1:
            smallest_cm = side_cm + 2 * setting.border_cm
            place = at("blanket", key)
            raise refuse(place, MistakeCode.LESS_THAN_A_MOTIF, smallest_cm=smallest_cm)
        counts.append(count)
    columns, rows = counts
    if columns * rows > MOST_SQUARES:
        place, total = at("blanket", "width"), columns * rows
        raise refuse(place, MistakeCode.TOO_MANY_SQUARES, read=total, limit=MOST_SQUARES)
    return columns, rows


def _length_cm(count: int, grid: SquaresGrid) -> float:
    return count * grid.side_cm + (count - 1) * grid.gap_cm


def _motifs(
    body: JoinedSquares, work: MotifWork, layouts: Sequence[LaidOut], grid: SquaresGrid
) -> Iterator[tuple[Pass, ...]]:
    """Yield the rounds of a motif of each layout; those that join all of them are none of these."""
    continuous = body.join.method is JoinMethod.CONTINUOUS and grid.shared_edges
    rounds = work.rounds - 1 if continuous else work.rounds
    heights = [work.first_cm / 2] + [work.growth_cm / 2] * (work.rounds - 1)
    for layout in layouts:
        yield tuple(
            round_passes(
                work.counted,
                layout.colours[:rounds],
                stitch=work.motif.stitch,
                heights_cm=heights,
                fabrics=[work.fabric(number + 1) for number in range(work.rounds)],
            )
        )


def _parts(layouts: Sequence[LaidOut], seams: Seams) -> tuple[BlanketPart, ...]:
    motifs = (
        BlanketPart(kind=PartKind.MOTIF, count=layout.count, at_once=True, layout=number)
        for number, layout in enumerate(layouts)
    )
    return (*motifs, *seams.parts)


def _numbered(parts: Sequence[tuple[Pass, ...]]) -> tuple[Pass, ...]:
    numbered = (
        replace(worked, part=number) for number, passes in enumerate(parts) for worked in passes
    )
    return tuple(chain(numbered))


def _rim(setting: Setting, work: MotifWork, grid: SquaresGrid) -> Rim:
    """Return the sides: the edge of each motif, and what goes into the joins between them."""
    edge = work.counted.sides(work.rounds)[0]
    gauge = setting.gauges[work.motif.yarn, work.motif.stitch]
    along = replace(gauge, width_cm=work.side_cm / edge)
    sides = (
        StitchesAlong(count * edge + (count - 1) * BETWEEN_MOTIFS, along)
        for count in (grid.columns, grid.rows)
    )
    return [*sides] * 2


def _chores(body: JoinedSquares, grid: SquaresGrid) -> dict[str, float]:
    chores = join_chores(body.join, grid)
    if grid.count > 1:
        chores |= {"lay_out": 1.0, "lay_out_motif": float(grid.count)}
    if body.blocked:
        chores["block_motif"] = float(grid.count)
    return chores


def _chance(body: JoinedSquares, work: MotifWork, grid: SquaresGrid) -> dict[str, float]:
    """Return by how much more a colour of a pool may be off: (k - 1)/n for n draws of k colours."""
    if body.pool is None:
        return {}
    colours = dict.fromkeys(body.pool.colours)
    draws = grid.count * (work.rounds - len(body.pool.outer))
    return {colour: (len(colours) - 1) / draws for colour in colours}


def _cautions(work: MotifWork) -> Iterator[Caution]:
    weighed = work.motif.weighed
    if weighed is not None and weighed.motifs < FEW_WEIGHED:
        yield for_maker(
            CautionCode.FEW_MOTIFS_WEIGHED,
            motif=work.motif.name,
            motifs=weighed.motifs,
            wanted=FEW_WEIGHED,
        )
