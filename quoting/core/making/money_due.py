"""What the buyer has paid and what is still due, against what was offered to her."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quoting.core.ground.money import round_money
from quoting.core.making.log_lines import LogEntry
from quoting.core.making.progress import Progress, received
from quoting.core.order.stage import Stage
from quoting.core.quote.offer import Offer
from quoting.core.quote.offer_rows import Due, RowCode

NOTHING = Decimal(0)
HALF = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class PaymentDue:
    """One of the payments agreed, and what is still to pay of it.

    `due` is None where nothing was agreed of when it is paid.
    """

    code: RowCode
    amount: Decimal
    due: Due | None
    still: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class MoneyDue:
    """What is paid of an offer, in whole minor units of `currency` (ISO 4217).

    The `deposit` is due when the order is agreed, nothing where none is asked. What is received
    pays the `payments` in their order.
    """

    currency: str
    total: Decimal
    deposit: Decimal
    received: Decimal
    payments: tuple[PaymentDue, ...]

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

    def due_by(self, come: Collection[Due]) -> Decimal:
        """Return what is still to pay of the payments whose time has come."""
        return sum((each.still for each in self.payments if each.due in come), NOTHING)


def dues_come(progress: Progress, stage: Stage) -> frozenset[Due]:
    """Return the times of payment that an agreed order has come to.

    Half is made once half of all rows and rounds are, or half of the stitches where rounds grow and
    motifs are made, and all of it once the last is, or the order is finished.
    """
    finished = stage in {Stage.FINISHED, Stage.HANDED_OVER}
    come = {
        Due.ON_ACCEPTING: True,
        Due.AT_HALF: finished or progress.share >= HALF,
        Due.BEFORE_SENDING: finished or not progress.rows_left,
        Due.ON_DELIVERY: stage is Stage.HANDED_OVER,
    }
    return frozenset(due for due, has_come in come.items() if has_come)


def money_due(offer: Offer, entries: tuple[LogEntry, ...]) -> MoneyDue:
    """Return what is paid of an offer and what is due.

    It is told in the buyer's currency until something is paid in the offer's own; then in that, in
    which money of the other counts for the part of the total that it is there.
    """
    paid = {currency: amount for currency, amount in received(entries).items() if amount}
    abroad = _currency_abroad(offer)
    if abroad is not None and paid.keys() <= {abroad}:
        return _due(offer, abroad, paid.get(abroad, NOTHING))
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
    at_once = whole is not None and whole.due is Due.ON_ACCEPTING
    deposit = total if at_once else _amount(offer, RowCode.DEPOSIT, currency)
    payments = tuple(_payments(offer, currency, total, paid))
    return MoneyDue(
        currency=currency, total=total, deposit=deposit, received=paid, payments=payments
    )


def _payments(offer: Offer, currency: str, total: Decimal, paid: Decimal) -> Iterator[PaymentDue]:
    """Yield the payments in a currency; all of it at once where there are none in it."""
    rows = [row for row in offer.rows if row.due is not None]
    agreed = [(row.code, row.amount, row.due) for row in rows if row.currency == currency]
    when = rows[0].due if len(rows) == 1 else None
    left = paid
    for code, amount, due in agreed or [(RowCode.WHOLE, total, when)]:
        now = min(amount, max(NOTHING, left))
        left -= now
        yield PaymentDue(code=code, amount=amount, due=due, still=amount - now)


def _amount(offer: Offer, code: RowCode, currency: str) -> Decimal:
    row = offer.row(code, currency)
    return NOTHING if row is None else row.amount


def _currency_abroad(offer: Offer) -> str | None:
    return None if offer.exchange is None else offer.exchange.currency
