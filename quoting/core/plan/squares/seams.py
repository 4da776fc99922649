"""The joins between motifs as passes: a pass a line of edges, or a needleful of yarn."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from quoting.core.ground.sameness import NEAR
from quoting.core.order.joined_squares import CROCHETED, SEWN, JoinMethod, MotifJoin
from quoting.core.plan.motif_gauges import MotifWork
from quoting.core.plan.parts import BlanketPart, PartKind
from quoting.core.plan.passes import Edge, Pass, Work
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.core.workshop.stitches import Stitch

YARN_SEWN = {JoinMethod.WHIPSTITCH: 2.5, JoinMethod.MATTRESS: 2.0}
"""Yarn for each length that is sewn: common practice, no source."""

CORNER_STITCHES = 2
"""Stitches of a crocheted seam into the corners of each edge."""

BRAID_CHAINS = 3
"""Chains of each loop of a braid, one after every second stitch of a side (common practice)."""

EDGE_OF_MINUTES_CM = 15.0
"""The edge that the minutes of a join worked into a round are of."""

CHORES = {
    JoinMethod.AS_YOU_GO: "join_as_you_go",
    JoinMethod.CONTINUOUS: "join_continuous",
    JoinMethod.WHIPSTITCH: "sew_whipstitch",
    JoinMethod.MATTRESS: "sew_mattress",
    JoinMethod.FLAT_BRAID: "join_braid",
}
"""Whose minutes a join takes besides its stitches."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seams:
    """The joins of a blanket: its `parts` in the order worked, and the passes of each."""

    parts: tuple[BlanketPart, ...]
    passes: tuple[tuple[Pass, ...], ...]


def seams_of(join: MotifJoin, grid: SquaresGrid, work: MotifWork) -> Seams:
    """Return the joins, the parts numbered from 0; none where there is nothing to join."""
    made = list(_seams(join, grid, work)) if grid.shared_edges else []
    return Seams(parts=tuple(part for part, _ in made), passes=tuple(passes for _, passes in made))


def _seams(
    join: MotifJoin, grid: SquaresGrid, work: MotifWork
) -> Iterator[tuple[BlanketPart, tuple[Pass, ...]]]:
    lines = ((grid.columns - 1, grid.rows), (grid.rows - 1, grid.columns))
    if join.method in SEWN:
        for count, edges in lines:
            if count:
                yield _line(count), tuple(_needlefuls(join, edges * grid.side_cm))
    elif join.method is JoinMethod.FLAT_BRAID:
        yield _line(grid.count, PartKind.EDGING), (_braid(join, work),)
    elif join.method is JoinMethod.CONTINUOUS:
        yield BlanketPart(kind=PartKind.SEAM), tuple(_last_rounds(join, grid, work))
    elif join.method in CROCHETED:
        for count, edges in lines:
            if count:
                yield _line(count), (_crocheted(join, edges, work),)


def join_chores(join: MotifJoin, grid: SquaresGrid) -> dict[str, float]:
    """Return what there is to do at the joins besides stitches, by the name of its minutes."""
    if join.method not in CHORES or not grid.shared_edges:
        return {}
    edges_cm = grid.shared_edges * grid.side_cm
    counts: dict[JoinMethod, float] = dict.fromkeys(SEWN, edges_cm)
    counts |= {
        JoinMethod.AS_YOU_GO: edges_cm / EDGE_OF_MINUTES_CM,
        JoinMethod.CONTINUOUS: edges_cm / EDGE_OF_MINUTES_CM,
        JoinMethod.FLAT_BRAID: float(grid.shared_edges),
    }
    return {CHORES[join.method]: counts[join.method]}


def _line(count: int, kind: PartKind = PartKind.SEAM) -> BlanketPart:
    return BlanketPart(kind=kind, count=count, at_once=True)


def _needlefuls(join: MotifJoin, line_cm: float) -> Iterator[Pass]:
    """Yield a pass for each needleful of a line, each a strand of its own."""
    yarn_cm = line_cm * YARN_SEWN[join.method]
    count = math.ceil(yarn_cm / join.needleful_cm - NEAR)
    for number in range(1, count + 1):
        yield _seam(join, number, {}, fresh=True, sewn_m=yarn_cm / count / 100)


def _crocheted(join: MotifJoin, edges: int, work: MotifWork) -> Pass:
    stitch = CROCHETED[join.method].value
    an_edge = work.counted.sides(work.rounds)[0] + CORNER_STITCHES
    return _seam(join, 1, {stitch: edges * an_edge})


def _braid(join: MotifJoin, work: MotifWork) -> Pass:
    """Return the edging of one motif: a stitch in every second one, and a loop after each."""
    stitches = sum(-(-side // 2) for side in work.counted.sides(work.rounds))
    chains = {Stitch.CH.value: BRAID_CHAINS * stitches}
    return _seam(join, 1, {CROCHETED[join.method].value: stitches} | chains, ends=Edge.START)


def _last_rounds(join: MotifJoin, grid: SquaresGrid, work: MotifWork) -> Iterator[Pass]:
    """Yield the last rounds of all motifs, a row of them at a time, as one strand."""
    count, stitch = work.counted.round(work.rounds), work.motif.stitch
    stitches = {stitch: count.stitches * grid.columns}
    if count.chains:
        stitches[Stitch.CH.value] = count.chains * grid.columns
    for number in range(1, grid.rows + 1):
        yield Pass(
            work=Work.SEAM,
            number=number,
            colour=join.colour or "",
            stitch=stitch,
            stitches=stitches,
            starts=Edge.START,
            ends=Edge.START,
            height_cm=0.0,
            fabric=work.fabric(work.rounds),
        )


def _seam(
    join: MotifJoin,
    number: int,
    stitches: dict[str, int],
    *,
    ends: Edge = Edge.FAR,
    fresh: bool = False,
    sewn_m: float = 0.0,
) -> Pass:
    return Pass(
        work=Work.SEAM,
        number=number,
        colour=join.colour or "",
        stitch=next(iter(stitches), ""),
        stitches=stitches,
        starts=Edge.START,
        ends=ends,
        height_cm=0.0,
        fresh=fresh,
        sewn_m=sewn_m,
    )
