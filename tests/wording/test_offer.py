"""An offer in words: every amount has a name, and every name is told once."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.ground.measures import Units
from quoting.core.order.order import Terms
from quoting.core.quote.left_out import LeftOut
from quoting.core.quote.offer import offer_of
from quoting.core.quote.offer_rows import Due, Row, RowCode
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit, Pricing, RestDue, Target
from quoting.wording import say_offer
from quoting.wording.offer import people_texts
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop

OFFER = offer_of(sample_quote())
EURO = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY)


@pytest.mark.parametrize("code", RowCode)
def test_every_amount_that_there_can_be_has_a_name(code: RowCode) -> None:
    row = Row(code=code, amount=Decimal("1234.50"), currency="GBP", share=Decimal("0.125"))
    (said,) = say_offer(replace(OFFER, rows=(row,))).rows
    assert said.name
    assert (said.amount, said.is_total) == ("£1,234.50", code is RowCode.TOTAL)


def test_all_the_names_are_different() -> None:
    rows = [Row(code=code, amount=Decimal(1), currency="GBP") for code in RowCode]
    paid = (RowCode.TOTAL, RowCode.DEPOSIT, RowCode.BALANCE)
    abroad = [Row(code=code, amount=Decimal(1), currency="EUR") for code in paid]
    offer = replace(OFFER, rows=(*rows, *abroad), exchange=EURO)
    names = [row.name for row in say_offer(offer).rows]
    assert len(set(names)) == len(RowCode) + 3


@pytest.mark.parametrize("due", Due)
def test_a_payment_says_when_it_is_due(due: Due) -> None:
    row = Row(code=RowCode.DEPOSIT, amount=Decimal(1), currency="GBP", due=due)
    (said,) = say_offer(replace(OFFER, rows=(row,))).rows
    assert said.name.startswith("Deposit, ")
    assert len(said.name.split()) > 2


def test_it_is_said_in_the_words_that_the_offer_is_written_in() -> None:
    german = say_offer(replace(OFFER, locale="de_DE", units=Units.INCHES, currency="EUR"))
    assert german.language == "de"
    told = [fact.text for fact in (*german.facts, *german.days)]
    assert any("31,5 × 39\u00a0in" in text for text in told)
    assert "16. Dezember 2026" in told
    assert "oat, teal, rust" in told


def test_what_may_be_left_out_stands_after_the_extras_with_what_it_is_less() -> None:
    less = (LeftOut(what="Initials {b}", less=Decimal("29.00")),)
    offer = replace(OFFER, extras=("Gift box", "Initials {b}"), left_out=less)
    facts = {fact.of: fact.text for fact in say_offer(offer).facts}
    text = "Gift box, Initials {b}. Without Initials {b}: £29.00 less."
    assert facts["extras"] == people_texts(offer)["extras"] == text


def test_an_extra_that_ends_with_a_full_stop_has_no_second_one() -> None:
    less = (LeftOut(what="Initials I.M.", less=Decimal("12.00")),)
    text = people_texts(replace(OFFER, extras=("Initials I.M.",), left_out=less))["extras"]
    assert text == "Initials I.M. Without Initials I.M.: £12.00 less."


def test_the_payments_of_an_offer_stand_in_their_order_with_when_each_is_due() -> None:
    """By hand: of 297 three tenths are 89.10, a quarter is 74.25, 133.65 is left."""
    pricing = Pricing(
        target=Target(margin=0.1),
        deposit=Deposit(share=0.3),
        at_half=0.25,
        rest_due=RestDue.ON_DELIVERY,
    )
    order = sample_order(terms=Terms(target=Target(given=Decimal(292))))
    offer = offer_of(sample_quote(order, sample_workshop(pricing=pricing)))
    assert [(row.name, row.amount) for row in say_offer(offer).rows][-3:] == [
        ("Deposit, when you accept", "£89.10"),
        ("Part payment, when half is made", "£74.25"),
        ("Balance, on delivery", "£133.65"),
    ]
