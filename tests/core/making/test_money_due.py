"""What is paid of an offer and what is still due, to the penny."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.making.log_lines import LogLine
from quoting.core.making.money_due import MoneyDue, money_due
from quoting.core.quote.offer import Offer, offer_of
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit, Target
from tests.core.making.logs import log, paid
from tests.examples import sample_order, sample_quote, sample_workshop

RATE = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=date(2026, 11, 20))


def offer(given: str = "297.00", deposit: Deposit | None = None, **changes: Any) -> Offer:
    """Return an offer at a price of 292 and 5 of delivery, half of it as deposit."""
    workshop = sample_workshop()
    pricing = replace(workshop.pricing, deposit=deposit)
    target = Target(given=Decimal(given) - 5)
    order = sample_order(terms=replace(sample_order().terms, target=target), **changes)
    shop = replace(workshop, pricing=pricing, exchange={"EUR": RATE})
    return offer_of(sample_quote(order, shop))


HALF = Deposit(share=0.5)
HOME = offer(deposit=HALF)
ABROAD = offer(deposit=HALF, pays_in="EUR")


def due(of: Offer, *lines: LogLine) -> MoneyDue:
    return money_due(of, log(*lines))


def test_the_deposit_is_due_first_and_then_the_balance() -> None:
    nothing = due(HOME)
    assert (nothing.total, nothing.deposit, nothing.balance) == (
        Decimal("297.00"),
        Decimal("148.50"),
        Decimal("148.50"),
    )
    assert (nothing.deposit_due, nothing.balance_due, nothing.due) == (
        Decimal("148.50"),
        Decimal("148.50"),
        Decimal("297.00"),
    )


def test_a_part_of_the_deposit_leaves_the_rest_of_it() -> None:
    part = due(HOME, paid("100"), paid("8.49"))
    assert part.deposit_due == Decimal("40.01")
    assert part.balance_due == Decimal("148.50")


def test_what_is_paid_beyond_the_deposit_is_paid_of_the_balance() -> None:
    more = due(HOME, paid("200"))
    assert (more.deposit_due, more.balance_due) == (0, Decimal("97.00"))


def test_all_paid_leaves_nothing_due_and_more_is_paid_too_much() -> None:
    exactly, more = due(HOME, paid("148.50"), paid("148.50")), due(HOME, paid("300"))
    assert (exactly.due, exactly.overpaid) == (0, 0)
    assert (more.due, more.overpaid) == (0, Decimal("3.00"))


def test_what_was_paid_back_is_due_again() -> None:
    assert due(HOME, paid("297"), paid("-97.01")).due == Decimal("97.01")


def test_without_a_deposit_all_of_it_is_the_balance() -> None:
    at_once = due(offer())
    assert (at_once.deposit, at_once.deposit_due) == (0, 0)
    assert at_once.balance_due == Decimal("297.00")


def test_a_deposit_of_all_of_it_is_due_whole() -> None:
    whole = due(offer(deposit=Deposit(share=1.0)), paid("7"))
    assert whole.deposit == Decimal("297.00")
    assert (whole.deposit_due, whole.balance_due) == (Decimal("290.00"), 0)


def test_paid_abroad_it_is_told_in_the_buyers_currency() -> None:
    """By hand: 297 × 1.17 = 347.49, of which 148.50 × 1.17 = 173.745 rounds up to 173.75."""
    some = due(ABROAD, paid("173.75", "EUR"))
    assert some.currency == "EUR"
    assert (some.total, some.deposit_due, some.balance_due) == (
        Decimal("347.49"),
        0,
        Decimal("173.74"),
    )


def test_nothing_paid_yet_it_is_told_in_the_buyers_currency_as_her_quote_says() -> None:
    account = due(ABROAD)
    assert (account.currency, account.due) == ("EUR", Decimal("347.49"))


def test_paid_in_both_each_counts_for_its_part_of_the_total() -> None:
    """By hand: 173.745 of 347.49 EUR is half of the total, 148.50 of 297 GBP."""
    both = due(ABROAD, paid("100", "GBP"), paid("173.745", "EUR"))
    assert both.currency == "GBP"
    assert both.received == Decimal("248.50")
    assert both.due == Decimal("48.50")


def test_all_of_it_paid_in_both_leaves_not_a_penny() -> None:
    assert due(ABROAD, paid("347.49", "EUR"), paid("1")).overpaid == Decimal(1)


@pytest.mark.parametrize("back", ["173.75", "40"])
def test_what_came_and_went_back_abroad_leaves_the_makers_own(back: str) -> None:
    lines = (paid(back, "EUR"), paid(f"-{back}", "EUR"), paid("10"))
    assert due(ABROAD, *lines).received == 10


def test_a_deposit_of_the_yarn_is_that_of_the_offer() -> None:
    by_yarn = offer(deposit=Deposit(yarn=True))
    assert due(by_yarn).deposit == Decimal("32.20")


def test_a_whole_deposit_abroad_is_due_whole_too() -> None:
    whole = offer(deposit=Deposit(share=1.0), pays_in="EUR")
    assert due(whole, paid("47.49", "EUR")).deposit_due == Decimal("300.00")
