"""What the buyer has paid and what is still due, against what was offered to her."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quoting.core.ground.money import round_money
from quoting.core.making.log_lines import LogEntry
from quoting.core.making.progress import received
from quoting.core.quote.offer import Offer
from quoting.core.quote.offer_rows import RowCode

NOTHING = Decimal(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class MoneyDue:
    """What is paid of an offer, in whole minor units of `currency` (ISO 4217).

    The `deposit` is due when the order is agreed, nothing where none is asked.
    """

    currency: str
    total: Decimal
    deposit: Decimal
    received: Decimal

    @property
    def deposit_due(self) -> Decimal:
        """What is due of the deposit."""
        return max(NOTHING, self.deposit - self.received)

    @property
    def balance(self) -> Decimal:
        """What the buyer was to pay after the deposit."""
        return self.total - self.deposit

    @property
    def due(self) -> Decimal:
        """What is due of the whole."""
        return max(NOTHING, self.total - self.received)

    @property
    def overpaid(self) -> Decimal:
        """What was paid too much."""
        return max(NOTHING, self.received - self.total)

    @property
    def balance_due(self) -> Decimal:
        """What is due beside the deposit."""
        return self.due - self.deposit_due


def money_due(offer: Offer, entries: tuple[LogEntry, ...]) -> MoneyDue:
    """Return what is paid of an offer and what is due.

    It is told in the buyer's currency where all that was paid was paid in it, else in the
    offer's own, in which money of the other counts for the part of the total that it is there.
    """
    paid = {currency: amount for currency, amount in received(entries).items() if amount}
    abroad = _currency_abroad(offer)
    if abroad is not None and set(paid) == {abroad}:
        return _due(offer, abroad, paid[abroad])
    return _due(offer, offer.currency, _in_own(offer, paid, abroad))


def _in_own(offer: Offer, paid: dict[str, Decimal], abroad: str | None) -> Decimal:
    own = paid.get(offer.currency, NOTHING)
    other = paid.get(abroad, NOTHING) if abroad is not None else NOTHING
    if abroad is None or not other:
        return own
    share = Fraction(other) * Fraction(_amount(offer, RowCode.TOTAL, offer.currency))
    exact = share / Fraction(_amount(offer, RowCode.TOTAL, abroad))
    return own + round_money(Decimal(exact.numerator) / exact.denominator, offer.currency)


def _due(offer: Offer, currency: str, paid: Decimal) -> MoneyDue:
    total = _amount(offer, RowCode.TOTAL, currency)
    whole = offer.row(RowCode.WHOLE)
    deposit = total if whole is not None else _amount(offer, RowCode.DEPOSIT, currency)
    return MoneyDue(currency=currency, total=total, deposit=deposit, received=paid)


def _amount(offer: Offer, code: RowCode, currency: str) -> Decimal:
    row = offer.row(code, currency)
    return NOTHING if row is None else row.amount


def _currency_abroad(offer: Offer) -> str | None:
    return None if offer.exchange is None else offer.exchange.currency
