"""A bill says what was agreed, what is paid of it, and what is due of each payment and when."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.making.log_lines import LogEntry
from quoting.core.papers.bill import Bill, BillAsked, bill_of
from quoting.core.quote.offer import Offer
from quoting.core.quote.offer_rows import Due, RowCode
from quoting.core.workshop.selling import Tax, TaxShown
from tests.core.making.logs import DAY, log, paid
from tests.core.papers.accounts import offered

OFFER = offered()


def bill(entries: tuple[LogEntry, ...], offer: Offer = OFFER, pay_by: date | None = None) -> Bill:
    return bill_of(offer, entries, BillAsked(pay_by=pay_by), day=DAY)


def amount(code: RowCode, offer: Offer = OFFER) -> Decimal:
    row = offer.row(code)
    assert row is not None
    return row.amount


def test_nothing_paid_leaves_each_payment_due_when_it_was_agreed() -> None:
    shares = [(share.when, share.amount) for share in bill(log()).shares]
    assert shares == [
        (Due.ON_ACCEPTING, amount(RowCode.DEPOSIT)),
        (Due.BEFORE_SENDING, amount(RowCode.BALANCE)),
    ]


def test_of_three_payments_each_is_due_at_its_time() -> None:
    offer = offered(share=0.3, at_half=0.3)
    made = bill(log(paid("10")), offer)
    times = [share.when for share in made.shares]
    assert times == [Due.ON_ACCEPTING, Due.AT_HALF, Due.ON_DELIVERY]
    assert made.due == made.total - 10


def test_what_came_is_for_what_is_due_first() -> None:
    made = bill(log(paid(str(amount(RowCode.DEPOSIT) + 10))))
    (share,) = made.shares
    assert (share.when, share.amount) == (Due.BEFORE_SENDING, amount(RowCode.BALANCE) - 10)


def test_without_a_deposit_all_of_it_is_due_and_no_day_was_agreed() -> None:
    offer = offered(share=None)
    (share,) = bill(log(), offer).shares
    assert (share.when, share.amount) == (None, amount(RowCode.TOTAL, offer))


AMOUNTS = st.lists(st.integers(-50, 300).filter(bool), max_size=4)
"""What came and what was paid back, never more than came."""


@given(AMOUNTS.filter(lambda amounts: sum(amounts) >= 0))
def test_what_is_due_and_what_was_received_make_the_total(amounts: list[int]) -> None:
    entries = log(*(paid(str(each)) for each in amounts))
    if sum(amounts) >= amount(RowCode.TOTAL):
        with pytest.raises(Refused) as refusal:
            bill(entries)
        assert refusal.value.mistakes[0].code == MistakeCode.NOTHING_DUE
        return
    made = bill(entries)
    assert made.received == sum(amounts)
    assert made.due == made.total - made.received
    assert [each.amount for each in made.paid] == [Decimal(each) for each in amounts]


def test_the_price_as_it_was_agreed_is_repeated_with_its_tax_and_without_the_payments() -> None:
    tax = Tax(registered=True, rate=0.2, shown=TaxShown.ADDED)
    codes = [row.code for row in bill(log(), offered(tax=tax)).rows]
    assert codes == [RowCode.BLANKETS, RowCode.DELIVERY, RowCode.TAX_ADDED, RowCode.TOTAL]


def test_what_was_paid_in_the_buyers_currency_is_billed_in_it() -> None:
    offer = offered(pays_in="EUR")
    made = bill(log(paid("20", "EUR")), offer)
    assert made.account == "EUR"
    assert [(row.code, row.currency) for row in made.rows][-2:] == [
        (RowCode.TOTAL, "GBP"),
        (RowCode.TOTAL, "EUR"),
    ]
    assert made.due == made.total - 20


def test_a_day_to_pay_by_is_not_past() -> None:
    assert bill(log(), pay_by=DAY).pay_by == DAY
    with pytest.raises(Refused) as refusal:
        bill(log(), pay_by=date(2026, 11, 30))
    (mistake,) = refusal.value.mistakes
    assert (mistake.path, mistake.code) == ("pay_by", MistakeCode.DAY_PAST)
