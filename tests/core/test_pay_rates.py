"""What an hour must carry, from what is wanted of a year."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.core.workshop.pay_rates import Year, pay_rates
from quoting.core.workshop.selling import Pay

money = st.decimals("0", "1000000000", places=2)
weeks = st.integers(10, 520).map(lambda tenths: tenths / 10)
hours = st.integers(1, 1680).map(lambda tenths: tenths / 10)


def year(**changes: object) -> Year:
    usual: dict[str, object] = {
        "income": Decimal(15_000),
        "overhead": Decimal(1_800),
        "weeks": 44,
        "hours_a_week": 24.5,
    }
    return Year(**(usual | changes))  # type: ignore[arg-type]


def test_the_hours_of_a_year_are_its_weeks_by_the_hours_of_each() -> None:
    assert year().hours == Decimal("1078.0")
    assert year(weeks=0.1 + 45.2, hours_a_week=10).hours == 453


def test_an_hour_carries_its_share_of_income_and_of_overhead() -> None:
    rates = pay_rates(year(), "GBP")
    assert (rates.hours, rates.making_per_hour, rates.overhead_per_hour) == (
        Decimal(1078),
        Decimal("13.91"),
        Decimal("1.67"),
    )


@pytest.mark.parametrize(("currency", "rate"), [("JPY", "14"), ("GBP", "13.91"), ("KWD", "13.915")])
def test_a_rate_is_in_whole_minor_units_of_its_currency(currency: str, rate: str) -> None:
    assert str(pay_rates(year(), currency).making_per_hour) == rate


@given(money, money, weeks, hours)
def test_the_years_hours_at_the_rates_bring_the_year_back_but_for_the_rounding(
    income: Decimal, overhead: Decimal, weeks: float, hours: float
) -> None:
    rates = pay_rates(
        Year(income=income, overhead=overhead, weeks=weeks, hours_a_week=hours), "EUR"
    )
    slack = rates.hours * Decimal("0.005")
    assert abs(rates.making_per_hour * rates.hours - income) <= slack
    assert abs(rates.overhead_per_hour * rates.hours - overhead) <= slack


def test_the_rates_can_be_a_workshops_own() -> None:
    rates = pay_rates(year(), "GBP")
    pay = Pay(
        making_per_hour=rates.making_per_hour,
        office_per_hour=rates.making_per_hour,
        overhead_per_hour=rates.overhead_per_hour,
    )
    assert pay.overhead_per_hour == Decimal("1.67")


def test_who_wants_nothing_of_the_year_is_told_nothing_an_hour() -> None:
    rates = pay_rates(year(income=Decimal(0), overhead=Decimal(0)), "GBP")
    assert rates.making_per_hour == rates.overhead_per_hour == 0


@pytest.mark.parametrize(
    ("place", "value", "code"),
    [
        ("income", Decimal(-1), "too-small"),
        ("income", Decimal("NaN"), "not-finite"),
        ("overhead", Decimal("Infinity"), "not-finite"),
        ("overhead", Decimal(10) ** 10, "too-large"),
        ("weeks", 0, "too-small"),
        ("weeks", 1e-300, "too-small"),
        ("weeks", 53, "too-large"),
        ("hours_a_week", 0, "too-small"),
        ("hours_a_week", 169, "too-large"),
        ("hours_a_week", float("nan"), "not-finite"),
    ],
)
def test_a_year_that_cannot_be_is_refused_where_it_is_wrong(
    place: str, value: object, code: str
) -> None:
    with pytest.raises(Refused) as caught:
        year(**{place: value})
    (mistake,) = caught.value.mistakes
    assert (mistake.path, mistake.code) == (place, code)


def test_everything_wrong_with_a_year_is_told_at_once() -> None:
    with pytest.raises(Refused) as caught:
        year(income=Decimal(-1), weeks=0, hours_a_week=0)
    assert [m.path for m in caught.value.mistakes] == ["income", "weeks", "hours_a_week"]


def test_an_unknown_currency_is_refused() -> None:
    with pytest.raises(Refused, match="unknown-currency"):
        pay_rates(year(), "XQQ")
