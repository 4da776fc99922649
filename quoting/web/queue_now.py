"""The queue of agreed orders as it is at each request, and what of it comes before an order."""

from __future__ import annotations

from typing import cast

from flask import g

from quoting.core.workshop.queue import NOTHING_AHEAD, NOTHING_BEGUN, Ahead, Queue, queue_orders
from quoting.web.book.mark import sent_mark
from quoting.web.hours_on_the_hook import hours_on_the_hook
from quoting.web.kept import kept_shop
from quoting.web.shop import shop_now


def queue_now() -> Queue:
    """Return the queue of this request, read once; without a book nobody is in it."""
    if "queue" not in g:
        kept = kept_shop()
        agreed = () if kept is None else kept.agreed().orders
        left = NOTHING_BEGUN if kept is None else hours_on_the_hook(kept, agreed)
        shop = shop_now()
        g.queue = queue_orders(agreed, shop.workshop, today=shop.today(), left=left)
    return cast("Queue", g.queue)


def ahead_now() -> Ahead:
    """Return what is made before the order at hand, or before a new one."""
    return NOTHING_AHEAD if kept_shop() is None else queue_now().ahead_of(_order_at_hand())


def _order_at_hand() -> int | None:
    """Return the order that a page is shown for, or that a form belongs to."""
    if "standing" in g:
        return cast("int", g.standing.order.id)
    mark = sent_mark()
    return None if mark is None else mark.order_id
