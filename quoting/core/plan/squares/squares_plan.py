"""The plan of a body of joined motifs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.ground.money import round_count
from quoting.core.ground.place import at
from quoting.core.order.joined_squares import MOST_SQUARES, JoinedSquares, JoinMethod
from quoting.core.plan.body_plan import BodyPlan, Setting
from quoting.core.plan.border import Rim, StitchesAlong
from quoting.core.plan.motif_gauges import MotifWork, motif_cautions, motif_gauges, motif_sides
from quoting.core.plan.parts import BlanketPart, PartKind
from quoting.core.plan.passes import Edge, Pass
from quoting.core.plan.round_passes import round_passes
from quoting.core.plan.squares.layouts import TABLE, LaidOut, laid_out, layout_cautions
from quoting.core.plan.squares.placing import placed
from quoting.core.plan.squares.seams import Seams, join_chores, seams_of
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.core.workshop.rounds import SQUARES

BETWEEN_MOTIFS = 2
"""Border stitches into the join between two motifs (common practice)."""

MOST_WORKED = 20_000
"""Rounds and seams of all motifs together."""


def plan_squares(body: JoinedSquares, setting: Setting) -> BodyPlan:
    """Return the motifs layout by layout, then their joins.

    Errors: `less-than-a-motif`, with the smallest side in cm; `too-many-squares`; as `motif_work`
    and `laid_out`.
    """
    work = motif_work(body, setting)
    columns, rows = _across(body, setting, work)
    found = laid_out(body, work.rounds, columns * rows)
    layouts = [layout for layout in found if layout.count]
    grid = SquaresGrid(
        columns=columns,
        rows=rows,
        side_cm=work.side_cm,
        gap_cm=body.join.gap_cm,
        layouts=placed([layout.count for layout in found], columns),
        method=body.join.method,
    )
    seams = seams_of(body.join, grid, work)
    parts = _parts(layouts, seams)
    passes = [*_motifs(body, work, layouts, grid), *seams.passes]
    _check_work(body, parts, passes, grid)
    return BodyPlan(
        passes=_numbered(passes),
        stitches=work.counted.round(work.rounds).stitches,
        width_cm=_length_cm(columns, grid),
        height_cm=_length_cm(rows, grid),
        rim=_rim(setting, work, grid),
        ends=Edge.START,
        gauges=motif_gauges(work, setting),
        parts=parts,
        border_apart=True,
        chores=_chores(body, grid),
        grid=grid,
        counted=work.counted,
        count_cautions=(*motif_cautions(work.motif), *layout_cautions(body, found)),
    )


def motif_work(body: JoinedSquares, setting: Setting) -> MotifWork:
    """Return the motif as it is worked here. Errors: `motif-not-square`; `all-rounds-at-once`."""
    motif = setting.workshop.motif(body.motif)
    rounds = body.rounds or motif.rounds
    if motif.counting not in SQUARES:
        raise refuse(TABLE / "motif", MistakeCode.MOTIF_NOT_SQUARE, read=motif.name)
    if body.join.method is JoinMethod.CONTINUOUS and rounds == 1:
        raise refuse(TABLE / at("join", "method"), MistakeCode.ALL_ROUNDS_AT_ONCE)
    return MotifWork(
        motif=motif,
        counted=motif.counted(setting.workshop.basic_stitch(motif.stitch, "stitch")),
        rounds=rounds,
        sides=motif_sides(motif, setting.gauges[motif.yarn, motif.stitch]),
    )


def _across(body: JoinedSquares, setting: Setting, work: MotifWork) -> tuple[int, int]:
    """Return the columns and rows: the maker's own, else those that come nearest to the size."""
    gap_cm, side_cm = body.join.gap_cm, work.side_cm
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
        raise _too_many(columns * rows, MOST_SQUARES, body)
    return columns, rows


def _check_work(
    body: JoinedSquares,
    parts: Sequence[BlanketPart],
    passes: Sequence[tuple[Pass, ...]],
    grid: SquaresGrid,
) -> None:
    worked = sum(part.count * len(own) for part, own in zip(parts, passes, strict=True))
    if worked > MOST_WORKED:
        raise _too_many(grid.count, grid.count * MOST_WORKED // worked, body)


def _too_many(motifs: int, limit: int, body: JoinedSquares) -> Refused:
    own = [key for key in ("columns", "rows") if getattr(body, key) is not None]
    place = at("blanket", "squares", own[0]) if own else at("blanket", "width")
    return refuse(place, MistakeCode.TOO_MANY_SQUARES, read=motifs, limit=limit)


def _length_cm(count: int, grid: SquaresGrid) -> float:
    return count * grid.side_cm + (count - 1) * grid.gap_cm


def _motifs(
    body: JoinedSquares, work: MotifWork, layouts: Sequence[LaidOut], grid: SquaresGrid
) -> Iterator[tuple[Pass, ...]]:
    """Yield the rounds of a motif of each layout; those that join all of them are none of these."""
    continuous = body.join.method is JoinMethod.CONTINUOUS and grid.shared_edges
    rounds = work.rounds - 1 if continuous else work.rounds
    drawn = work.rounds - len(body.pool.outer) if body.pool else 0
    for layout in layouts:
        passes = round_passes(
            work.counted,
            layout.colours[:rounds],
            stitch=work.motif.stitch,
            heights_cm=work.sides.heights_cm(work.rounds),
            fabrics=[work.fabric(number + 1) for number in range(work.rounds)],
        )
        yield tuple(replace(worked, drawn=worked.number <= drawn) for worked in passes)


def _parts(layouts: Sequence[LaidOut], seams: Seams) -> tuple[BlanketPart, ...]:
    motifs = (
        BlanketPart(kind=PartKind.MOTIF, count=layout.count, at_once=True, layout=layout.number)
        for layout in layouts
    )
    return (*motifs, *seams.parts)


def _numbered(parts: Sequence[tuple[Pass, ...]]) -> tuple[Pass, ...]:
    numbered = (
        replace(worked, part=number) for number, passes in enumerate(parts) for worked in passes
    )
    return tuple(numbered)


def _rim(setting: Setting, work: MotifWork, grid: SquaresGrid) -> Rim:
    """Return the sides: the edge of each motif, and what goes into the joins between them."""
    edge = work.counted.sides(work.rounds)[0]
    gauge = setting.gauges[work.motif.yarn, work.motif.stitch]
    sides = []
    for count in (grid.columns, grid.rows):
        stitches = count * edge + (count - 1) * BETWEEN_MOTIFS
        width_cm = _length_cm(count, grid) / stitches
        sides.append(StitchesAlong(stitches, replace(gauge, width_cm=width_cm)))
    return sides * 2


def _chores(body: JoinedSquares, grid: SquaresGrid) -> dict[str, float]:
    chores = join_chores(body.join, grid)
    if grid.count > 1:
        chores |= {"lay_out": 1.0, "lay_out_motif": float(grid.count)}
    if body.blocked:
        chores["block_motif"] = float(grid.count)
    return chores
