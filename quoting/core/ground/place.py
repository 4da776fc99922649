"""Where something stands in a document: its keys and its lines, from the outside inwards."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

Part = str | int
"""A key, or a line of a list, counted from one."""


class Document(StrEnum):
    """What a place is in."""

    ORDER = "order"
    WORKSHOP = "workshop"
    PRICES = "prices"
    FORM = "form"
    OFFER = "offer"
    LOG = "log"
    PAPER = "paper"


@dataclass(frozen=True, slots=True)
class Place:
    """The parts that lead to a value, and the document, where that is known.

    Parts are never cut out of a text: a colour named `a.b` is one part.
    """

    parts: tuple[Part, ...] = ()
    document: Document | None = None

    def __truediv__(self, inner: Place | Part) -> Place:
        """Return the place that `inner` is, seen from here."""
        parts = inner.parts if isinstance(inner, Place) else (inner,)
        return replace(self, parts=(*self.parts, *parts))

    def __str__(self) -> str:
        """Return the place as messages name it: `blanket.sections.2.stripes.1.rows`."""
        return ".".join(str(part) for part in self.parts)

    @property
    def key(self) -> str:
        """The last key, empty where there is none."""
        return next((part for part in reversed(self.parts) if isinstance(part, str)), "")

    @property
    def outer(self) -> Place:
        """The place that holds this one."""
        return replace(self, parts=self.parts[:-1])


NOWHERE = Place()
"""The document as a whole, or a value seen from within itself."""


def at(*parts: Part) -> Place:
    """Return the place of these keys and lines."""
    return Place(parts)


def placed(place: Place | Part) -> Place:
    """Return a place; a bare part is one key."""
    return place if isinstance(place, Place) else Place((place,) if place != "" else ())
