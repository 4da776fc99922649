"""A rate of exchange into the buyer's currency, with its day and a cushion."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quoting.core.currencies import MINOR_DIGITS
from quoting.core.errors import Checks
from quoting.core.money import round_money


@dataclass(frozen=True, slots=True, kw_only=True)
class ExchangeRate:
    """Units of the buyer's `currency` for one of the workshop's, as of `day`.

    `cushion` is a share added against the rate's moving before the buyer pays.
    """

    currency: str
    rate: Decimal
    day: date
    cushion: float = 0.0

    def __post_init__(self) -> None:
        checks = Checks()
        if self.currency not in MINOR_DIGITS:
            checks.add("currency", "unknown-currency", read=self.currency)
        checks.number("rate", self.rate, above=0, most=1e9)
        checks.number("cushion", self.cushion, least=0, most=1)
        checks.done()

    def convert(self, amount: Decimal) -> Decimal:
        """Return an amount of the workshop's currency in the buyer's, rounded once."""
        cushioned = amount * self.rate * (1 + Decimal(repr(self.cushion)))
        return round_money(cushioned, self.currency)
