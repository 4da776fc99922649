"""What of all the stitching is that of the motifs which a blanket is joined of."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.estimate.hours import Hours, Task
from quoting.core.estimate.stitching_time import YarnAndStitch
from quoting.core.estimate.work_counted import count_work
from quoting.core.order.order import Order
from quoting.core.plan.passes import Plan
from quoting.core.workshop.workshop import Workshop


def stitches_in_motifs(
    plan: Plan, order: Order, workshop: Workshop
) -> Mapping[YarnAndStitch, float]:
    """Return how many of each stitch all motifs have; motifs that were timed whole by their name.

    Of a blanket that is not joined of motifs there are none.
    """
    if plan.grid is None:
        return {}
    passes = [
        (worked, plan.times(worked) * order.quantity)
        for worked in plan.passes
        if worked.fabric.motif
    ]
    counted = count_work(passes, plan, order, workshop)
    found = dict[YarnAndStitch, float](counted.stitches)
    for made, count in counted.motifs.items():
        key = made.yarn, made.motif
        found[key] = found.get(key, 0.0) + count
    return found


def share_in_motifs(task: Task, inside: Mapping[YarnAndStitch, float], workshop: Workshop) -> float:
    """Return what part of a task of stitching is that of motifs, from 0 to 1."""
    count = inside.get((task.yarn or "", task.what), 0.0)
    is_motif = any(task.what == motif.name for motif in workshop.motifs)
    return 1.0 if count and is_motif else count / task.count


def share_of_stitching(
    hours: Hours, inside: Mapping[YarnAndStitch, float], workshop: Workshop
) -> float:
    """Return what part of the minutes of all stitching motifs take; pulling back is shared so."""
    tasks = [task for task in hours.tasks if task.timed_stitch is not None]
    in_motifs = sum(task.minutes * share_in_motifs(task, inside, workshop) for task in tasks)
    minutes = sum(task.minutes for task in tasks)
    return in_motifs / minutes if minutes else 0.0
