"""What there is to do for an order, counted from its plan and its strands."""

from __future__ import annotations

from collections.abc import Sequence

from quoting.core.estimate.chores import Workload
from quoting.core.estimate.ends_within import ends_to_weave
from quoting.core.estimate.strands import Strand, Why
from quoting.core.estimate.work_counted import colour_changes, count_work
from quoting.core.order.order import Order
from quoting.core.plan.passes import Plan, Work
from quoting.core.workshop.workshop import Workshop

TURN, BEGIN_ROUND = "turn", "begin_round"
"""Names of minutes: of a turn, and of beginning and joining a round."""


def workload_of(
    plan: Plan, order: Order, workshop: Workshop, strands: Sequence[Strand]
) -> Workload:
    """Return what there is to do, over all blankets."""
    quantity = order.quantity
    passes = ((worked, plan.times(worked) * quantity) for worked in plan.passes)
    counted = count_work(passes, plan, order, workshop)
    chores = {what: count * quantity for what, count in plan.chores.items() if what != TURN}
    rows = max(0, len(plan.of_work(Work.ROW)) - 1) + int(plan.chores.get(TURN, 0))
    return Workload(
        stitches=counted.stitches,
        motifs=counted.motifs,
        turns=rows * quantity,
        colour_changes=colour_changes(plan, workshop) * quantity,
        joins=sum(strand.why is Why.RAN_OUT for strand in strands),
        ends=2 * len(strands),
        blankets=quantity,
        extras_minutes=sum(extra.minutes for extra in order.extras) * quantity,
        chores={BEGIN_ROUND: counted.rounds} | chores,
        ends_become=order.design.ends,
        ends_within=ends_to_weave(order.design.ends, strands, plan),
    )
