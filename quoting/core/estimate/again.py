"""What a plan takes that was estimated already, for an order with other extras."""

from __future__ import annotations

from dataclasses import replace

from quoting.core.estimate.estimate import Estimate, estimate_plan
from quoting.core.estimate.hours import work_hours
from quoting.core.estimate.workload import workload_of
from quoting.core.estimate.yarn_needed import yarn_by_colour
from quoting.core.order.order import Order
from quoting.core.plan.passes import Plan
from quoting.core.workshop.workshop import Workshop


def estimate_again(before: Estimate, plan: Plan, order: Order, workshop: Workshop) -> Estimate:
    """Return the estimate of the same plan for an order that only has other extras.

    Where these take the same yarn, nothing but the hours is reckoned anew. Errors: as
    `estimate_plan`.
    """
    if yarn_by_colour(plan, order, workshop) != tuple(colour.yarn for colour in before.colours):
        return estimate_plan(plan, order, workshop)
    work = workload_of(plan, order, workshop, before.strands)
    return replace(before, hours=work_hours(work, workshop))
