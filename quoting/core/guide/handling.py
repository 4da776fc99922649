"""What is done with the yarn at both ends of each pass, were no ball ever used up.

Where balls end can only be expected, so a guide tells it apart from what is certain.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from quoting.core.estimate.estimate import Estimate
from quoting.core.estimate.row_guide import Act
from quoting.core.estimate.strands import Visit


@dataclass(frozen=True, slots=True)
class Handling:
    """What is done with a pass's yarn where the pass begins, and where it ends; None: nothing."""

    begins: Act | None
    ends: Act | None


def handlings(estimate: Estimate, passes: int) -> list[Handling]:
    """Return the handling of each of so many passes of one blanket."""
    found: list[Handling] = [Handling(None, None)] * passes
    for colour in estimate.colours:
        for visit, after in pairwise((*colour.visits, None)):
            assert visit is not None, "only what comes after the last is none"  # noqa: S101
            found[visit.pass_index] = Handling(_begins(visit), _ends(visit, after))
    return found


def _begins(visit: Visit) -> Act | None:
    if visit.follows:
        return None
    return Act.START if visit.begins else Act.CARRY_UP


def _ends(visit: Visit, after: Visit | None) -> Act | None:
    """Return how a pass's yarn is left for the pass that has it next, if it is in the same part."""
    if after is None or after.part != visit.part:
        return Act.FASTEN_OFF
    if after.follows:
        return None
    return Act.CUT if after.begins else Act.WAIT
