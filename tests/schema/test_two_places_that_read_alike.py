"""A colour `a.b` is no part of a colour `a`: what is wrong with either is told, of both."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.ground.place import Document, at
from quoting.core.order.design import ColourSource
from quoting.core.order.order import Order
from quoting.schema.measurement_shapes import YARN
from quoting.schema.notation import FILE, Notation
from quoting.schema.order_shape import ORDER
from quoting.schema.reading import read_order, read_value
from quoting.web.forms.sent import content_of
from tests.examples import sample_design, sample_order, sample_workshop, sample_yarn
from tests.schema.notations import TYPED, as_sent

TYPING = TYPED["English"]
NAMES = ("a", "a.b")
GREY, UNKNOWN = "#808080", ColourSource(yarn="moor arn", colour="oat")


def order_with_both() -> Order:
    """Return an order whose two colours come from a yarn that there is not."""
    return sample_order(design=sample_design(colours=dict.fromkeys(NAMES, UNKNOWN)))


def order_mistakes(content: Mapping[str, object], notation: Notation) -> list[tuple[Any, str]]:
    with pytest.raises(Refused) as refused:
        read_order(content, sample_workshop(), notation)
    return [(m.place.parts[:4], m.code) for m in refused.value.mistakes]


def yarn_mistakes(content: Mapping[str, object], notation: Notation) -> list[tuple[Any, str]]:
    with pytest.raises(Refused) as refused:
        read_value(content, YARN, Document.WORKSHOP, notation)
    return [(m.place.parts, m.code) for m in refused.value.mistakes]


def test_two_wrong_colours_of_an_order_file_are_both_told() -> None:
    found = order_mistakes(ORDER.write(order_with_both(), FILE), FILE)
    both = [(("blanket", "colours", name, "yarn"), "unknown-yarn") for name in NAMES]
    assert [mistake for mistake in found if mistake[1] == "unknown-yarn"] == both


def test_two_wrong_colours_of_an_order_form_are_both_told() -> None:
    found = order_mistakes(content_of(as_sent(ORDER, order_with_both(), TYPING)), TYPING)
    assert [code for _, code in found].count("unknown-yarn") == len(NAMES)


def test_two_wrong_colours_of_a_yarn_are_both_told_in_a_file() -> None:
    content = YARN.write(sample_yarn(colours=dict.fromkeys((*NAMES, "oat"), GREY)), FILE)
    content["colours"] = {"a": "grey", "a.b": "gray", "oat": GREY}
    both = [(at("colours", name).parts, "not-a-colour-code") for name in NAMES]
    assert yarn_mistakes(content, FILE) == both


def test_two_wrong_colours_of_a_yarn_are_both_told_in_a_form() -> None:
    sent = as_sent(YARN, sample_yarn(colours=dict.fromkeys((*NAMES, "oat"), GREY)), TYPING)
    sent["colours.1.value"], sent["colours.2.value"] = "grey", "gray"
    both = [(at("colours", name).parts, "not-a-colour-code") for name in NAMES]
    assert yarn_mistakes(content_of(sent), TYPING) == both
