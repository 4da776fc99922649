"""Rounds from a centre, as passes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.plan.gauge import Fabric
from quoting.core.plan.passes import Edge, Pass, Work
from quoting.core.workshop.rounds import Rounds
from quoting.core.workshop.stitches import Stitch


def round_passes(
    counted: Rounds,
    colours: Sequence[str],
    *,
    stitch: str,
    heights_cm: Sequence[float],
    fabrics: Sequence[Fabric],
    part: int = 0,
) -> Iterator[Pass]:
    """Yield a round in each of the colours, from the centre outwards: each begins at its join."""
    for number, colour in enumerate(colours, 1):
        count = counted.round(number)
        chains = {Stitch.CH.value: count.chains} if count.chains else {}
        yield Pass(
            work=Work.ROUND,
            number=number,
            colour=colour,
            stitch=stitch,
            stitches={stitch: count.stitches} | chains,
            starts=Edge.START,
            ends=Edge.START,
            height_cm=heights_cm[number - 1],
            part=part,
            fabric=fabrics[number - 1],
        )
