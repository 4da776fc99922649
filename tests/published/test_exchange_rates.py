"""Cross rates through the euro, against what central banks published."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.ground.money import round_half_up
from quoting.core.price.payments import Payments
from quoting.core.workshop.euro_rates import EuroRates
from quoting.core.workshop.exchange import ExchangeRate, exchanged

REFERENCE = EuroRates(
    day=date(2017, 3, 8),
    rates={
        "USD": Decimal("1.0556"),
        "JPY": Decimal("120.65"),
        "GBP": Decimal("0.86753"),
        "CHF": Decimal("1.0702"),
        "SEK": Decimal("9.5223"),
    },
)
"""European Central Bank, euro foreign exchange reference rates of 8 March 2017."""

IRREVOCABLE = EuroRates(
    day=date(1999, 1, 1),
    rates={
        "BEF": Decimal("40.3399"),
        "DEM": Decimal("1.95583"),
        "ESP": Decimal("166.386"),
        "FRF": Decimal("6.55957"),
        "IEP": Decimal("0.787564"),
        "ITL": Decimal("1936.27"),
        "LUF": Decimal("40.3399"),
        "NLG": Decimal("2.20371"),
        "ATS": Decimal("13.7603"),
        "PTE": Decimal("200.482"),
        "FIM": Decimal("5.94573"),
        "GRD": Decimal("340.750"),
    },
)
"""Regulations (EC) 2866/98 and 1478/2000: units for one euro, fixed for good (from memory)."""


@pytest.mark.parametrize(("buyer", "paid"), [("GBP", "82.18"), ("JPY", "11430")])
def test_a_hundred_dollars_of_that_day(buyer: str, paid: str) -> None:
    """Source: the reference rates above, crossed by Regulation (EC) 1103/97, articles 4 and 5."""
    assert REFERENCE.between("USD", buyer).convert(Decimal(100)) == Decimal(paid)


@pytest.mark.parametrize(
    ("currency", "units", "pesetas"),
    [
        ("BEF", 100, "412.4601"),
        ("DEM", 1, "85.0718"),
        ("FRF", 1, "25.3654"),
        ("IEP", 1, "211.2666"),
        ("ITL", 100, "8.5931"),
        ("LUF", 100, "412.4601"),
        ("NLG", 1, "75.5027"),
        ("ATS", 1, "12.0917"),
        ("PTE", 100, "82.9930"),
        ("FIM", 1, "27.9841"),
        ("GRD", 100, "48.8293"),
    ],
)
def test_pesetas_for_the_other_currencies_of_the_euro(
    currency: str, units: int, pesetas: str
) -> None:
    """Source: Bank of Spain, equivalent bilateral rates, to four decimals.

    bankofspain.org/tipos/tipeur2e.htm
    """
    per, peseta = IRREVOCABLE.per_euro(currency), IRREVOCABLE.per_euro("ESP")
    assert round_half_up(exchanged(Decimal(units), units=peseta, per=per), 4) == Decimal(pesetas)


@pytest.mark.parametrize(
    ("pesetas", "euros"),
    [("166.386", "1.00"), ("1000", "6.01"), ("5000", "30.05"), ("1000000000", "6010121.04")],
)
def test_pesetas_are_divided_by_their_rate_and_not_multiplied_by_an_inverse(
    pesetas: str, euros: str
) -> None:
    """Source: Regulation (EC) 1103/97, article 4 (3), at the rate above.

    Its recital 10 warns of large amounts: 0.00601012, the inverse to six figures, gives 6,010,120.
    """
    assert IRREVOCABLE.between("ESP", "EUR").convert(Decimal(pesetas)) == Decimal(euros)


@pytest.mark.parametrize(("tolars", "euros"), [("500", "2.09"), ("1000", "4.17")])
def test_tolars_are_divided_by_their_rate_and_rounded_once(tolars: str, euros: str) -> None:
    """Source: rounding rules of the changeover in Slovenia (evro.si), at 239.640 for one euro."""
    fixed = EuroRates(day=date(2007, 1, 1), rates={"SIT": Decimal("239.640")})
    assert fixed.between("SIT", "EUR").convert(Decimal(tolars)) == Decimal(euros)
    typed = ExchangeRate(
        currency="EUR", rate=Decimal(1), per=Decimal("239.640"), day=date(2007, 1, 1)
    )
    assert typed.convert(Decimal(tolars)) == Decimal(euros)


def test_two_halves_of_a_thousand_tolars_are_paid_as_the_thousand_is() -> None:
    """Source: the amounts above, by the same rules: 500 tolars are 2.09, and 1,000 are 4.17.

    Two payments of 500 exchanged by themselves would be a cent more than the whole.
    """
    rate = ExchangeRate(
        currency="EUR", rate=Decimal(1), per=Decimal("239.640"), day=date(2007, 1, 1)
    )
    half, nothing = Decimal(500), Decimal(0)
    for payments, last in (
        (Payments(deposit=half, at_half=nothing, rest=half), "2.08"),
        (Payments(deposit=half, at_half=half, rest=nothing), "2.08"),
    ):
        euros = payments.exchanged(rate)
        assert (euros.deposit, euros.balance) == (Decimal("2.09"), Decimal(last))
        assert euros.total == Decimal("4.17")


@pytest.mark.parametrize(
    ("currency", "rate", "amount", "euros"),
    [
        ("BEF", "40.3399", "1000000000", "24789352.48"),
        ("ITL", "1936.27", "1000000000000", "516456899.09"),
        ("DEM", "1.95583", "1000000000", "511291881.20"),
        ("IEP", "0.787564", "1000000000", "1269738078.43"),
        ("HRK", "7.53450", "1000000000", "132722808.41"),
        ("EEK", "15.6466", "1000000000", "63911648.54"),
    ],
)
def test_a_large_amount_is_divided_by_the_rate_itself(
    currency: str, rate: str, amount: str, euros: str
) -> None:
    """Regulation (EC) 1103/97, article 4 (3) and recital 10; the quotients by long division.

    Rates: Regulations (EC) 2866/98, (EU) 671/2010 and (EU) 2022/1208 (from memory). An inverse
    of six figures is off by euros in every one of them.
    """
    fixed = EuroRates(day=date(1999, 1, 1), rates={currency: Decimal(rate)})
    assert fixed.between(currency, "EUR").convert(Decimal(amount)) == Decimal(euros)


def test_no_order_is_paid_in_a_currency_that_the_euro_replaced() -> None:
    """Source: ISO 4217, where DEM stands in list three, codes of historic currencies."""
    with pytest.raises(Refused) as refused:
        IRREVOCABLE.between("EUR", "DEM")
    assert [mistake.code for mistake in refused.value.mistakes] == ["unknown-currency"]
