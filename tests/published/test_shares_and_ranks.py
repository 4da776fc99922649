"""Exact limits of a share, and how many cases a distribution-free range wants, from handbooks."""

from __future__ import annotations

from fractions import Fraction
from math import comb

import pytest

from quoting.core.ground.binomial import at_most, exact_limits
from quoting.core.making.outturn import Outturn
from quoting.core.making.widening import Method, widening_of


def test_four_defective_units_of_twenty() -> None:
    """NIST/SEMATECH e-Handbook, 7.2.4.2: at 90 % between 0.071354 and 0.401029 (from memory).

    They are found by trial there, and the last digit is as near as that comes.
    """
    found = exact_limits(4, 20, 0.90)
    assert (found.low, found.high) == pytest.approx((0.071354, 0.401029), abs=1e-6)


@pytest.mark.parametrize(
    ("hits", "cases", "low", "high"),
    [
        (8, 10, 44.39, 97.48),
        (0, 10, 0.00, 30.85),
        (10, 10, 69.15, 100.00),
        (1, 1, 2.50, 100.00),
        (19, 20, 75.13, 99.87),
        (95, 100, 88.72, 98.36),
    ],
)
def test_the_table_of_exact_limits(hits: int, cases: int, low: float, high: float) -> None:
    """The tables of exact 95 % limits of a percentage, after Clopper & Pearson 1934 (from memory).

    Such as are in Geigy's *Scientific Tables* and in Diem & Lentner's.
    """
    found = exact_limits(hits, cases, 0.95)
    assert (round(found.low * 100, 2), round(found.high * 100, 2)) == (low, high)


@pytest.mark.parametrize(("hits", "cases"), [(0, 1), (3, 7), (8, 10), (40, 300), (999, 1000)])
def test_the_binomial_sum_is_that_of_whole_fractions(hits: int, cases: int) -> None:
    """Reference: Python's exact fractions, term by term."""
    share = Fraction(3, 8)
    exactly = sum(comb(cases, k) * share**k * (1 - share) ** (cases - k) for k in range(hits + 1))
    assert at_most(hits, cases, 0.375) == pytest.approx(float(exactly), rel=1e-9, abs=1e-300)


def test_nineteen_cases_are_the_least_of_which_the_largest_holds_the_next() -> None:
    """The rank ⌈0.95·(n + 1)⌉ is among n cases from n = 19 on: its arithmetic, by hand."""
    misses = [Outturn(stated=10, real=10 + miss, half_width=1.0) for miss in range(1, 20)]
    found, fewer = widening_of(misses, 1.0), widening_of(misses[:-1], 1.0)
    assert found is not None
    assert fewer is not None
    assert (found.method, found.factor) == (Method.ORDER_STATISTIC, 19)
    assert fewer.method is Method.STUDENT_T


def test_of_a_hundred_cases_it_is_the_ninety_sixth() -> None:
    """⌈0.95·101⌉ = 96, by hand."""
    misses = [Outturn(stated=100, real=100 + n / 10, half_width=1.0) for n in range(1, 101)]
    found = widening_of(misses, 1.0)
    assert found is not None
    assert found.factor == pytest.approx(9.6)


def test_five_voltages_foretell_the_sixth() -> None:
    """Hahn & Meeker, *Statistical Intervals*, the circuit packs (from memory).

    Five with mean 50.10 and s 1.31: the next is between 46.12 and 54.08. Beside a figure of 50.10
    and a half-width of 1 the range would have to be 3.98 wide either way. The five are made to
    have that mean and that deviation.
    """
    off = [-1.31 * 2**0.5, 0.0, 0.0, 0.0, 1.31 * 2**0.5]
    packs = [Outturn(stated=50.10, real=50.10 + each, half_width=1.0) for each in off]
    found = widening_of(packs, 1.0)
    assert found is not None
    assert (found.factor, found.method) == (pytest.approx(3.99), Method.STUDENT_T)
