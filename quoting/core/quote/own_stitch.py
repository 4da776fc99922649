"""The stitch that a blanket is told to be of."""

from __future__ import annotations

from quoting.core.order.design import Design
from quoting.core.plan.passes import Plan


def own_stitch(design: Design, plan: Plan) -> str:
    """Return a blanket's own stitch: of joined motifs it is theirs, whatever the order says."""
    return design.stitch if plan.grid is None else plan.rows[0].stitch
