"""Student's t: the quantile that a small number of readings needs.

Source: Abramowitz & Stegun, 26.7.3 and 26.7.4: the finite series of P(|T| < t) for a whole number
of degrees of freedom.
"""

from __future__ import annotations

import math
from functools import lru_cache

_HALVINGS = 200


def within(t: float, freedom: int) -> float:
    """Return the probability that |T| is under `t` with so many degrees of freedom."""
    theta = math.atan(t / math.sqrt(freedom))
    odd = freedom % 2 == 1
    if freedom == 1:
        return 2 * theta / math.pi
    term = math.cos(theta) if odd else 1.0
    total = term
    for power in range(3 if odd else 2, freedom - 1, 2):
        term *= math.cos(theta) ** 2 * (power - 1) / power
        total += term
    series = math.sin(theta) * total
    return 2 / math.pi * (theta + series) if odd else series


@lru_cache(maxsize=256)
def two_sided_t(confidence: float, freedom: int) -> float:
    """Return t with P(|T| < t) = `confidence`; `freedom` is at least 1."""
    low, high = 0.0, 1.0
    while within(high, freedom) < confidence:
        low, high = high, high * 2
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        if within(middle, freedom) < confidence:
            low = middle
        else:
            high = middle
    return high
