"""Offers, and what was paid of them, for tests of papers."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

from quoting.core.quote.offer import Offer, offer_of
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit, RestDue
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop

EURO = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY, cushion=0.03)
"""Invented."""


def offered(
    *,
    share: float | None = 0.5,
    at_half: float | None = None,
    pays_in: str | None = None,
    **changes: Any,
) -> Offer:
    """Return an offer that asks for a share of its total as a deposit, or for none.

    With a payment `at_half`, the last is due on delivery.
    """
    deposit = None if share is None else Deposit(share=share)
    rest_due = RestDue.BEFORE_SENDING if at_half is None else RestDue.ON_DELIVERY
    pricing = replace(
        sample_workshop().pricing, deposit=deposit, at_half=at_half, rest_due=rest_due
    )
    workshop = sample_workshop(pricing=pricing, exchange={"EUR": EURO}, **changes)
    return offer_of(sample_quote(sample_order(pays_in=pays_in), workshop))
