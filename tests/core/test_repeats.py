"""How many repeats each section of stripes gets."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.plan.multiples import nearest_multiple
from quoting.core.plan.rows.repeats import allot_repeats


@pytest.mark.parametrize(
    ("quota", "periods", "shares", "repeats"),
    [
        (41, (6, 7), (1, 1), (3, 3)),
        (20, (4, 4), (1, 1), (3, 2)),
        (22, (4, 4), (1, 1), (3, 3)),
        (33, (3, 12), (10, 1), (7, 1)),
    ],
)
def test_sections_share_the_height(
    quota: float, periods: Sequence[float], shares: Sequence[float], repeats: tuple[int, ...]
) -> None:
    """By hand: 20 over 4 and 4 is 10 each, two repeats and 2 left; the earlier takes the third."""
    assert allot_repeats(quota, periods, shares) == repeats


def test_a_section_without_a_share_gets_one_repeat() -> None:
    assert allot_repeats(40, (5, 4), (0, 1)) == (1, 9)


def test_no_open_section_needs_no_repeats() -> None:
    assert allot_repeats(40, (), ()) == ()


def test_the_taller_of_two_equally_near_heights_wins() -> None:
    assert allot_repeats(6, (4,), (1,)) == (2,)
    assert allot_repeats(5.9, (4,), (1,)) == (1,)


def test_a_tall_section_and_two_short_ones_as_tall_together_tie_in_any_unit() -> None:
    """By hand: rests 0.8, 0.4, 0.8 and 0.4 of a row make room for two rows more.

    A repeat of the first has them, and one each of the second and third; these lie nearer theirs.
    """
    for row in (1, 1 / 3, 13.4 / 6):
        periods, shares = (2 * row, row, row, 2 * row), (1, 0.5, 1, 0.5)
        assert allot_repeats(38.4 * row, periods, shares) == (6, 7, 13, 3)


def by_every_subset(
    quota: Fraction, periods: Sequence[Fraction], shares: Sequence[Fraction]
) -> tuple[int, ...]:
    """Allot by the rule in words, in exact fractions, trying every subset."""
    repeats = [1] * len(periods)
    pool = list(range(len(periods)))
    while True:
        total = sum(shares[n] for n in pool)
        parts = {n: quota * shares[n] / total if total else Fraction(0) for n in pool}
        small = [n for n in pool if parts[n] < periods[n]]
        if not small:
            break
        quota -= sum(periods[n] for n in small)
        pool = [n for n in pool if n not in small]
    rests = {}
    for n in pool:
        repeats[n] = int(parts[n] // periods[n])
        rests[n] = parts[n] - repeats[n] * periods[n]
    some = [n for n in pool if rests[n] > 0]
    gap = sum(rests.values(), Fraction(0))

    def rank(subset: tuple[int, ...]) -> tuple[object, ...]:
        rise = sum((periods[n] for n in subset), Fraction(0))
        penalty = sum((periods[n] * (periods[n] - 2 * rests[n]) for n in subset), Fraction(0))
        return abs(rise - gap), -rise, penalty, [n not in subset for n in some]

    subsets = (s for size in range(len(some) + 1) for s in itertools.combinations(some, size))
    for n in min(subsets, key=rank):
        repeats[n] += 1
    return tuple(repeats)


cases = st.integers(1, 6).flatmap(
    lambda size: st.tuples(
        st.integers(1, 200),
        st.lists(st.integers(1, 9), min_size=size, max_size=size),
        st.lists(st.integers(0, 6), min_size=size, max_size=size),
    )
)


@given(cases, st.sampled_from([1, 2, 3, 5, 7, 10]))
def test_no_subset_comes_nearer_and_ties_fall_as_the_rule_says(
    case: tuple[int, list[int], list[int]], parts: int
) -> None:
    quota, periods, shares = case
    exact = by_every_subset(
        Fraction(quota), [Fraction(p, parts) for p in periods], [Fraction(s) for s in shares]
    )
    assert allot_repeats(quota, [p / parts for p in periods], shares) == exact


@given(st.integers(1, 9), st.lists(st.integers(1, 6), min_size=2, max_size=6), st.integers(0, 99))
def test_equal_periods_make_it_the_largest_remainder_rule(
    period: int, shares: list[int], more: int
) -> None:
    """As seats are shared out: whole parts first, then one each by the largest rest.

    The height is enough for one repeat of each, so that none needs more than its part.
    """
    quota = -(-period * sum(shares) // min(shares)) + more
    parts = [Fraction(quota * share, sum(shares) * period) for share in shares]
    seats = int(Fraction(quota, period) + Fraction(1, 2))
    order = sorted(range(len(parts)), key=lambda n: (-(parts[n] % 1), n))
    spare = order[: seats - sum(int(part) for part in parts)]
    expected = tuple(int(part) + (n in spare) for n, part in enumerate(parts))
    assert allot_repeats(quota, [period] * len(shares), shares) == expected


@pytest.mark.parametrize(
    ("target", "multiple", "plus", "count"),
    [(98.2, 1, 0, 98), (98.5, 1, 0, 99), (20, 6, 2, 20), (23, 6, 2, 26), (22.9, 6, 2, 20)],
)
def test_the_stitches_are_the_nearest_multiple_and_the_larger_of_two(
    target: float, multiple: int, plus: int, count: int
) -> None:
    assert nearest_multiple(target, multiple, plus) == count


def test_there_is_always_one_repeat_across() -> None:
    assert nearest_multiple(0.1, 12, 3) == 15
    assert nearest_multiple(-50, 12, 3) == 15


@given(st.lists(st.integers(2, 60), min_size=12, max_size=20), st.integers(1, 40))
def test_many_sections_come_as_near_as_any_sums_of_them_can(
    periods: list[int], copies: int
) -> None:
    """Every sum that can be reached is a bit of one whole number."""
    quota = sum(periods) * copies // 10 + max(periods) * len(periods)
    shares = [1.0] * len(periods)
    part = Fraction(quota, len(periods))
    rests = [part - period * (part // period) for period in periods]
    sums = 1
    for period, rest in zip(periods, rests, strict=True):
        sums |= sums << period if rest else sums
    nearest = min(abs(n - sum(rests)) for n in range(sums.bit_length()) if sums >> n & 1)
    whole = zip(periods, allot_repeats(quota, periods, shares), strict=True)
    assert abs(sum(period * count for period, count in whole) - quota) == nearest
