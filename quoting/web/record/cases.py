"""The finished orders of the book as cases: what was quoted for each, and what came of it."""

from __future__ import annotations

from datetime import date, datetime

from flask import current_app

from exports.records.stated_figures import stated_figures
from quoting.core.making.case import Case
from quoting.core.making.outcome import Outcome, outcome_of
from quoting.core.making.plain_outcome import plain_outcome
from quoting.core.making.stated import Stated
from quoting.store.book import Book
from quoting.store.finished_orders import FinishedOrder, finished_orders
from quoting.store.quotes import kept_quote

PLANNED = "quoting-outcomes"
"""Where an application keeps the outcomes that wanted a plan, by the order and its log."""

MOST_PLANNED = 5_000


def cases_in(book: Book) -> tuple[Case, ...]:
    """Return every finished order that was agreed by a quote."""
    return tuple(_case(book, order) for order in finished_orders(book))


def local_day(moment: datetime) -> date:
    """Return the day of a moment by this computer's clock."""
    return moment.astimezone().date()


def _case(book: Book, order: FinishedOrder) -> Case:
    stated = stated_figures(order.results)
    handed_over = order.handed_over_at
    return Case(
        order_id=order.id,
        number=str(order.number),
        agreed=local_day(order.agreed_at),
        finished=local_day(order.finished_at),
        handed_over=None if handed_over is None else local_day(handed_over),
        title=order.title,
        buyer=order.buyer,
        stated=stated,
        outcome=_outcome(book, order, stated),
    )


def _outcome(book: Book, order: FinishedOrder, stated: Stated) -> Outcome:
    """Return what an order took; where its log leaves rows out, by its plan, worked out once."""
    plain = plain_outcome(stated, order.log)
    if plain is not None:
        return plain
    known: dict[object, Outcome] = current_app.extensions.setdefault(PLANNED, {})
    key = order.number, order.log
    if key not in known:
        if len(known) >= MOST_PLANNED:
            known.clear()
        quote = kept_quote(book, order.number).frozen.reckoned_again()
        known[key] = outcome_of(quote, order.log)
    return known[key]
