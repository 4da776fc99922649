"""Quotes that are given, and orders that come to their stages the way that a maker brings them."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import partial

from exports.records.quote_record import quote_record
from quoting.core.order.stage import Stage
from quoting.core.quote.given_number import GivenNumber
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.workshop import Workshop
from quoting.store.answers import accept_quote
from quoting.store.book import Book
from quoting.store.orders import change_stage, kept_order
from quoting.store.quote_content import FrozenQuote, KeptQuote
from quoting.store.quotes import give_quote
from tests.examples import sample_order, sample_workshop
from tests.store.moments import NOW

DAY = date(2026, 11, 25)

WORKED_AT = (Stage.ON_THE_HOOK, Stage.FINISHED, Stage.HANDED_OVER)


def frozen(
    number: GivenNumber,
    day: date = DAY,
    title: str = "Cot blanket",
    workshop: Workshop | None = None,
) -> FrozenQuote:
    """Return the quote of a sample order, with a page that says its number and no more."""
    quote = quote_order(sample_order(title=title), workshop or sample_workshop(), today=day)
    return frozen_as(quote, number)


def frozen_as(quote: Quote, number: GivenNumber) -> FrozenQuote:
    """Return a quote as it goes out under a number, with a page that says that and no more."""
    quote = replace(quote, number=str(number))
    return FrozenQuote(
        day=quote.day,
        valid_until=quote.valid_until,
        workshop_version=1,
        workshop=quote.workshop,
        order=quote.order,
        results=quote_record(quote),
        offer=offer_of(quote),
        page=f"<p>{number}</p>",
        program="0.1.0",
    )


def give(book: Book, order_id: int, day: date = DAY, title: str = "Cot blanket") -> KeptQuote:
    """Give an order's quote on a day, whatever is typed of the order."""
    revision = kept_order(book, order_id).revision
    freeze = partial(frozen, day=day, title=title)
    return give_quote(book, order_id, freeze, revision=revision, day=day, now=NOW)


def put_at(book: Book, order_id: int, stage: Stage) -> None:
    """Bring an order that was asked for to a stage: given, accepted, and on from there."""
    if stage is Stage.ASKED:
        return
    if stage is Stage.CALLED_OFF:
        change_stage(book, order_id, stage, now=NOW)
        return
    quote = give(book, order_id)
    if stage is not Stage.QUOTED:
        accept_quote(book, quote.number, day=DAY, now=NOW)
    for further in WORKED_AT[: WORKED_AT.index(stage) + 1 if stage in WORKED_AT else 0]:
        change_stage(book, order_id, further, now=NOW)
