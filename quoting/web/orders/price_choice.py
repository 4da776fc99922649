"""The ways to make a price, as one choice: the workshop's own, or one of three that are typed.

Which is chosen is no key of an order, where the one that is given says it by itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from werkzeug.datastructures import MultiDict

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Mistake
from quoting.core.ground.place import at
from quoting.web.forms.sent import Sent

CHOICE = "price_by"
WAYS = ("given", "margin", "markup")
CHOICES = ("", *WAYS)
"""What can be chosen: the workshop's own way, or one that is typed."""


def chosen_way(sent: Mapping[str, str]) -> str:
    """Return the way that a form makes its price by; empty where that is the workshop's own.

    What is chosen counts, whatever stays typed of the others. Where no choice was sent at all, as
    by a script, a way is chosen by what was typed of it, if that is the only one.
    """
    if (chosen := sent.get(CHOICE)) in CHOICES:
        return chosen
    typed = [way for way in WAYS if sent.get(_name(way), "").strip()]
    return typed[0] if len(typed) == 1 else ""


def without_other_ways(sent: Sent) -> Sent:
    """Return a form without what was typed of the ways that were not chosen."""
    chosen = sent.get(CHOICE)
    others = {CHOICE, *(_name(way) for way in WAYS if chosen in CHOICES and way != chosen)}
    return MultiDict([(n, text) for n, text in sent.items(multi=True) if n not in others])


def way_left_blank(sent: Mapping[str, str]) -> Iterator[Mistake]:
    """Yield what is missing where a way was chosen and nothing typed of it."""
    chosen = sent.get(CHOICE, "")
    if chosen in WAYS and not sent.get(_name(chosen), "").strip():
        yield Mistake(at("price", chosen), MistakeCode.MISSING, {})


def _name(way: str) -> str:
    return f"price.{way}"
