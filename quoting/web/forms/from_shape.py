"""A form made from a shape: a field for each of its keys, under the same name."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Any

from wtforms import Field, Form

from quoting.core.workshop.stitches import WORKED
from quoting.schema.figures import Count, Exact, Measure, Number, Share
from quoting.schema.kind import Kind, Leaf
from quoting.schema.several import NAME_FIELD, VALUE_FIELD, Named, NamedBy, Several
from quoting.schema.shape import Key, Shape
from quoting.schema.words import ANSWER, TEXT, YesNo
from quoting.schema.workshop_shape import ByStitch
from quoting.web.forms.fields import Amount, Figure, Length, PerCent, Tick, Typed
from quoting.web.forms.lines import Lines, Part

_FIELDS: tuple[tuple[type[Leaf[Any]], type[Typed]], ...] = (
    (YesNo, Tick),
    (Exact, Amount),
    (Share, PerCent),
    (Measure, Length),
    (Number, Figure),
    (Count, Figure),
)
"""The field of each kind, the narrower first; any other kind is plain text."""


@cache
def form_of(shape: Shape[Any]) -> type[Form]:
    """Return the form of a shape; a table of it is a form inside."""
    tables: dict[str, list[Key]] = {}
    for key in shape.all_keys():
        tables.setdefault(key.table, []).append(key)
    own = _fields(tables.pop("", []))
    inner = {name: Part(_form(name, _fields(keys))) for name, keys in tables.items()}
    return _form(shape.value.__name__, inner | own)


def _form(name: str, fields: dict[str, Any]) -> type[Form]:
    return type(f"{name.capitalize()}Form", (Form,), fields)


def _fields(keys: Iterable[Key]) -> dict[str, Any]:
    return {key.name: field_of(key.kind, key.label) for key in keys}


def field_of(kind: Kind[Any], label: str) -> Field:
    """Return the field of a kind."""
    match kind:
        case Shape():
            return Part(form_of(kind))
        case Several(each=Shape() as each):
            return Lines(form_of(each), label)
        case Several():
            return Lines(_line(kind.each), label)
        case Named():
            return Lines(_line(kind.each, NAME_FIELD, kind.label), label)
        case NamedBy():
            return Lines(_line(kind.shape, kind.field, kind.label), label)
        case ByStitch():
            return Part(_by_stitch())
        case Leaf():
            field = next((field for of, field in _FIELDS if isinstance(kind, of)), Typed)
            return field(label, kind)
    raise TypeError(kind)


@cache
def _line(each: Kind[Any], named_in: str = "", label: str = "") -> type[Form]:
    """Return the form of a line: a value's own fields, or the one called `value`, and its name."""
    name = {named_in: Typed(label, TEXT)} if named_in else {}
    if isinstance(each, Shape):
        return _form(f"named{each.value.__name__}", name | _fields(each.all_keys()))
    return _form("line", name | {VALUE_FIELD: field_of(each, "")})


@cache
def _by_stitch() -> type[Form]:
    return _form("byStitch", {stitch.value: Typed(stitch.value, ANSWER) for stitch in WORKED})
