from __future__ import annotations

import math
from collections.abc import Sequence

import pytest

from quoting.core.making.bias import bias_of
from quoting.core.making.coverage import Coverage, coverage_at, stated_coverage
from quoting.core.making.outturn import Outturn
from quoting.core.making.widening import Method, widening_of
from quoting.core.workshop.ranges import MOST_WIDENED


def outturns(*real: float, half_width: float | None = 1.0, widened: float = 1.0) -> list[Outturn]:
    return [
        Outturn(stated=10, real=each, half_width=half_width, widened_by=widened) for each in real
    ]


def factor_of(found: Sequence[Outturn], present: float = 1.0) -> float:
    widening = widening_of(found, present)
    assert widening is not None
    return widening.factor


def test_the_bias_of_three_orders_by_hand() -> None:
    """Off by 0, 10 and 20 %: mean 10, s 10, and t(2) 4.303 · 10/√3 = 24.84 either way."""
    found = bias_of(outturns(10, 11, 12))
    assert found.mean == pytest.approx(0.1)
    assert found.spread == pytest.approx(0.1)
    assert (found.low, found.high) == pytest.approx((-0.1484, 0.3484), abs=5e-5)
    assert not found.is_shown


def test_one_order_has_no_spread_and_no_limits() -> None:
    found = bias_of(outturns(11))
    assert (found.cases, found.mean) == (1, pytest.approx(0.1))
    assert (found.spread, found.low, found.high) == (None, None, None)
    assert not found.is_shown


@pytest.mark.parametrize("real", [(11, 11.1, 11.2), (9, 8.9, 8.8)])
def test_a_bias_is_shown_where_its_limits_leave_nought_out(real: tuple[float, ...]) -> None:
    assert bias_of(outturns(*real)).is_shown


def test_both_ends_of_a_range_are_within_it() -> None:
    assert stated_coverage(outturns(9, 11, 11.01)) == Coverage(inside=2, cases=3)


def test_a_range_of_no_width_holds_what_comes_to_the_very_figure() -> None:
    found = outturns(10, 10.5, 9.5, half_width=0.0)
    assert [o.misses for o in found] == [0, math.inf, -math.inf]
    assert stated_coverage(found) == Coverage(inside=1, cases=3)


def test_what_a_range_would_hold_is_told_without_the_factor_it_was_stated_with() -> None:
    wide = outturns(10.8, half_width=1.0, widened=2.0)
    assert stated_coverage(wide).inside == 1
    assert coverage_at(wide, 1.0).inside == 0
    assert coverage_at(wide, 1.6).inside == 1


@pytest.mark.parametrize(
    ("inside", "cases", "too_narrow"),
    [(0, 1, False), (0, 2, True), (1, 2, False), (8, 10, False), (5, 10, True), (85, 100, True)],
)
def test_ranges_are_proved_too_narrow_by_the_upper_limit(
    inside: int, cases: int, *, too_narrow: bool
) -> None:
    """By the exact limits: 0 of 1 up to 97.5 %, 0 of 2 to 84.2, 8 of 10 to 97.5 (any table)."""
    assert Coverage(inside=inside, cases=cases).is_too_narrow is too_narrow


def test_one_order_asks_for_no_factor() -> None:
    assert widening_of(outturns(15), 1.0) is None
    assert widening_of([], 1.0) is None


def test_no_factor_is_under_one() -> None:
    assert factor_of(outturns(*[10 + n / 100 for n in range(30)])) == 1.0


def test_none_is_over_what_a_workshop_takes() -> None:
    assert factor_of(outturns(9000, 10)) == MOST_WIDENED
    assert factor_of(outturns(11, 10, half_width=0.0)) == MOST_WIDENED


def test_a_factor_of_many_is_that_of_the_ranges_as_measured() -> None:
    """Twenty that missed by 1.5 half-widths, stated with ranges that were twice as wide already."""
    once = outturns(*[11.5] * 20)
    twice = outturns(*[11.5] * 20, half_width=2.0, widened=2.0)
    assert factor_of(once) == factor_of(twice, present=2.0) == pytest.approx(1.5)


def test_a_factor_is_needed_until_the_workshop_has_it() -> None:
    missed = outturns(*[11.5] * 20)
    first, then = widening_of(missed, 1.0), widening_of(missed, 1.5)
    assert first is not None
    assert then is not None
    assert (first.is_needed, first.is_other) == (True, True)
    assert (then.is_needed, then.is_other) == (False, False)


def test_few_orders_ask_for_more_than_any_of_them_missed() -> None:
    widening = widening_of(outturns(12.0, 12.2, 11.9), 1.0)
    assert widening is not None
    assert widening.method is Method.STUDENT_T
    assert widening.factor > 2.2
    assert widening.is_needed
