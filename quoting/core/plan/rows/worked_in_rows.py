"""A body worked in rows, back and forth, as passes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from quoting.core.order.design import Kind
from quoting.core.plan.gauge import Gauge
from quoting.core.plan.passes import Edge, Pass, Work
from quoting.core.plan.rows.stripes import Row, Striping
from quoting.core.workshop.stitches import Stitch, TurningChain
from quoting.core.workshop.workshop import Workshop


def row_passes(
    striping: Striping,
    counts: Mapping[Kind, int],
    workshop: Workshop,
    gauges: Mapping[Kind, Gauge],
) -> Iterator[Pass]:
    """Yield the foundation chain, then the rows, back and forth."""
    turning = {stitch: workshop.turning_chain(stitch) for _, stitch in counts}
    first = striping.rows[0]
    yield Pass(
        work=Work.CHAIN,
        number=0,
        colour=first.colour,
        stitch=Stitch.CH.value,
        stitches={Stitch.CH.value: turning[first.stitch].bare_foundation(counts[first.kind])},
        starts=Edge.FAR,
        ends=Edge.START,
        height_cm=0.0,
    )
    later = {kind: _with_turn(kind[1], counts[kind], turning[kind[1]]) for kind in counts}
    edge = Edge.START
    for number, row in enumerate(striping.rows, 1):
        stitches = later[row.kind] if number > 1 else {row.stitch: counts[row.kind]}
        yield _row(row, number, stitches, edge, gauges[row.kind].height_cm)
        edge = edge.across


def _with_turn(stitch: str, count: int, turning: TurningChain) -> dict[str, int]:
    chains = turning.chains_a_row
    return {stitch: count} | ({Stitch.CH.value: chains} if chains else {})


def _row(
    row: Row, number: int, stitches: Mapping[str, int], starts: Edge, height_cm: float
) -> Pass:
    return Pass(
        work=Work.ROW,
        number=number,
        colour=row.colour,
        stitch=row.stitch,
        stitches=stitches,
        starts=starts,
        ends=starts.across,
        height_cm=height_cm,
        section=row.section,
    )


def edge_after(rows: int) -> Edge:
    """Return the edge where the last of so many rows ends."""
    return Edge.FAR if rows % 2 else Edge.START
