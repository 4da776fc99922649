"""Which ends lie within the work, where neither a border nor a fringe can take them."""

from __future__ import annotations

from collections.abc import Sequence

from quoting.core.estimate.strands import Strand
from quoting.core.order.design import AT_THE_EDGE, EndsBecome
from quoting.core.plan.passes import Edge, Plan


def ends_to_weave(become: EndsBecome, strands: Sequence[Strand], plan: Plan) -> int:
    """Return how many ends have to be woven in though those at the edges become something else.

    In rows these are the ends of balls joined within them. Rounds, motifs and seams leave all of
    theirs within; only their border's come to an edge, all to where its rounds begin, which makes
    no fringe and is under no border: so every end is woven in.
    """
    if become not in AT_THE_EDGE:
        return 0
    if not plan.in_rows:
        return 2 * len(strands)
    places = (place for strand in strands for place in (strand.starts, strand.ends))
    return sum(place.edge is Edge.WITHIN for place in places)
