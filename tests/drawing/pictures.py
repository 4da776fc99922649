"""What the tests of pictures share: quotes to draw, and how a picture is read back."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Sequence
from typing import Any

from exports.drawing import draw_blanket
from quoting.core.quote.quote import Quote
from quoting.wording import speech_of
from tests.examples import sample_design, sample_order, sample_quote, sample_workshop, sample_yarn

SVG = "{http://www.w3.org/2000/svg}"


def quote_of(quantity: int = 1, workshop: dict[str, Any] | None = None, **design: Any) -> Quote:
    """Return a quote of the cot blanket, with some of its design and workshop changed."""
    order = sample_order(design=sample_design(**design), quantity=quantity)
    return sample_quote(order, sample_workshop(**(workshop or {})))


def with_colours(**colours: str) -> dict[str, Any]:
    """Return the change to a workshop whose only yarn comes in these colours."""
    return {"yarns": (sample_yarn(colours=colours, stock=()),)}


def drawn(quote: Quote, **options: Any) -> ET.Element:
    """Return the drawing of a quote, read back as XML."""
    return ET.fromstring(draw_blanket(quote, speech_of(quote.workshop), **options))


def of_class(picture: ET.Element, name: str) -> list[ET.Element]:
    """Return the elements of one class, in the order they are painted."""
    return [each for each in picture.iter() if each.get("class") == name]


def sizes(elements: Sequence[ET.Element], *names: str) -> list[tuple[float, ...]]:
    """Return some attributes of elements as numbers."""
    return [tuple(float(each.get(name, "nan")) for name in names) for each in elements]


def words_of(picture: ET.Element) -> str:
    """Return every word that a reader of the picture meets, hints and description included."""
    return " ".join(picture.itertext())
