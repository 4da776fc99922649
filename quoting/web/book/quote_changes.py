"""What a quote that was given would say today, when the order or the workshop has changed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from quoting.core.ground.errors import Refused
from quoting.core.quote.offer import Offer, offer_of
from quoting.core.quote.offer_rows import RowCode
from quoting.store.order_content import KeptOrder
from quoting.store.quote_content import FrozenQuote
from quoting.web.book.freezing import quote_of_today
from quoting.web.queue_now import queue_now
from quoting.web.shop import Shop
from quoting.wording import SaidOffer, say_offer, speech_of

NOTHING = "–"
"""What stands where one of the two says nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One thing that the buyer would read otherwise, in words."""

    what: str
    then: str
    now: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Since:
    """A quote beside what it would be today; `changes` are None while its order is not whole."""

    order_changed: bool
    workshop_changed: bool
    changes: tuple[Change, ...] | None
    total_then: str = ""
    total_now: str = ""

    @property
    def is_same(self) -> bool:
        """Whether there is nothing that a further version would say otherwise."""
        return not (self.order_changed or self.workshop_changed or self.changes)


def changes_since(frozen: FrozenQuote, order: KeptOrder, shop: Shop) -> Since:
    """Return what has changed since a quote was given. Errors: as `take_turn_for`, but Refused."""
    asked = order.content.order
    changed = asked != frozen.order, shop.version != frozen.workshop_version
    offer = None if asked is None else _offer_today(order, shop)
    if offer is None:
        return Since(order_changed=True, workshop_changed=changed[1], changes=None)
    return Since(
        order_changed=changed[0],
        workshop_changed=changed[1],
        changes=tuple(_changes(frozen.offer, offer)),
        total_then=_total(frozen.offer),
        total_now=_total(offer),
    )


def _offer_today(order: KeptOrder, shop: Shop) -> Offer | None:
    """Return what the buyer would be told today, None where the order cannot be worked out."""
    try:
        asked = order.content.order
        if asked is None:
            return None
        return offer_of(quote_of_today(asked, shop, queue_now().ahead_of(order.id)))
    except Refused:
        return None


def _changes(then: Offer, now: Offer) -> Iterator[Change]:
    """Yield what differs, as it is read; of the days, only those that are not the quote's own."""
    before, after = _told(then, say_offer(then)), _told(now, say_offer(now))
    for what in dict.fromkeys([*before, *after]):
        one, other = before.get(what, NOTHING), after.get(what, NOTHING)
        if one != other:
            yield Change(what=what, then=one, now=other)


def _told(offer: Offer, said: SaidOffer) -> Mapping[str, str]:
    rows = {row.name: row.amount for row in said.rows}
    facts = {fact.name: fact.text for fact in (*said.facts, *said.work.facts)}
    days = {"Ready by": offer.ready_by, "Wanted by": offer.wanted_by}
    told = {what: speech_of(offer).day(day) for what, day in days.items() if day is not None}
    return {"Title": said.title, "For": offer.buyer} | rows | facts | told


def _total(offer: Offer) -> str:
    row = offer.row(RowCode.TOTAL)
    return "" if row is None else speech_of(offer).money(row.amount)
