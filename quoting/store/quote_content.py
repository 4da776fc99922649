"""What is kept of a quote that was given: all that it was made of, and all that it said."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Any

from quoting.core.order.order import Order
from quoting.core.quote.given_number import GivenNumber
from quoting.core.quote.offer import Offer
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class FrozenQuote:
    """A quote as it goes out of the house.

    `workshop` is the one that it was reckoned with, `workshop_version` the version that this was,
    `results` what `quoting quote --json` would print of it, `page` the page that the buyer is
    sent, and `program` the version of the program that made them.
    """

    day: date
    valid_until: date
    workshop_version: int
    workshop: Workshop
    order: Order
    results: Mapping[str, Any]
    offer: Offer
    page: str
    program: str

    def holds_on(self, day: date) -> bool:
        """Return whether it may still be accepted on a day of its maker's calendar."""
        return day <= self.valid_until

    def reckoned_again(self) -> Quote:
        """Return the whole of it, rows and strands too, as the program of today reckons it.

        Its number and its days are those that were given; what else was promised stands in the
        `offer` and the `results`. Errors: as `quote_order`.
        """
        again = quote_order(self.order, self.workshop, today=self.day)
        offer = self.offer
        return replace(
            again, number=offer.number, valid_until=offer.valid_until, ready_by=offer.ready_by
        )

    def is_alike(self, other: FrozenQuote) -> bool:
        """Return whether another says the same of the same, whatever its number."""
        one, two = (
            (it.day, it.order, it.workshop, replace(it.offer, number="")) for it in (self, other)
        )
        return one == two


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptQuote:
    """A quote in the book. `revision` is that of the order when it was given."""

    id: int
    order_id: int
    number: GivenNumber
    given_at: datetime
    revision: int
    frozen: FrozenQuote


@dataclass(frozen=True, slots=True, kw_only=True)
class QuoteLine:
    """A quote as lists show it: its number and its days, and whether its order was agreed by it."""

    order_id: int
    number: GivenNumber
    day: date
    valid_until: date
    workshop_version: int
    is_agreed: bool

    def holds_on(self, day: date) -> bool:
        """Return whether it may still be accepted on a day of its maker's calendar."""
        return day <= self.valid_until
