"""What an hour at the hook must carry, from what the maker wants of a year.

Source: predetermined overhead rates as job-order costing textbooks have them: a year's cost over
a year's hours.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from quoting.core.ground.errors import Checks
from quoting.core.ground.money import exact, round_money
from quoting.core.workshop.calendar import HOURS_A_WEEK, LEAST_HOURS
from quoting.core.workshop.selling import MOST_MONEY

WEEKS_A_YEAR = 52


@dataclass(frozen=True, slots=True, kw_only=True)
class Year:
    """A year as the maker plans it; hours are those really worked on orders."""

    income: Decimal
    overhead: Decimal
    weeks: float
    hours_a_week: float

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("income", self.income, least=0, most=MOST_MONEY)
        checks.number("overhead", self.overhead, least=0, most=MOST_MONEY)
        checks.number("weeks", self.weeks, least=1, most=WEEKS_A_YEAR)
        checks.number("hours_a_week", self.hours_a_week, least=LEAST_HOURS, most=HOURS_A_WEEK)
        checks.done()

    @property
    def hours(self) -> Decimal:
        """The hours of the year."""
        return exact(self.weeks) * exact(self.hours_a_week)


@dataclass(frozen=True, slots=True, kw_only=True)
class PayRates:
    """Pay and overhead for an hour, in whole minor units."""

    hours: Decimal
    making_per_hour: Decimal
    overhead_per_hour: Decimal


def pay_rates(year: Year, currency: str) -> PayRates:
    """Return the rates that bring the year's income and cover its overhead."""
    return PayRates(
        hours=year.hours,
        making_per_hour=round_money(year.income / year.hours, currency),
        overhead_per_hour=round_money(year.overhead / year.hours, currency),
    )
