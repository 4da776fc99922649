"""Which of several payments is due, as the work goes on."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.making.log_lines import LogLine
from quoting.core.making.money_due import dues_come, money_due
from quoting.core.making.progress import progress_of
from quoting.core.order.order import Terms
from quoting.core.order.stage import Stage
from quoting.core.quote.offer import Offer, offer_of
from quoting.core.quote.offer_rows import Due, RowCode
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit, Pricing, RestDue, Target
from tests.core.making.logs import log, paid, reached
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop

QUOTE = sample_quote()
ROWS = progress_of(QUOTE, ()).rows
THIRD = Pricing(target=Target(margin=0.1), deposit=Deposit(share=0.3), at_half=0.25)


def offer(pricing: Pricing = THIRD, each: str = "292.00", **order: Any) -> Offer:
    """Return an offer at a price of 292 and 5 of delivery unless told."""
    asked = sample_order(terms=Terms(target=Target(given=Decimal(each))), **order)
    return offer_of(sample_quote(asked, sample_workshop(pricing=pricing, exchange={"JPY": YEN})))


YEN = ExchangeRate(currency="JPY", rate=Decimal(190), day=TODAY)


def still(of: Offer, *lines: LogLine) -> list[tuple[RowCode, str]]:
    return [(each.code, str(each.still)) for each in money_due(of, log(*lines)).payments]


def test_what_came_pays_the_payments_in_their_order() -> None:
    """By hand: 30 % of 297 is 89.10, 25 % is 74.25, and 133.65 is left."""
    parts = RowCode.DEPOSIT, RowCode.AT_HALF, RowCode.BALANCE
    assert still(offer()) == list(zip(parts, ("89.10", "74.25", "133.65"), strict=True))
    for amount, left in (
        ("89.10", ("0.00", "74.25", "133.65")),
        ("100", ("0.00", "63.35", "133.65")),
        ("163.35", ("0.00", "0.00", "133.65")),
        ("300", ("0.00", "0.00", "0.00")),
    ):
        assert still(offer(), paid(amount)) == list(zip(parts, left, strict=True))


def test_they_are_told_in_the_buyers_currency_once_she_pays_in_it() -> None:
    """By hand: of 297 × 190 = 56,430 yen 16,929 and, rounded up, 14,108 are paid before 25,393."""
    abroad = still(offer(pays_in="JPY"), paid("16929", "JPY"))
    assert [left for _, left in abroad] == ["0", "14108", "25393"]


def test_a_payment_that_comes_to_nothing_abroad_is_told_of_all_at_once() -> None:
    """By hand: of 0.01 and 5 a quarter is 1.25, of which at a hundredth nothing is left."""
    rate = replace(YEN, rate=Decimal("0.01"))
    asked = sample_order(terms=Terms(target=Target(given=Decimal(30))), pays_in="JPY")
    shop = sample_workshop(pricing=replace(THIRD, at_half=0.01), exchange={"JPY": rate})
    of = offer_of(sample_quote(asked, shop))
    (payment,) = money_due(of, log(paid("0.1", "JPY"))).payments
    assert (payment.code, payment.due) == (RowCode.WHOLE, None)


def test_each_payment_is_due_when_its_time_has_come() -> None:
    now = {Due.ON_ACCEPTING}
    for stage, rows, come in (
        (Stage.AGREED, 0, now),
        (Stage.ON_THE_HOOK, (ROWS - 1) // 2, now),
        (Stage.ON_THE_HOOK, (ROWS + 1) // 2, now | {Due.AT_HALF}),
        (Stage.ON_THE_HOOK, ROWS, now | {Due.AT_HALF, Due.BEFORE_SENDING}),
        (Stage.FINISHED, 0, now | {Due.AT_HALF, Due.BEFORE_SENDING}),
        (Stage.HANDED_OVER, 0, set(Due)),
    ):
        progress = progress_of(QUOTE, log(reached(rows)) if rows else ())
        assert dues_come(progress, stage) == come


def test_what_is_due_by_then_is_what_is_still_to_pay_of_those() -> None:
    due = money_due(offer(), log(paid("100")))
    assert due.due_by({Due.ON_ACCEPTING}) == 0
    assert due.due_by({Due.ON_ACCEPTING, Due.AT_HALF}) == Decimal("63.35")
    assert due.due_by(set(Due)) == due.due == Decimal("197.00")


def test_of_a_payment_that_nothing_was_agreed_of_nothing_is_due_by_any_time() -> None:
    plain = money_due(offer(replace(THIRD, deposit=None, at_half=None)), ())
    assert [(each.code, each.due) for each in plain.payments] == [(RowCode.WHOLE, None)]
    assert (plain.due_by(set(Due)), plain.due) == (0, Decimal("297.00"))


@pytest.mark.parametrize(
    ("pricing", "due", "deposit"),
    [
        (replace(THIRD, deposit=Deposit(share=1.0)), Due.ON_ACCEPTING, "297.00"),
        (replace(THIRD, deposit=None, at_half=1.0), Due.AT_HALF, "0"),
    ],
)
def test_one_payment_of_all_is_due_at_its_own_time(
    pricing: Pricing, due: Due, deposit: str
) -> None:
    found = money_due(offer(pricing), ())
    (payment,) = found.payments
    assert (payment.code, payment.amount, payment.due) == (RowCode.WHOLE, Decimal("297.00"), due)
    assert found.deposit == Decimal(deposit)


def test_the_rest_is_due_when_the_maker_says() -> None:
    later = money_due(offer(replace(THIRD, rest_due=RestDue.ON_DELIVERY)), ())
    assert later.payments[-1].due is Due.ON_DELIVERY
