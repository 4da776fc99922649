"""An order to begin with, where nobody has asked for one yet."""

from __future__ import annotations

from quoting.core.order import Order
from quoting.web.filling import start_values
from quoting.web.order_form import fill_form
from quoting.web.ordering import read_order
from quoting.web.shop import Shop


def beginning_order(shop: Shop) -> Order:
    """Return a plain blanket of the workshop's first yarn, at the first customary size of a cot.

    Errors: as `read_order`.
    """
    values = start_values(shop.workshop)
    size = max(shop.sizes[:3], key=lambda size: size.width_cm)
    values["blanket"] |= {"width": size.width_cm, "height": size.height_cm}
    return read_order(fill_form(shop, values), shop.workshop)
