"""How many repeats each section of stripes gets, so that the height comes out nearest."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from quoting.core.ground.sameness import NEAR, NEAR_DIGITS


def allot_repeats(
    quota: float, periods: Sequence[float], shares: Sequence[float]
) -> tuple[int, ...]:
    """Return the repeats of each section.

    `quota` is the height to fill, `periods` the height of one repeat of each section, both in
    the same unit (rows, or centimetres); `shares` are relative. Every section gets at least one.
    Equal periods make this the largest-remainder rule.
    """
    repeats = [1] * len(periods)
    pool = _pool(quota, periods, shares)
    spare: dict[int, float] = {}
    for section, part in pool.items():
        repeats[section] = int((part + NEAR) // periods[section])
        spare[section] = max(0.0, part - repeats[section] * periods[section])
    for section in _one_more(periods, spare):
        repeats[section] += 1
    return tuple(repeats)


def _pool(quota: float, periods: Sequence[float], shares: Sequence[float]) -> dict[int, float]:
    """Return the quotas of the sections that can have more than their one repeat."""
    pool = list(range(len(periods)))
    while pool:
        total = sum(shares[section] for section in pool)
        parts = {s: quota * shares[s] / total if total else 0.0 for s in pool}
        small = [s for s in pool if parts[s] < periods[s] - NEAR]
        if not small:
            return parts
        quota -= sum(periods[section] for section in small)
        pool = [section for section in pool if section not in small]
    return {}


class _Choice(NamedTuple):
    """A subset so far: Σp, Σp(p − 2d), and for each section whether it was left out.

    Sums are rounded only to compare them: added up, rounded terms would tell equal sums apart.
    """

    total: float = 0.0
    penalty: float = 0.0
    left_out: tuple[bool, ...] = ()

    @property
    def place(self) -> tuple[float, tuple[bool, ...]]:
        """What puts choices of one sum in order, the best first."""
        return round(self.penalty, NEAR_DIGITS), self.left_out

    def plus(self, other: _Choice) -> _Choice:
        """Return this choice among earlier sections and the other among later ones."""
        total, penalty = self.total + other.total, self.penalty + other.penalty
        return _Choice(total, penalty, self.left_out + other.left_out)


def _one_more(periods: Sequence[float], spare: Mapping[int, float]) -> list[int]:
    """Return the sections that get one more repeat: those whose periods sum nearest the rest.

    Ties: the taller, then the least Σp(p − 2d), then earlier sections. The sections are halved,
    and to every sum of one half only the nearest sums of the other are tried.
    """
    sections = [section for section, rest in spare.items() if rest > NEAR]
    middle = len(sections) // 2
    first = _best_by_sum(sections[:middle], periods, spare)
    second = _best_by_sum(sections[middle:], periods, spare)
    sums, rest = sorted(second), sum(spare.values())
    choices = (
        low.plus(second[high])
        for low in first.values()
        for high in _nearest(sums, rest - low.total)
    )
    best = min(choices, key=lambda choice: _rank(choice, rest))
    return [section for section, out in zip(sections, best.left_out, strict=True) if not out]


def _rank(choice: _Choice, rest: float) -> tuple[float, float, tuple[float, tuple[bool, ...]]]:
    miss = round(abs(choice.total - rest), NEAR_DIGITS)
    return miss, -round(choice.total, NEAR_DIGITS), choice.place


def _nearest(sums: Sequence[float], wanted: float) -> Sequence[float]:
    """Return the sums on both sides of the one wanted, and one more for what rounding hides."""
    place = bisect_left(sums, wanted)
    return sums[max(0, place - 1) : place + 2]


def _best_by_sum(
    sections: Sequence[int], periods: Sequence[float], spare: Mapping[int, float]
) -> dict[float, _Choice]:
    """Return the best subset for every sum of periods that can be reached."""
    best = {0.0: _Choice()}
    for section in sections:
        best = _with_or_without(best, periods[section], spare[section])
    return best


def _with_or_without(
    best: Mapping[float, _Choice], period: float, spare: float
) -> dict[float, _Choice]:
    taken = _Choice(period, period * (period - 2 * spare), (False,))
    grown: dict[float, _Choice] = {}
    for before in best.values():
        for choice in (before.plus(taken), before.plus(_Choice(left_out=(True,)))):
            total = round(choice.total, NEAR_DIGITS)
            grown[total] = min(grown.get(total, choice), choice, key=lambda each: each.place)
    return grown
