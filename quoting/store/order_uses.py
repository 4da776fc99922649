"""Which open orders use a yarn, a colour, a stitch pattern or a motif of the workshop."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass

from sqlalchemy import select

from quoting.core.order.stage import Stage
from quoting.schema.blanket_shapes import BODIES, CHOICE_OF_BODY, key_of_blanket
from quoting.store.book import Book
from quoting.store.order_renames import CLOSED, FOLLOWING, texts_by_new_names
from quoting.store.records import typed_of
from quoting.store.renames import Renames, named_kind
from quoting.store.tables import ORDER_TEXTS, ORDERS

Used = frozenset[tuple[str, str]]
"""Names that an order goes by, each with what it names."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lost:
    """Names that a workshop had; a colour's is given with its yarn."""

    yarns: frozenset[str] = frozenset()
    patterns: frozenset[str] = frozenset()
    motifs: frozenset[str] = frozenset()
    colours: frozenset[tuple[str, str]] = frozenset()

    def among(self, used: Used) -> tuple[str, ...]:
        """Return those of them that an order goes by, in words."""
        of_kinds = {"yarn": self.yarns, "stitch": self.patterns, "motif": self.motifs}
        named = {name for kind, name in used if name in of_kinds.get(kind, frozenset())}
        colours = {
            f"{yarn}, {colour}"
            for yarn, colour in self.colours
            if {("yarn", yarn), ("colour", colour)} <= used
        }
        return tuple(sorted(named | colours))


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderUse:
    """An order, and the names of those asked for that it uses."""

    id: int
    title: str
    names: tuple[str, ...]


def order_uses(book: Book, lost: Lost, *, renames: Renames | None = None) -> tuple[OrderUse, ...]:
    """Return the open orders that use anything of what is lost.

    What is not yet quoted is looked at as it is after `renames`.
    """
    open_stages = [stage.value for stage in Stage if stage not in CLOSED]
    texts = select(
        ORDERS.c.id, ORDERS.c.title, ORDERS.c.stage, ORDER_TEXTS.c.typed, ORDER_TEXTS.c.record
    )
    of_open = texts.join(ORDER_TEXTS).where(ORDERS.c.stage.in_(open_stages))
    with book.reading() as connection:
        rows = connection.execute(of_open.order_by(ORDERS.c.id)).all()
    uses = []
    for row in rows:
        follows = renames if Stage(row.stage) in FOLLOWING else None
        names = lost.among(_used(*_texts(row.typed, row.record, follows)))
        if names:
            uses.append(OrderUse(id=row.id, title=row.title, names=names))
    return tuple(uses)


def _texts(typed: str, record: str | None, renames: Renames | None) -> tuple[str, str | None]:
    return texts_by_new_names(typed, record, renames) if renames else (typed, record)


def _used(typed_text: str, record: str | None) -> Used:
    """Return what an order goes by: its record, or what was typed while it has none.

    What was typed for a construction that is not chosen rests, and is not used; where none is
    said, whatever was typed may be.
    """
    if record is not None:
        return frozenset(_leaves("", json.loads(record)))
    typed = typed_of(typed_text)
    chosen = next(iter(typed.get(CHOICE_OF_BODY, ())), "")
    rests = BODIES.not_of(chosen) if chosen in BODIES.shapes else frozenset()
    used = {name: texts for name, texts in typed.items() if key_of_blanket(name) not in rests}
    return frozenset((named_kind(name), text) for name, texts in used.items() for text in texts)


def _leaves(key: str, value: object) -> Iterator[tuple[str, str]]:
    match value:
        case str():
            yield named_kind(key), value
        case list():
            for item in value:
                yield from _leaves(key, item)
        case dict():
            for name, item in value.items():
                yield from _leaves(name, item)
