"""Which kind of value stands at a place."""

from __future__ import annotations

from typing import Any

from quoting.core.ground.place import Document, Part, Place
from quoting.schema.kind import Kind, Leaf
from quoting.schema.order_shape import ORDER
from quoting.schema.price_list import PRICE_LIST
from quoting.schema.several import NAME_FIELD, VALUE_FIELD, Named, NamedBy, OneOrMore, Several
from quoting.schema.shape import Shape
from quoting.schema.words import ANSWER, TEXT
from quoting.schema.workshop_shape import WORKSHOP, ByStitch

_SHAPES: dict[Document, Shape[Any]] = {
    Document.ORDER: ORDER,
    Document.WORKSHOP: WORKSHOP,
    Document.PRICES: PRICE_LIST,
}


def kind_at(place: Place) -> Kind[Any] | None:
    """Return the kind of the value at a place, or None where no document has such a place.

    A place that does not say its document is looked for in all of them.
    """
    shapes = _SHAPES.values() if place.document is None else [_SHAPES.get(place.document)]
    kinds = (_within(shape, place.parts) for shape in shapes if shape is not None)
    return next((kind for kind in kinds if kind is not None), None)


def _within(kind: Kind[Any] | None, parts: tuple[Part, ...]) -> Kind[Any] | None:
    if not parts or kind is None:
        return kind
    first, *rest = parts
    match kind:
        case Shape():
            return _within_table(kind, first, tuple(rest))
        case Several():
            return _within(kind.each, tuple(rest))
        case Named():
            return _within(kind.each, tuple(rest)) or (TEXT if rest == [NAME_FIELD] else None)
        case NamedBy():
            return TEXT if rest == [kind.field] else _within(kind.shape, tuple(rest))
        case OneOrMore() if isinstance(first, int):
            return _within(kind.each, tuple(rest))
        case ByStitch():
            return _within(ANSWER, tuple(rest))
        case Leaf() if parts == (VALUE_FIELD,):
            return kind
    return None


def _within_table(shape: Shape[Any], first: Part, rest: tuple[Part, ...]) -> Kind[Any] | None:
    keys = {(key.table, key.name): key.kind for key in shape.all_keys()}
    if ("", first) in keys:
        return _within(keys["", str(first)], rest)
    if rest and (first, rest[0]) in keys:
        return _within(keys[str(first), str(rest[0])], rest[1:])
    return None
