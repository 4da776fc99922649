"""What yarn really takes, held against what it was planned to."""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnUse:
    """Yarn that was used, and what was planned for as much of the work, in metres."""

    used_m: float = 0.0
    planned_m: float = 0.0

    @property
    def ratio(self) -> float:
        """How many times as much is taken as was planned; 1 where nothing tells it."""
        return self.used_m / self.planned_m if self.used_m and self.planned_m else 1.0

    def really_m(self, planned_m: float) -> float:
        """Return what a planned length will take, if the rest takes as much as what is done."""
        return planned_m * self.ratio


def reserve_left(reserve: float, known: float) -> float:
    """Return the share to have on top of what is still to be worked.

    `reserve` is that of the whole, `known` the share of the yarn that has told what it takes. The
    variance that is left is that of what has not told it: so the reserve is whole at first, narrows
    with every row, and is nothing at the end.
    """
    return reserve * math.sqrt(max(0.0, 1.0 - known))
