"""Colours of the workshop's other yarns, which an order may name without more ado.

Such a colour is offered as `teal (fell dk)`. Where a form names it so and has no line for it among
its colours from another yarn, that line is added.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from werkzeug.datastructures import MultiDict

from quoting.core.workshop.workshop import Workshop
from quoting.schema.several import VALUE_FIELD
from quoting.web.forms.sent import Sent, line_numbers
from quoting.web.orders.resting import without_resting
from quoting.web.orders.stripe_list import spread

LINES = "blanket.colours"

_COLOURS = (".colour", f".{VALUE_FIELD}")
"""What the names of fields end in that name a colour."""

MOST_LETTERS = 80
"""A colour whose name in an order would be longer is not offered so."""


class OtherColour(NamedTuple):
    """A colour of another yarn than the blanket's, under the name that an order gives it."""

    name: str
    yarn: str
    colour: str


def other_colours(workshop: Workshop, yarn: str) -> Iterator[OtherColour]:
    """Yield the colours of all yarns but one, yarn by yarn."""
    for other in workshop.yarns:
        for colour in other.colours:
            found = OtherColour(f"{colour} ({other.name})", other.name, colour)
            if other.name != yarn and len(found.name) <= MOST_LETTERS:
                yield found


def with_other_yarns(sent: Sent, workshop: Workshop) -> Sent:
    """Return a form with a line for each colour of another yarn that it names and has none for."""
    own = sent.get("blanket.yarn", "")
    numbers = line_numbers(sent).get(LINES, [])
    there = {sent.get(f"{LINES}.{number}.name", "").strip() for number in numbers}
    there |= set(next((yarn.colours for yarn in workshop.yarns if yarn.name == own), {}))
    named = set(_colours_named(sent)) - there
    wanted = (other for other in other_colours(workshop, own) if other.name in named)
    more = [
        (f"{LINES}.{number}.{key}", text)
        for number, other in enumerate(wanted, max(numbers, default=0) + 1)
        for key, text in other._asdict().items()
    ]
    return MultiDict([*sent.items(multi=True), *more]) if more else sent


def _colours_named(sent: Sent) -> Iterator[str]:
    for name, text in spread(without_resting(sent)).items(multi=True):
        if name.endswith(_COLOURS) and not name.startswith(f"{LINES}."):
            yield text.strip()
