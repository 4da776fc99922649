"""How much a form may hold, so that its page stays one that a browser and a reader can take."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Mistake, Refused
from quoting.core.ground.place import NOWHERE
from quoting.core.workshop.stitches import WORKED
from quoting.web.forms.line_changes import of_list
from quoting.web.forms.sent import Sent, line_numbers
from quoting.web.orders.body_forms import new_lines
from quoting.web.orders.other_yarns import LINES as OTHER_COLOURS
from quoting.web.orders.resting import without_resting
from quoting.web.orders.stripe_list import spread
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
    lists = new_lines()
    known = {name: list(numbers) for name, numbers in sent.items() if of_list(lists, name)}
    count = sum(map(len, known.values()))
    colours = len(known.get(OTHER_COLOURS, []))
    limit = room = most_lines(count, colours, shop)
    if count <= limit:
        return known, None
    for name, numbers in known.items():
        known[name] = numbers[:room]
        room -= len(known[name])
    return known, Mistake(NOWHERE, MistakeCode.TOO_MANY_LINES, {"read": count, "limit": limit})


def check_room(sent: Sent, shop: Shop) -> None:
    """Refuse an order that the form has no room for, as it would be sent.

    Errors: `too-many-lines`.
    """
    _, crowded = lines_with_room(line_numbers(spread(without_resting(sent))), shop)
    if crowded is not None:
        raise Refused(crowded)
