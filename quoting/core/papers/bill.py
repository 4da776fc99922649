"""A bill for the rest: what was offered, what is paid of it, what is still to pay and when."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks, refuse
from quoting.core.making.log_lines import LogEntry
from quoting.core.making.money_due import MoneyDue, money_due
from quoting.core.papers.head import PaperHead, head_of
from quoting.core.papers.payments import Paid, payments_in
from quoting.core.quote.offer import Offer
from quoting.core.quote.offer_rows import Due, Row, RowCode

_OFFERED = (RowCode.DELIVERY, RowCode.TAX_ADDED, RowCode.TOTAL, RowCode.TAX_INSIDE)
"""What a bill repeats of an offer, after the price that was agreed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BillAsked:
    """What a maker says of a bill: the day that it is to be paid by, where she names one."""

    pay_by: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class DueShare:
    """A part of what is to be paid; `when` is what was agreed of it, None where nothing was."""

    amount: Decimal
    when: Due | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bill:
    """An account of an order of `quantity` blankets, on the day of its head.

    `rows` are those of the offer, `paid` what came and was paid back, each in its own currency.
    `total`, `received` and the `shares` still to pay are in the currency `account` (ISO 4217).
    `follows` is the number of the bill whose place it takes, empty where it is the first.
    """

    head: PaperHead
    quantity: int
    rows: tuple[Row, ...]
    paid: tuple[Paid, ...]
    account: str
    total: Decimal
    received: Decimal
    shares: tuple[DueShare, ...]
    pay_by: date | None = None
    follows: str = ""

    @property
    def due(self) -> Decimal:
        """What is still to pay of the whole."""
        return sum((share.amount for share in self.shares), Decimal(0))


def bill_of(offer: Offer, entries: tuple[LogEntry, ...], asked: BillAsked, *, day: date) -> Bill:
    """Return the bill for what is due. Errors: `nothing-due`; `too-early` at `pay_by`."""
    _check_day(asked, day)
    account = money_due(offer, entries)
    if not account.due:
        raise refuse("", MistakeCode.NOTHING_DUE)
    return Bill(
        head=head_of(offer, day),
        quantity=offer.quantity,
        rows=tuple(_rows(offer, account.currency)),
        paid=tuple(payments_in(entries).values()),
        account=account.currency,
        total=account.total,
        received=account.received,
        shares=tuple(_shares(account)),
        pay_by=asked.pay_by,
    )


def _check_day(asked: BillAsked, day: date) -> None:
    checks = Checks()
    if asked.pay_by is not None and asked.pay_by < day:
        checks.add("pay_by", MistakeCode.DAY_PAST, read=asked.pay_by, limit=day)
    checks.done()


def _rows(offer: Offer, account: str) -> Iterator[Row]:
    """Yield the price that was agreed, what came on top, and the total in the account's money."""
    price = offer.row(RowCode.TOGETHER) or offer.row(RowCode.BLANKETS)
    rows = (price, *map(offer.row, _OFFERED))
    yield from (row for row in rows if row is not None)
    abroad = offer.row(RowCode.TOTAL, account)
    if abroad is not None and account != offer.currency:
        yield abroad


def _shares(account: MoneyDue) -> Iterator[DueShare]:
    """Yield what is still to pay of each payment that was agreed."""
    for payment in account.payments:
        if payment.still:
            yield DueShare(amount=payment.still, when=payment.due)
