"""Every value is the same again after a file, a form and a record, in whatever notation."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from typing import Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from quoting.core.ground.place import Document, Place
from quoting.core.order.in_rows import Section, Stripe
from quoting.schema.blanket_shapes import SECTION
from quoting.schema.chosen import Chosen
from quoting.schema.kind import Kind
from quoting.schema.order_shape import ORDER
from quoting.schema.places import kind_at
from quoting.schema.price_list import PRICE_LIST
from quoting.schema.selling_shapes import YEAR
from quoting.schema.several import NamedBy
from quoting.schema.shape import Shape
from quoting.schema.workshop_shape import WORKSHOP
from quoting.web.forms.from_shape import form_of
from tests.schema.notations import (
    FILES,
    TYPED,
    as_file,
    as_record,
    as_sent,
    from_file,
    from_record,
    from_sent,
)
from tests.schema.values import of_shape

ROOTS = {Document.ORDER: ORDER, Document.WORKSHOP: WORKSHOP, Document.PRICES: PRICE_LIST}


def shapes_in(kind: Kind[Any]) -> Iterator[tuple[Shape[Any], str]]:
    """Yield every shape within a kind, with the field that its value bears as its name, if any."""
    if isinstance(kind, NamedBy):
        yield kind.shape, kind.field
    elif isinstance(kind, Shape):
        yield kind, ""
        for key in kind.keys:
            yield from shapes_in(key.kind)
    elif isinstance(kind, Chosen):
        for shape in kind.shapes.values():
            yield from shapes_in(shape)
    elif isinstance(each := getattr(kind, "each", None), Kind):
        yield from shapes_in(each)


SHAPES = {
    shape.value.__name__: (shape, borne)
    for root in (*ROOTS.values(), YEAR)
    for shape, borne in shapes_in(root)
}
READ_ALONE = [shape for shape, borne in SHAPES.values() if not borne]

for_every_shape = pytest.mark.parametrize(
    "shape", READ_ALONE, ids=lambda shape: shape.value.__name__
)
a_few = settings(max_examples=10, phases=[Phase.explicit, Phase.generate])
"""Of a whole workshop a smaller case that fails, too, is not worth the minutes it takes to find."""


def test_there_are_shapes_to_look_at() -> None:
    assert len(SHAPES) > 25


@pytest.mark.parametrize("name", SHAPES)
def test_every_field_of_a_value_is_in_its_shape_once(name: str) -> None:
    shape, borne = SHAPES[name]
    described = [key.field for key in shape.keys] + [borne] * bool(borne)
    assert sorted(described) == sorted(item.name for item in fields(shape.value))


@for_every_shape
def test_no_two_keys_of_a_value_have_one_name(shape: Shape[Any]) -> None:
    names = [(key.table, key.name) for key in shape.all_keys()]
    assert len(names) == len(set(names))


@for_every_shape
def test_every_key_that_is_typed_has_a_label_unless_its_fields_have_theirs(
    shape: Shape[Any],
) -> None:
    assert all(key.label for key in shape.all_keys() if not isinstance(key.kind, Shape))


@for_every_shape
@given(data=st.data())
@a_few
def test_a_value_is_the_same_after_a_file(shape: Shape[Any], data: st.DataObject) -> None:
    value = data.draw(of_shape(shape))
    for notation in FILES.values():
        assert from_file(shape, as_file(shape, value, notation)) == value


@for_every_shape
@given(data=st.data())
@a_few
def test_a_value_is_the_same_after_a_form(shape: Shape[Any], data: st.DataObject) -> None:
    value = data.draw(of_shape(shape))
    for notation in TYPED.values():
        sent = as_sent(shape, value, notation)
        assert from_sent(shape, sent, notation) == value


@for_every_shape
@given(data=st.data())
@a_few
def test_a_value_is_the_same_after_a_record(shape: Shape[Any], data: st.DataObject) -> None:
    value = data.draw(of_shape(shape))
    assert from_record(shape, as_record(shape, value)) == value


@for_every_shape
def test_every_shape_has_a_form_with_a_field_for_each_of_its_keys(shape: Shape[Any]) -> None:
    form = form_of(shape)
    tables = {key.table for key in shape.all_keys() if key.table}
    own = {key.name for key in shape.all_keys() if not key.table}
    assert all(hasattr(form, name) for name in tables | own)


def test_what_is_usual_is_blank_in_a_form_and_means_the_same() -> None:
    typed, stripes = TYPED["English"], (Stripe(colour="teal"),)
    usual = Section(stripes=stripes, share=1.0)
    sent = as_sent(SECTION, usual, typed)
    assert "share" not in sent
    again = from_sent(SECTION, sent, typed)
    assert again.weight == usual.weight
    assert as_sent(SECTION, again, typed) == sent


@pytest.mark.parametrize("document", ROOTS)
@given(data=st.data())
@a_few
def test_every_text_of_a_form_has_a_kind_at_its_place(
    document: Document, data: st.DataObject
) -> None:
    shape: Shape[Any] = ROOTS[document]
    sent = as_sent(shape, data.draw(of_shape(shape)), TYPED["English"])
    assert all(kind_at(_place(name, document)) is not None for name in sent)


def _place(name: str, document: Document) -> Place:
    parts = tuple(int(part) if part.isdigit() else part for part in name.split("."))
    return Place(parts, document)
