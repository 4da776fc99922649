"""An order to begin with, where nobody has asked for one yet."""

from __future__ import annotations

from quoting.core.order.order import Order
from quoting.schema.figures import SIDE
from quoting.web.forms.sent import Sent
from quoting.web.orders.order_form import read_sent, start_sent
from quoting.web.shop import Shop


def beginning_order(shop: Shop) -> Order:
    """Return a plain blanket of the workshop's first yarn, at the first customary size of a cot.

    Errors: as `read_sent`.
    """
    return read_sent(beginning_sent(shop), shop)


def beginning_sent(shop: Shop, construction: str | None = None) -> Sent:
    """Return what the form of such an order sends, of a construction or the usual."""
    sent = start_sent(shop.workshop, construction)
    size = max(shop.sizes[:3], key=lambda size: size.width_cm)
    sent["blanket.width"] = SIDE.show(size.width_cm, shop.notation)
    sent["blanket.height"] = SIDE.show(size.height_cm, shop.notation)
    return sent
