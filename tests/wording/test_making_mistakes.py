"""What is said of a line of a log that cannot be true."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from quoting.core.ground.errors import Fact, Mistake
from quoting.wording import Speech, mistake_sentence
from tests.paths import place_of
from tests.wording.speeches import DE, GB


def said(code: str, speech: Speech = GB, **facts: Fact) -> str:
    return mistake_sentence(Mistake(place_of("rows"), code, facts), speech)


def test_rows_are_told_with_how_many_there_are() -> None:
    sentence = said("more-rows-than-there-are", read=1204, limit=104)
    assert sentence == "1,204 is more than there is to make: the order has 104 in all."


def test_yarn_is_told_with_what_is_left_of_it() -> None:
    sentence = said("more-yarn-than-there-is", read=60.5, limit=50.0, colour="teal")
    assert sentence.startswith("60.5 g of teal is more than there is: 50 g are left.")


@pytest.mark.parametrize(
    ("speech", "currency", "amount"),
    [(GB, "GBP", "£70.50"), (GB, "EUR", "€70.50"), (DE, "EUR", "70,50\u00a0€")],
)
def test_money_paid_back_is_told_in_its_own_currency(
    speech: Speech, currency: str, amount: str
) -> None:
    facts = {"read": Decimal("80"), "limit": Decimal("70.50"), "currency": currency}
    assert f"at most {amount} can be paid back" in said("paid-back-too-much", speech, **facts)


def test_a_day_to_come_is_told_with_the_last_that_will_do() -> None:
    sentence = said("day-to-come", read=date(2027, 1, 3), limit=date(2026, 12, 1))
    assert (
        sentence == "3 January 2027 is still to come; write down what happened by 1 December 2026."
    )


def test_colours_and_currencies_are_told_with_those_that_there_are() -> None:
    colour = said("colour-not-in-order", read="pink", known=("oat", "teal"))
    assert colour == "There is no “pink” in this order; there are oat or teal."
    money = said("currency-not-offered", read="USD", known=("GBP", "EUR"))
    assert "GBP or EUR" in money
