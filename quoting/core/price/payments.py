"""How a total is paid: a deposit, a second payment when half is made, and what is left."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from quoting.core.ground.money import exact, round_money
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit


@dataclass(frozen=True, slots=True, kw_only=True)
class Payments:
    """The parts of a total, in the order that they are paid, in whole minor units.

    A part that is not asked for is nothing.
    """

    deposit: Decimal
    at_half: Decimal
    rest: Decimal

    @property
    def balance(self) -> Decimal:
        """What is left to pay after the deposit, in one payment or in two."""
        return self.at_half + self.rest

    @property
    def total(self) -> Decimal:
        """All of them."""
        return self.deposit + self.balance

    @property
    def count(self) -> int:
        """How many there are: those that are more than nothing, and one of a total of nothing."""
        return max(1, sum(part > 0 for part in (self.deposit, self.at_half, self.rest)))

    def exchanged(self, rate: ExchangeRate) -> Payments:
        """Return them in the buyer's currency: each is exchanged and rounded once.

        The last is what is left of her total, so that they add up to it.
        """
        total, deposit = rate.convert(self.total), rate.convert(self.deposit)
        second = rate.convert(self.at_half) if self.rest else total
        at_half = min(second, total - deposit)
        return Payments(deposit=deposit, at_half=at_half, rest=total - deposit - at_half)


@dataclass(frozen=True, slots=True, kw_only=True)
class PaymentTerms:
    """What decides how a total is paid.

    `at_half` is a share of the total; `yarn` is what the yarn costs, for a deposit of it.
    """

    deposit: Deposit | None = None
    at_half: float | None = None
    yarn: Decimal = Decimal(0)

    def split(self, total: Decimal, currency: str) -> Payments:
        """Return the payments of a total; all but the last are rounded, so they add up to it."""
        deposit = self._deposit(total, currency)
        second = round_money(total * exact(self.at_half or 0.0), currency)
        at_half = min(second, total - deposit)
        return Payments(deposit=deposit, at_half=at_half, rest=total - deposit - at_half)

    def _deposit(self, total: Decimal, currency: str) -> Decimal:
        """Return a share of the total, the yarn, or the yarn and a share of all else."""
        if self.deposit is None:
            return round_money(Decimal(0), currency)
        yarn = round_money(self.yarn if self.deposit.yarn else Decimal(0), currency)
        share = exact(self.deposit.share or 0.0)
        return min(yarn + round_money((total - yarn) * share, currency), total)
