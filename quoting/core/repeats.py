"""How many repeats each section of stripes gets, so that the height comes out nearest."""

from __future__ import annotations

from collections.abc import Sequence

from quoting.core.money import round_count

_SAME = 1e-9
_SAME_DIGITS = 9


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
        repeats[section] = int((part + _SAME) // periods[section])
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
        small = [s for s in pool if parts[s] < periods[s] - _SAME]
        if not small:
            return parts
        quota -= sum(periods[section] for section in small)
        pool = [section for section in pool if section not in small]
    return {}


Choice = tuple[float, tuple[bool, ...]]
"""A subset so far: Σp(p − 2d), and for each section whether it was left out."""


def _one_more(periods: Sequence[float], spare: dict[int, float]) -> list[int]:
    """Return the sections that get one more repeat: those whose periods sum nearest the rest.

    Ties: the taller, then the least Σp(p − 2d), then earlier sections. For every sum that can be
    reached only its best subset is kept.
    """
    sections = [section for section, rest in spare.items() if rest > _SAME]
    rest = sum(spare.values())
    best: dict[float, Choice] = {0.0: (0.0, ())}
    for section in sections:
        best = _with_or_without(best, periods[section], spare[section])
    if not sections:
        return []
    _, (_, left_out) = min(
        best.items(), key=lambda item: (round(abs(item[0] - rest), _SAME_DIGITS), -item[0])
    )
    return [section for section, out in zip(sections, left_out, strict=True) if not out]


def _with_or_without(best: dict[float, Choice], period: float, spare: float) -> dict[float, Choice]:
    grown: dict[float, Choice] = {}
    for total, (penalty, left_out) in best.items():
        taken = round(penalty + period * (period - 2 * spare), _SAME_DIGITS)
        for key, choice in (
            (round(total + period, _SAME_DIGITS), (taken, (*left_out, False))),
            (total, (penalty, (*left_out, True))),
        ):
            grown[key] = min(grown.get(key, choice), choice)
    return grown


def nearest_multiple(target: float, multiple: int, plus: int) -> int:
    """Return the multiple·k + plus, k at least 1, nearest to `target`; of two, the larger."""
    repeats = round_count(max(0.0, (target - plus) / multiple))
    return multiple * max(1, repeats) + plus
