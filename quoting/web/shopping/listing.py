"""Orders to a shopping list in words."""

from __future__ import annotations

from collections.abc import Sequence

from quoting.core.making.shopping_list import ToMake, shopping_list
from quoting.web.shop import Shop
from quoting.wording.paper import Paper
from quoting.wording.shopping import shopping_paper


def list_paper(orders: Sequence[ToMake], shop: Shop, *, spare: bool = False) -> Paper:
    """Return the shopping list of some orders as a paper. Errors: as `shopping_list`."""
    workshop = shop.workshop
    return shopping_paper(
        shopping_list(orders, workshop),
        _told_apart(orders),
        shop.speech,
        maker=workshop.name,
        day=shop.today(),
        spare=spare,
    )


def _told_apart(orders: Sequence[ToMake]) -> list[str]:
    """Return the titles of orders, with the buyer's name or a number where two are titled alike."""
    titles = [order.quote.order.title for order in orders]
    named = [
        f"{title} ({order.quote.order.buyer})" if titles.count(title) > 1 else title
        for title, order in zip(titles, orders, strict=True)
    ]
    return [
        f"{name} {named[:number].count(name) + 1}" if named.count(name) > 1 else name
        for number, name in enumerate(named)
    ]
