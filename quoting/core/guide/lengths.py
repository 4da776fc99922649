"""How long the blanket is on the hook, after every so many rows: to hold a tape against.

One that grows from its centre has so its short side told, after every so many rounds.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from quoting.core.estimate.row_guide import heights_cm
from quoting.core.plan.passes import Plan

STEPS = (5, 10, 20, 25, 50, 100, 200, 250, 500)
MOST_TOLD = 12


@dataclass(frozen=True, slots=True)
class LengthSoFar:
    """The length of a blanket once the pass at an index is done."""

    at: int
    length_cm: float


def lengths_so_far(plan: Plan) -> Iterator[LengthSoFar]:
    """Yield the length after every fifth row of the body, or tenth, ..., and after the last pass.

    No more than MOST_TOLD besides the last, unless there are rows by the ten thousand. One that is
    put together of motifs has none.
    """
    if plan.grid is not None:
        return
    rows = len(plan.rows)
    each = next((step for step in STEPS if rows <= step * MOST_TOLD), STEPS[-1])
    last = len(plan.passes) - 1
    for index, (worked, length_cm) in enumerate(zip(plan.passes, heights_cm(plan), strict=True)):
        if (worked.in_body and worked.number % each == 0) or index == last:
            yield LengthSoFar(index, length_cm)
