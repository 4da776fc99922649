"""Rounding amounts: what is kept, and what is near enough to a whole step."""

from __future__ import annotations

from decimal import Decimal

import pytest

from quoting.core.ground.money import round_half_up, round_up_to_step


def test_an_amount_keeps_more_digits_than_a_spreadsheet_would_show() -> None:
    assert round_half_up(Decimal("1234567890123456.785"), 2) == Decimal("1234567890123456.79")


@pytest.mark.parametrize(
    ("amount", "rounded"),
    [("12", "12"), ("12.0000001", "12"), ("12.000001", "13"), ("12.5", "13"), ("0", "0")],
)
def test_only_what_is_under_a_millionth_of_a_step_is_no_reason_for_another_one(
    amount: str, rounded: str
) -> None:
    assert round_up_to_step(Decimal(amount), Decimal(1)) == Decimal(rounded)
