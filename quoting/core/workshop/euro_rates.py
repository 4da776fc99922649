"""Reference rates of a day against the euro, and cross rates between any two of them.

A cross rate goes through the euro and stays the two rates that it is made of, so that no inverse is
ever rounded (Regulation (EC) 1103/97, articles 4 and 5).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks, refuse
from quoting.core.ground.place import at
from quoting.core.workshop.exchange import ExchangeRate

EURO = "EUR"
FRESH = timedelta(days=7)

LEAST_RATE, MOST_RATE = Decimal("1e-3"), Decimal("1e6")
"""No currency is so dear or so cheap; and any two within them have a cross rate that can be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EuroRates:
    """Units of each currency for one euro, on one day."""

    day: date
    rates: Mapping[str, Decimal]

    def __post_init__(self) -> None:
        checks = Checks()
        if not self.rates:
            checks.add("rates", MistakeCode.MISSING)
        for code, rate in self.rates.items():
            checks.number(at("rates", code), rate, least=LEAST_RATE, most=MOST_RATE)
        checks.done()

    def per_euro(self, currency: str) -> Decimal:
        """Return the units of a currency for one euro.

        Errors: `no-rate` at `order.pays_in`.
        """
        if currency == EURO:
            return Decimal(1)
        if currency not in self.rates:
            raise refuse(
                at("order", "pays_in"),
                MistakeCode.NO_RATE,
                read=currency,
                known=(EURO, *self.rates),
            )
        return self.rates[currency]

    def between(self, seller: str, buyer: str, cushion: float = 0.0) -> ExchangeRate:
        """Return the cross rate as an order keeps it, with its day and a cushion.

        Errors: as `per_euro`; `unknown-currency` at `currency` for one that is no longer paid in.
        """
        return ExchangeRate(
            currency=buyer,
            rate=self.per_euro(buyer),
            per=self.per_euro(seller),
            day=self.day,
            cushion=cushion,
        )


def is_old(day: date, today: date) -> bool:
    """Return whether a rate of `day` is older than a week."""
    return today - day > FRESH
