"""Rates against the euro, cross rates through it, and a buyer who pays in another currency."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.core.workshop.euro_rates import EuroRates, is_old
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.reference_rates import with_reference_rates
from tests.examples import sample_order, sample_quote, sample_workshop

DAY = date(2017, 3, 8)
RATES = EuroRates(day=DAY, rates={"USD": Decimal("1.0556"), "GBP": Decimal("0.86753")})
codes = st.sampled_from(["EUR", "USD", "GBP"])
amounts = st.decimals("0", "1000000", places=2)


@pytest.mark.parametrize("rate", ["0", "-1", "NaN", "Infinity", "0.00099", "1000001"])
def test_a_rate_that_no_currency_has_is_refused_before_anything_is_divided_by_it(rate: str) -> None:
    with pytest.raises(Refused, match=r"rates\.USD"):
        EuroRates(day=DAY, rates={"USD": Decimal(rate)})


def test_a_day_without_rates_is_refused() -> None:
    with pytest.raises(Refused, match="rates: missing"):
        EuroRates(day=DAY, rates={})


def test_one_euro_is_one_euro_though_no_document_says_so() -> None:
    assert RATES.per_euro("EUR") == 1


def test_a_currency_that_the_rates_do_not_list_is_refused_with_those_that_they_do() -> None:
    with pytest.raises(Refused) as caught:
        RATES.between("GBP", "SEK")
    (mistake,) = caught.value.mistakes
    assert (mistake.path, mistake.code) == ("order.pays_in", "no-rate")
    assert mistake.facts == {"read": "SEK", "known": ("EUR", "USD", "GBP")}


def test_a_sellers_currency_without_a_rate_is_refused_too() -> None:
    with pytest.raises(Refused, match="no-rate"):
        RATES.between("SEK", "GBP")


@given(codes)
def test_a_currency_against_itself_is_one_for_one(code: str) -> None:
    assert RATES.between(code, code).for_one == 1


@given(codes, codes, amounts)
def test_there_and_back_again_is_the_same_amount_but_for_the_rounding(
    seller: str, buyer: str, amount: Decimal
) -> None:
    there, back = RATES.between(seller, buyer), RATES.between(buyer, seller)
    slack = Decimal("0.005") * (back.for_one + 1)
    assert abs(back.convert(there.convert(amount)) - amount) <= slack


def test_a_cross_rate_is_not_rounded_before_it_meets_the_amount() -> None:
    """A rate cut to four decimals would bring 0.8218 a dollar, and 821,800.00 of a million."""
    assert RATES.between("USD", "GBP").convert(Decimal(1_000_000)) == Decimal("821835.92")


@pytest.mark.parametrize(
    "rate",
    [
        ExchangeRate(currency="EUR", rate=Decimal(1), per=Decimal("22.000"), day=DAY),
        EuroRates(day=DAY, rates={"GBP": Decimal("22.000")}).between("GBP", "EUR"),
    ],
    ids=["typed", "published"],
)
def test_an_amount_is_divided_by_the_rate_that_was_typed(rate: ExchangeRate) -> None:
    """By hand: 110.11 / 22 = 5.005, halves up; 1 / 22 cut anywhere brings less than the half."""
    assert rate.convert(Decimal("110.11")) == Decimal("5.01")
    assert round(rate.for_one, 6) == Decimal("0.045455")


def test_a_rate_keeps_its_day() -> None:
    assert RATES.between("GBP", "USD").day == DAY


@given(amounts, st.integers(0, 100))
def test_a_cushion_is_so_many_per_cent_more_rounded_once(amount: Decimal, percent: int) -> None:
    bare = RATES.between("GBP", "USD")
    cushioned = RATES.between("GBP", "USD", cushion=percent / 100)
    wanted = amount * bare.for_one * (100 + percent) / 100
    assert abs(cushioned.convert(amount) - wanted) <= Decimal("0.005")


@pytest.mark.parametrize(
    ("changes", "place", "code"),
    [
        ({"rate": Decimal(0)}, "rate", "not-above"),
        ({"rate": Decimal("NaN")}, "rate", "not-finite"),
        ({"rate": Decimal("1e10")}, "rate", "too-large"),
        ({"per": Decimal(0)}, "per", "not-above"),
        ({"per": Decimal("1e10")}, "per", "too-large"),
        ({"cushion": -0.01}, "cushion", "too-small"),
        ({"cushion": 1.01}, "cushion", "too-large"),
    ],
)
def test_a_rate_or_a_cushion_that_cannot_be_is_refused(
    changes: dict[str, object], place: str, code: str
) -> None:
    with pytest.raises(Refused) as caught:
        replace(RATES.between("GBP", "USD"), **changes)  # type: ignore[arg-type]
    (mistake,) = caught.value.mistakes
    assert (mistake.path, mistake.code) == (place, code)


@pytest.mark.parametrize(("days", "old"), [(0, False), (7, False), (8, True), (-1, False)])
def test_a_rate_is_old_after_a_week(days: int, old: bool) -> None:  # noqa: FBT001
    assert is_old(DAY, DAY + timedelta(days=days)) is old


def paid_in(currency: str, rate: ExchangeRate | None = None) -> Decimal | None:
    workshop = sample_workshop(exchange={} if rate is None else {rate.currency: rate})
    return sample_quote(sample_order(pays_in=currency), workshop).price.buyer_total


def test_the_buyer_pays_the_total_in_her_currency_and_nothing_else_changes() -> None:
    rate = RATES.between("GBP", "USD", cushion=0.03)
    total = sample_quote().price.total
    assert paid_in("USD", rate) == rate.convert(total)
    assert total * rate.for_one < rate.convert(total)


def test_a_buyer_who_pays_in_the_workshops_currency_has_no_second_total() -> None:
    assert paid_in("GBP") is None


def test_a_buyers_currency_without_a_rate_is_refused_at_its_place() -> None:
    with pytest.raises(Refused) as caught:
        paid_in("SEK", RATES.between("GBP", "USD"))
    (mistake,) = caught.value.mistakes
    assert (mistake.path, mistake.code) == ("order.pays_in", "no-rate")


def test_a_currency_that_iso_does_not_list_is_unknown() -> None:
    with pytest.raises(Refused, match="unknown-currency"):
        sample_order(pays_in="XQQ")


def test_currencies_of_a_table_that_are_no_longer_paid_in_are_passed_over() -> None:
    """Source: ISO 4217 lists HRK among the historic codes since the euro replaced it."""
    table = replace(RATES, rates={**RATES.rates, "HRK": Decimal("7.5345")})
    paid = with_reference_rates(sample_workshop(), table)
    assert "HRK" not in paid.exchange
    assert "USD" in paid.exchange


def test_without_reference_rates_a_workshop_stays_as_it_is() -> None:
    workshop = sample_workshop()
    assert with_reference_rates(workshop, None) is workshop
    elsewhere = replace(RATES, rates={"USD": RATES.rates["USD"]})
    assert with_reference_rates(workshop, elsewhere) is workshop
