"""How much a form may hold, so that its page stays one that a browser and a reader can take."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from quoting.core.design import stripes_with_places
from quoting.core.errors import Mistake, refuse
from quoting.core.order import Order
from quoting.core.place import NOWHERE
from quoting.core.stitches import WORKED
from quoting.web.moves import NEW_LINES
from quoting.web.shop import Shop

MOST_LINES = 800
"""Sections, stripes, bands, colours and extras of a form together: two years of daily stripes."""

MOST_OPTIONS = 80_000
"""Things to choose from that all these lines together may offer."""

Lines = Mapping[str, Sequence[int]]


def most_lines(lines: int, colours: int, shop: Shop) -> int:
    """Return how many lines a form has room for; so many of them are `colours` of other yarns."""
    stitches = len(WORKED) + len(shop.workshop.patterns)
    most = max(len(yarn.colours) for yarn in shop.workshop.yarns) + stitches
    every = sum(len(yarn.colours) for yarn in shop.workshop.yarns) + len(shop.workshop.yarns)
    options = lines * most + colours * every
    return min(MOST_LINES, lines if options <= MOST_OPTIONS else lines * MOST_OPTIONS // options)


def lines_with_room(sent: Lines, shop: Shop) -> tuple[dict[str, list[int]], Mistake | None]:
    """Return the lines of a form that there is room for, and what is wrong where some are left.

    The mistake is `too-many-lines`, of the form as a whole.
    """
    known = {name: list(numbers) for name, numbers in sent.items() if _kind(name) in NEW_LINES}
    count = sum(map(len, known.values()))
    colours = sum(len(numbers) for name, numbers in known.items() if _kind(name) == "colours")
    limit = room = most_lines(count, colours, shop)
    if count <= limit:
        return known, None
    for name, numbers in known.items():
        known[name] = numbers[:room]
        room -= len(known[name])
    return known, Mistake(NOWHERE, "too-many-lines", {"read": count, "limit": limit})


def check_room(order: Order, shop: Shop) -> None:
    """Refuse an order that the form has no room for. Errors: `too-many-lines`."""
    design = order.design
    stripes = sum(1 for _ in stripes_with_places(design))
    others = (design.sections, design.border, design.colours, order.extras)
    count = stripes + sum(map(len, others))
    limit = most_lines(count, len(design.colours), shop)
    if count > limit:
        raise refuse("", "too-many-lines", read=count, limit=limit)


def _kind(list_name: str) -> str:
    return list_name.rpartition(".")[2]
