"""What yarn really takes: a worked example, reckoned by hand."""

from __future__ import annotations

import pytest

from quoting.core.making.yarn_use import YarnUse, reserve_left
from tests.core.plain_yarn import choose, put_up, yarn

BALL_M, ROWS, BORDER_M = 290, 158, 60
PLANNED_ROWS, LASTED_ROWS = 28, 25
ROW_M = BALL_M / PLANNED_ROWS
WHOLE_M = ROWS * ROW_M + BORDER_M
"""By hand: 158 × 290 / 28 + 60."""

USE = YarnUse(used_m=BALL_M, planned_m=LASTED_ROWS * ROW_M)


def balls(need_m: float) -> int:
    return choose(need_m, yarn(put_up(100, BALL_M, "5.00"))).skeins


def test_a_ball_that_was_to_last_28_rows_and_lasts_25_takes_12_hundredths_more() -> None:
    """By hand: 290 m over 25 rows is 11.60 m a row, 28/25 of the 10.36 m planned."""
    assert USE.ratio == pytest.approx(28 / 25)
    assert USE.really_m(ROW_M) == pytest.approx(11.60)


def test_the_rows_and_the_border_take_as_much_more() -> None:
    """By hand: 158 × 11.60 m, and 60 m × 28/25 = 67.2 m, where 1,696 m were planned."""
    assert round(WHOLE_M) == 1696
    assert USE.really_m(BORDER_M) == pytest.approx(67.2)
    assert USE.really_m(WHOLE_M) == pytest.approx(158 * 11.60 + 67.2)
    assert USE.really_m(WHOLE_M) == pytest.approx(1900)


def test_seven_balls_are_needed_in_place_of_six() -> None:
    """By hand: 1,696 / 290 is 5.85, 1,900 / 290 is 6.55; the tails of joins alter neither."""
    assert balls(WHOLE_M) == 6
    assert balls(USE.really_m(WHOLE_M)) == 7


@pytest.mark.parametrize("use", [YarnUse(), YarnUse(used_m=4), YarnUse(planned_m=4)])
def test_what_tells_nothing_changes_nothing(use: YarnUse) -> None:
    assert use.ratio == 1
    assert use.really_m(123.4) == 123.4


def test_the_reserve_is_whole_at_first_and_nothing_at_the_end() -> None:
    """By hand: of the variance a quarter is left after three quarters, so half of the reserve."""
    assert reserve_left(0.08, 0) == 0.08
    assert reserve_left(0.08, 0.75) == pytest.approx(0.04)
    assert reserve_left(0.08, 1) == 0
    assert reserve_left(0.08, 1 + 1e-12) == 0


def test_the_reserve_narrows_with_every_row() -> None:
    shares = [reserve_left(0.08, row / 20) for row in range(21)]
    assert shares == sorted(shares, reverse=True)
    assert len(set(shares)) == len(shares)
