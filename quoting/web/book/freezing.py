"""A quote frozen as it goes out of the house, with whatever number it comes to bear."""

from __future__ import annotations

from dataclasses import replace
from importlib.metadata import version
from typing import cast

from exports.papers.pictures import buyers_picture
from exports.records.plain_values import Record
from exports.records.quote_record import quote_record
from quoting.core.order.order import Order
from quoting.core.quote.given_number import GivenNumber
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.queue import NOTHING_AHEAD, Ahead
from quoting.store.quote_content import FrozenQuote
from quoting.store.quotes import Freeze
from quoting.web.orders.quote_page import offer_page
from quoting.web.shop import Shop
from quoting.web.turns import take_turn_for


def quote_of_today(order: Order, shop: Shop, ahead: Ahead = NOTHING_AHEAD) -> Quote:
    """Return an order's quote as it would be given today, before it has a number.

    `ahead` is what was agreed and is made before it.

    Errors: as `quote_order`, `take_turn_for`.
    """
    take_turn_for(order, shop.workshop)
    quote = quote_order(order, shop.workshop, today=shop.today(), ahead=ahead)
    return replace(quote, number="")


def freezing(quote: Quote, shop: Shop) -> Freeze:
    """Return what freezes a quote once it has its number; all that takes time is done before."""
    assert shop.version is not None, "the workshop is of a book"  # noqa: S101
    kept_version = shop.version
    offer, results, drawing = offer_of(quote), quote_record(quote), buyers_picture(quote)
    head = cast("Record", results["quote"])

    def freeze(number: GivenNumber) -> FrozenQuote:
        numbered = replace(offer, number=str(number))
        return FrozenQuote(
            day=quote.day,
            valid_until=quote.valid_until,
            workshop_version=kept_version,
            workshop=quote.workshop,
            order=quote.order,
            results=results | {"quote": head | {"number": str(number)}},
            offer=numbered,
            page=offer_page(numbered, drawing),
            program=version("quoting"),
        )

    return freeze
