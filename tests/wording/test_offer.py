"""An offer in words: every amount has a name, and every name is told once."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.ground.measures import Units
from quoting.core.quote.offer import offer_of
from quoting.core.quote.offer_rows import Due, Row, RowCode
from quoting.core.workshop.exchange import ExchangeRate
from quoting.wording import say_offer
from tests.examples import TODAY, sample_quote

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
