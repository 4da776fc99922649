"""The number formats of the workbook, and the units that lengths of yarn are shown in."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.measures import CM_PER
from quoting.core.ground.money import round_money
from quoting.core.ground.sameness import NEAR_DIGITS
from quoting.wording import Speech, grouped_as, sheet_money, sheet_number

COUNT, TENTHS, HOURS = (sheet_number(digits) for digits in (0, 1, 2))
FINE = "#,##0.0###"
SHARE, ROUGH_SHARE = "0.0##%", "0.0%"
APART = "_m"
"""Put behind a format: room beside the figure, where words follow it."""
RATE_DIGITS_MORE = 3


def is_part(count: float) -> bool:
    """Return whether a count is not of whole things."""
    return round(count, NEAR_DIGITS) != round(count)


def count_shape(count: float) -> str:
    """Return the format of a count: with a tenth only where it is not of whole things."""
    return TENTHS if is_part(count) else COUNT


@dataclass(frozen=True, slots=True)
class Shapes:
    """How one workshop's figures are shown in cells."""

    speech: Speech

    @property
    def digits(self) -> int:
        """The decimals that money is rounded to (ISO 4217)."""
        return minor_digits(self.speech.currency)

    @property
    def money(self) -> str:
        """The format of money."""
        return sheet_money(self.speech)

    def rate(self, amount: Decimal) -> str:
        """Return the format of money for one of a thing: finer only where the amount is."""
        whole = round_money(amount, self.speech.currency) == amount
        return self.money if whole else self.fine_money

    @property
    def fine_money(self) -> str:
        """The format of a rate finer than money, such as the price of a gram."""
        return sheet_money(self.speech, digits=self.digits + RATE_DIGITS_MORE)

    @property
    def bare_money(self) -> str:
        """The format of money without its sign, where a table beside it has that."""
        return grouped_as(sheet_number(self.digits), self.speech.locale)

    @property
    def short_unit(self) -> str:
        """The unit of the yarn in a stitch or a tail."""
        return self.speech.length_unit

    @property
    def long_unit(self) -> str:
        """The unit of the yarn in a ball."""
        return self.speech.yarn_unit

    @property
    def short_per_long(self) -> int:
        """How many short units make a long one: 100 cm in a metre, 36 in in a yard."""
        return round(CM_PER[self.long_unit] / CM_PER[self.short_unit])

    def short(self, length_m: float) -> float:
        """Return metres in the short unit."""
        return length_m * CM_PER["m"] / CM_PER[self.short_unit]

    def long(self, length_m: float) -> float:
        """Return metres in the long unit."""
        return length_m * CM_PER["m"] / CM_PER[self.long_unit]
