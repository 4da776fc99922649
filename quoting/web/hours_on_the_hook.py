"""What the orders on the hook may still take, as their logs tell it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from quoting.core.ground.errors import Refused
from quoting.core.ground.money import MINUTES_PER_HOUR
from quoting.core.making.hours_left import hours_left
from quoting.core.making.log_lines import LogEntry
from quoting.core.workshop.queue import AgreedOrder
from quoting.web.kept import KeptShop

if TYPE_CHECKING:
    from quoting.store.book import Book


def hours_on_the_hook(kept: KeptShop, orders: Sequence[AgreedOrder]) -> Mapping[int, float]:
    """Return the most hours that each order on the hook may still take, by its id.

    What was worked out is remembered until something is added to an order's log. An order whose
    quote can no longer be worked out takes all of its hours, and is not among them.
    """
    from quoting.store.log import logs_of  # with a book it is loaded already

    begun = tuple(order.order_id for order in orders if order.on_the_hook)
    for order_id, entries in (logs_of(kept.book, begun) if begun else {}).items():
        last = entries[-1].id if entries else 0
        if kept.left.get(order_id, (-1, None))[0] != last:
            kept.left[order_id] = last, _most_left(kept.book, order_id, entries)
    known = ((order_id, kept.left[order_id][1]) for order_id in begun)
    return {order_id: hours for order_id, hours in known if hours is not None}


def _most_left(book: Book, order_id: int, entries: tuple[LogEntry, ...]) -> float | None:
    from quoting.store.quotes import agreed_quote

    agreed = agreed_quote(book, order_id)
    try:
        quote = None if agreed is None else agreed.frozen.reckoned_again()
        if quote is None:
            return None
        return hours_left(quote, entries).hours.span.high / MINUTES_PER_HOUR
    except Refused:
        return None
