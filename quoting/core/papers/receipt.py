"""A receipt: one payment of the buyer's, and where it leaves the account."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.money import round_money
from quoting.core.making.log_lines import LogEntry
from quoting.core.making.money_due import MoneyDue, money_due
from quoting.core.papers.head import PaperHead, head_of
from quoting.core.papers.payments import Paid, payments_in
from quoting.core.quote.offer import Offer
from quoting.core.quote.offer_rows import RowCode


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """What came for an order; `line` is the line of its log that tells of it.

    Of the `total`, `before` was paid before it and `due` is due after it, all three in the
    currency `account` (ISO 4217). `for_deposit` says that some of the deposit was due till then.
    """

    head: PaperHead
    line: int
    paid: Paid
    account: str
    total: Decimal
    before: Decimal
    due: Decimal
    for_deposit: bool = False


def receipt_of(offer: Offer, entries: tuple[LogEntry, ...], line: int, *, day: date) -> Receipt:
    """Return the receipt for the payment that a line of a log tells of.

    Errors: `log-line-missing` where no such line holds, or no money came by it.
    """
    payments = payments_in(entries)
    paid = payments.get(line)
    if paid is None or paid.amount < 0:
        raise refuse("", MistakeCode.LOG_LINE_MISSING)
    earlier = list(payments)[: list(payments).index(line)]
    before, after = (
        money_due(offer, tuple(entry for entry in entries if entry.id in lines))
        for lines in (earlier, [*earlier, line])
    )
    deposit = offer.row(RowCode.DEPOSIT, before.currency)
    return Receipt(
        head=head_of(offer, day),
        line=line,
        paid=paid,
        account=after.currency,
        total=after.total,
        before=_before(before, after, paid),
        due=after.due,
        for_deposit=deposit is not None and before.received < deposit.amount,
    )


def _before(before: MoneyDue, after: MoneyDue, paid: Paid) -> Decimal:
    """Return what was paid before, in the currency of the account after it.

    Money that makes good what was paid back in its own may leave an account in the other: what was
    paid before then counts for the part of the total that it is.
    """
    if before.currency == after.currency:
        return before.received
    if paid.currency == after.currency:
        return after.received - paid.amount
    return round_money(before.received * after.total / before.total, after.currency)
