"""Elements of a time study, rated by the project's own tasks."""

from __future__ import annotations

import math

from quoting.core.estimate.chores import Part
from quoting.core.estimate.hours import Task
from quoting.core.plan.gauge import Sureness


def normal_minutes(*elements: tuple[float, float]) -> float:
    """Return the minutes of elements of work, each a rating and the minutes observed."""
    tasks = [
        Task(
            part=Part.FINISHING,
            what=str(number),
            count=rating,
            minutes_each=minutes,
            sureness=Sureness.MEASURED,
            shared_min=0,
        )
        for number, (rating, minutes) in enumerate(elements)
    ]
    return math.fsum(task.minutes for task in tasks)
