"""How often something happens, from few cases: exact limits of a share.

Source: Clopper & Pearson, Biometrika 26 (1934), as the NIST/SEMATECH e-Handbook of Statistical
Methods has them, 7.2.4.2: each limit is the share at which so many cases, or more extreme ones,
are just as improbable as the limits allow.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

_HALVINGS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareLimits:
    """Between what the true share lies, from 0 to 1."""

    low: float
    high: float


def at_most(hits: int, cases: int, share: float) -> float:
    """Return the probability of at most so many hits among the cases.

    Each is likely by `share`, between nought and one.
    """
    odds, each = math.log(share), math.log1p(-share)
    ways = math.lgamma(cases + 1)
    return math.fsum(
        math.exp(
            ways
            - math.lgamma(hit + 1)
            - math.lgamma(cases - hit + 1)
            + hit * odds
            + (cases - hit) * each
        )
        for hit in range(hits + 1)
    )


def exact_limits(hits: int, cases: int, confidence: float) -> ShareLimits:
    """Return the two-sided limits of a share that was met in `hits` of at least one of `cases`."""
    tail = (1 - confidence) / 2
    low = 0.0 if hits == 0 else _share_with(hits - 1, cases, 1 - tail)
    high = 1.0 if hits == cases else _share_with(hits, cases, tail)
    return ShareLimits(low=low, high=high)


def _share_with(hits: int, cases: int, probability: float) -> float:
    """Return the share at which at most so many hits have that probability; it falls with it."""
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if at_most(hits, cases, middle) > probability:
            low = middle
        else:
            high = middle
    return (low + high) / 2
