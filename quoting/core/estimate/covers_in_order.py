"""Every way to cover a length with pieces, the best first.

A cover is some pieces beside the basis, the one at will that is cheapest for its length, and as
many of the basis as it then takes, or more. What is beside it is lengthened piece by piece, and
each such pick waits under a rank that nothing made from it comes under: what is missing, at the
best rate there may still be. So whatever is taken from the heap first is the best of all that is
still to come. It ends with the covers below the rank that is asked for, or after so many steps.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from heapq import heappop, heappush
from itertools import accumulate

from quoting.core.estimate.picks import Pick, Ranked

MOST_STEPS = 20_000
"""Picks taken from the heap, at the most."""

Waiting = tuple[int, bool, Pick]


def covers_in_order(
    once: Sequence[Ranked], freely: Sequence[Ranked], target: int, *, below: int
) -> Iterator[Pick]:
    """Yield the picks that come to `target`, of ranks under `below`, the best first.

    `once` are pieces there once, `freely` others at will, at least one. After `MOST_STEPS` no
    more are told of.
    """
    basis = min(freely, key=_rate)
    beside = [*once, *(piece for piece in freely if piece != basis)]
    rates = list(accumulate([basis, *reversed(beside)], _cheaper))[::-1]
    heap: list[Waiting] = [(0, False, Pick())]
    for _ in range(MOST_STEPS):
        if not heap:
            return
        _, is_cover, pick = heappop(heap)
        if is_cover:
            yield pick
            _wait(heap, pick.plus(basis), below)
            continue
        missing = max(0, target - pick.gain)
        _wait(heap, pick.plus(basis, times=-(-missing // basis.gain)), below)
        for place in range(pick.place, len(beside)):
            longer = pick.plus(beside[place], place=place + (place < len(once)))
            least = _least_rank(longer, rates[longer.place], target)
            if least < below:
                heappush(heap, (least, False, longer))


def _wait(heap: list[Waiting], cover: Pick, below: int) -> None:
    if cover.rank < below:
        heappush(heap, (cover.rank, True, cover))


def _rate(piece: Ranked) -> Fraction:
    return Fraction(piece.rank, piece.gain)


def _cheaper(one: Ranked, other: Ranked) -> Ranked:
    return min(one, other, key=_rate)


def _least_rank(pick: Pick, cheapest: Ranked, target: int) -> int:
    """Return a rank that no cover made from a pick comes under."""
    return pick.rank + max(0, target - pick.gain) * cheapest.rank // cheapest.gain


def subsets_in_order(lots: Sequence[Sequence[Ranked]], target: int) -> list[Pick]:
    """Return the picks of each lot's pieces that come to `target`, the best first.

    Of picks of one lot that come to the same, only the best is told.
    """
    found = []
    for lot in lots:
        picks = {0: Pick()}
        for piece in lot:
            longer = [pick.plus(piece) for pick in picks.values()]
            for pick in sorted(longer, key=lambda pick: -pick.rank):
                best = picks.get(pick.gain)
                if best is None or pick.rank < best.rank:
                    picks[pick.gain] = pick
        found += [pick for pick in picks.values() if pick.gain >= target]
    return sorted(found, key=lambda pick: pick.rank)
