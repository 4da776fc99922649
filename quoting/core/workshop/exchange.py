"""A rate of exchange into the buyer's currency, with its day and a cushion."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.currencies import MINOR_DIGITS
from quoting.core.ground.errors import Checks
from quoting.core.ground.money import round_money

MOST_RATE = 1e9


@dataclass(frozen=True, slots=True, kw_only=True)
class ExchangeRate:
    """`rate` units of the buyer's `currency` for `per` of the workshop's, as of `day`.

    A rate that is known the other way round is kept so, as 1 for `per`: an amount is divided by
    it, and no inverse is ever rounded. `cushion` is a share added against the rate's moving before
    the buyer pays.
    """

    currency: str
    rate: Decimal
    per: Decimal = Decimal(1)
    day: date
    cushion: float = 0.0

    def __post_init__(self) -> None:
        checks = Checks()
        if self.currency not in MINOR_DIGITS:
            checks.add("currency", MistakeCode.UNKNOWN_CURRENCY, read=self.currency)
        checks.number("rate", self.rate, above=0, most=MOST_RATE)
        checks.number("per", self.per, above=0, most=MOST_RATE)
        checks.number("cushion", self.cushion, least=0, most=1)
        checks.done()

    @property
    def for_one(self) -> Decimal:
        """The buyer's units for one of the workshop's. No amount is reckoned by it."""
        return exchanged(Decimal(1), units=self.rate, per=self.per)

    def convert(self, amount: Decimal) -> Decimal:
        """Return an amount of the workshop's currency in the buyer's, rounded once."""
        cushioned = amount * (1 + Decimal(repr(self.cushion)))
        return round_money(exchanged(cushioned, units=self.rate, per=self.per), self.currency)


def exchanged(amount: Decimal, *, units: Decimal, per: Decimal) -> Decimal:
    """Return what an amount comes to where so many units are paid for `per` of it.

    The product is divided last: a quotient that was rounded first would move the half of a cent.
    """
    return amount * units / per
