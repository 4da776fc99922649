"""Which ends lie within the work, where neither a border nor a fringe can take them."""

from __future__ import annotations

from collections.abc import Sequence

from quoting.core.estimate.strands import Point, Strand
from quoting.core.order.design import AT_THE_EDGE, EndsBecome
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Edge, Plan

_REACH_AN_EDGE = (PartKind.WHOLE, PartKind.BORDER)
"""Parts whose ends may reach an edge of the blanket: seams end under its border."""


def lies_within(where: Point, plan: Plan) -> bool:
    """Return whether an end lies within: of a ball joined in a row, of a round, motif or seam."""
    return (
        where.edge is Edge.WITHIN
        or plan.passes[where.pass_index].grows
        or reaches_no_edge(where.part, plan)
    )


def reaches_no_edge(part: int, plan: Plan) -> bool:
    """Return whether no end of a part reaches an edge of the blanket."""
    return plan.parts[part].kind not in _REACH_AN_EDGE


def ends_to_weave(become: EndsBecome, strands: Sequence[Strand], plan: Plan) -> int:
    """Return how many ends have to be woven in though those at the edges become something else."""
    if become not in AT_THE_EDGE:
        return 0
    places = (place for strand in strands for place in (strand.starts, strand.ends))
    return sum(lies_within(place, plan) for place in places)
