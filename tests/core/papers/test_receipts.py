"""A receipt says what came, what was paid before and what is due, as it was that day."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.making.log_lines import LogEntry, Withdrawn
from quoting.core.papers.receipt import Receipt, receipt_of
from quoting.core.quote.offer_rows import RowCode
from tests.core.making.logs import DAY, log, paid
from tests.core.papers.accounts import offered

OFFER = offered()


def receipt(entries: tuple[LogEntry, ...], line: int) -> Receipt:
    return receipt_of(OFFER, entries, line, day=DAY)


def total() -> Decimal:
    row = OFFER.row(RowCode.TOTAL)
    assert row is not None
    return row.amount


def test_the_first_payment_is_for_the_deposit_and_leaves_the_rest_due() -> None:
    made = receipt(log(paid("50")), 1)
    assert (made.before, made.due) == (0, total() - 50)
    assert made.for_deposit


def test_a_later_payment_tells_what_came_before_it_and_nothing_of_what_came_after() -> None:
    entries = log(paid("200"), paid("30"), paid("5"))
    made = receipt(entries, 2)
    assert (made.before, made.due) == (200, total() - 230)
    assert not made.for_deposit
    assert made == receipt(entries[:2], 2)


def test_payments_go_by_their_days_whenever_they_were_written_down() -> None:
    entries = log(paid("30"), paid("200", day=date(2026, 11, 1)))
    assert receipt(entries, 1).before == 200
    assert receipt(entries, 2).before == 0


def test_the_head_is_that_of_the_offer() -> None:
    head = receipt(log(paid("50")), 1).head
    assert (head.number, head.cancels, head.day) == ("", "", DAY)
    assert (head.maker, head.title, head.quote) == (OFFER.maker, OFFER.title, OFFER.number)
    assert (head.buyer, head.quoted_on, head.locale) == (OFFER.buyer, OFFER.day, OFFER.locale)


@pytest.mark.parametrize(
    "entries",
    [log(), log(paid("-5")), log(paid("50"), Withdrawn(), corrects={2: 1})],
    ids=["none", "paid back", "taken back"],
)
def test_there_is_no_receipt_for_what_did_not_come(entries: tuple[LogEntry, ...]) -> None:
    with pytest.raises(Refused) as refusal:
        receipt(entries, 1)
    assert [mistake.code for mistake in refusal.value.mistakes] == [MistakeCode.LOG_LINE_MISSING]


def test_what_is_paid_in_the_buyers_currency_is_told_in_it() -> None:
    abroad = offered(pays_in="EUR")
    row = abroad.row(RowCode.TOTAL, "EUR")
    assert row is not None
    made = receipt_of(abroad, log(paid("60", "EUR")), 1, day=DAY)
    assert (made.account, made.before, made.due) == ("EUR", 0, row.amount - 60)


def test_where_both_currencies_came_the_account_is_in_the_makers_own() -> None:
    abroad = offered(pays_in="EUR")
    entries = log(paid("60", "EUR"), paid("10", "GBP"))
    made = receipt_of(abroad, entries, 2, day=DAY)
    assert made.account == "GBP"
    assert made.paid.amount == 10
    assert made.before + 10 + made.due == made.total


def test_pounds_that_make_good_pounds_paid_back_are_no_euros() -> None:
    """By hand: of £297.00 or €357.91, €60.00 less £10.00 is £39.79, which is €47.95."""
    abroad = offered(pays_in="EUR")
    totals = [row.amount for row in abroad.rows if row.code is RowCode.TOTAL]
    entries = log(paid("60", "EUR"), paid("-10", "GBP"), paid("10", "GBP"))
    made = receipt_of(abroad, entries, 3, day=DAY)
    assert totals == [Decimal("297.00"), Decimal("357.91")]
    assert (made.account, made.before) == ("EUR", Decimal("47.95"))
    assert made.due == made.total - 60
