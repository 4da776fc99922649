"""The order that is being made: its quote, its log, its clock."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from quoting.core.ground.errors import Refused
from quoting.core.making.log_lines import LogEntry, standing
from quoting.core.making.progress import Progress, progress_of
from quoting.core.order.design import ColourSource
from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.core.quote.offer import Offer, offer_of
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.workshop import Workshop
from quoting.store.clocks import running_since
from quoting.store.log import log_of
from quoting.store.making import last_of
from quoting.store.order_content import KeptOrder
from quoting.store.orders import kept_order
from quoting.store.quotes import agreed_quote
from quoting.web.kept import book_now
from quoting.web.shop import shop_now
from quoting.web.turns import take_turn_for

MADE = frozenset({Stage.AGREED, Stage.ON_THE_HOOK, Stage.FINISHED, Stage.HANDED_OVER})
"""From when on there is something to write down."""

TOOK = frozenset({Stage.FINISHED, Stage.HANDED_OVER})
"""From when on it is known what all of it took."""


class NotMadeYet(Exception):  # noqa: N818 - nothing went wrong, it is too soon
    """There is nothing to make yet of an order, or it cannot be worked out as it stands."""

    def __init__(self, order: KeptOrder, *, agreed: bool) -> None:
        super().__init__(order.id)
        self.order = order
        self.agreed = agreed


@dataclass(frozen=True, slots=True, kw_only=True)
class AtHand:
    """An order that is made: by which quote, what was written down, and since when a clock runs."""

    order: KeptOrder
    quote: Quote
    offer: Offer
    entries: tuple[LogEntry, ...]
    clock: datetime | None

    def anew(self) -> AtHand:
        """Return it with what became of its log, its clock and its stage meanwhile."""
        book = book_now()
        return replace(
            self,
            order=kept_order(book, self.id),
            entries=log_of(book, self.id),
            clock=running_since(book, self.id),
        )

    @property
    def id(self) -> int:
        """The order's own number."""
        return self.order.id

    @property
    def progress(self) -> Progress:
        """How far it is."""
        return progress_of(self.quote, self.entries)

    @property
    def standing(self) -> tuple[LogEntry, ...]:
        """The lines that hold."""
        return standing(self.entries)

    @property
    def last(self) -> int:
        """The number of the last line."""
        return last_of(self.entries)

    @property
    def sources(self) -> Mapping[str, ColourSource]:
        """What each colour of the design is, by every name that it has in it."""
        design = self.quote.order.design
        names = [worked.colour for worked in self.quote.plan.passes]
        names += [colour.colour for colour in self.quote.estimate.colours]
        return {name: design.source_of(name) for name in dict.fromkeys(names)}

    @property
    def currencies(self) -> tuple[str, ...]:
        """The currencies that the buyer may pay in, the maker's own first."""
        told = (row.currency for row in self.offer.rows)
        return tuple(dict.fromkeys((self.offer.currency, *told)))


def at_hand(order_id: int) -> AtHand:
    """Return the order to be made. Errors: `order-missing`; NotMadeYet."""
    book = book_now()
    order = kept_order(book, order_id)
    stage = order.stage_before if order.stage is Stage.CALLED_OFF else order.stage
    if stage not in MADE:
        raise NotMadeYet(order, agreed=False)
    quote, offer = quote_to_make(order)
    return AtHand(
        order=order,
        quote=quote,
        offer=offer,
        entries=log_of(book, order_id),
        clock=running_since(book, order_id),
    )


def quote_to_make(order: KeptOrder) -> tuple[Quote, Offer]:
    """Return the quote that an order was agreed by; without one, as it stands now.

    Errors: NotMadeYet where it cannot be worked out.
    """
    agreed = agreed_quote(book_now(), order.id)
    try:
        if agreed is not None:
            frozen = agreed.frozen
            _wait(frozen.order, frozen.workshop)
            return frozen.reckoned_again(), frozen.offer
        shop = shop_now()
        if order.content.order is not None:
            _wait(order.content.order, shop.workshop)
            quote = quote_order(order.content.order, shop.workshop, today=shop.today())
            return quote, offer_of(quote)
    except Refused:
        pass
    raise NotMadeYet(order, agreed=True)


def _wait(order: Order, workshop: Workshop) -> None:
    """Take a turn for what is large. Errors: as `take_turn_for`."""
    take_turn_for(order, workshop)
