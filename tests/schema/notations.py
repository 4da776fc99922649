"""A value through each notation and back: a file's text, the fields of a form, JSON."""

from __future__ import annotations

import json
import tomllib
from dataclasses import replace
from decimal import Decimal
from typing import Any

import tomli_w
from werkzeug.datastructures import MultiDict

from quoting.core.ground.measures import Units
from quoting.core.ground.place import Document
from quoting.core.workshop.stitches import Vocabulary
from quoting.notation import Marks
from quoting.schema.notation import FILE, RECORD, Medium, Notation
from quoting.schema.reading import read_value
from quoting.schema.shape import Shape
from quoting.web.forms.sent import content_of, sent_as

TYPED = {
    "English": Notation(medium=Medium.TYPED, marks=Marks(decimal=".", grouping=",")),
    "German": Notation(medium=Medium.TYPED, marks=Marks(decimal=",", grouping=".")),
    "inches": Notation(
        medium=Medium.TYPED, marks=Marks(decimal=".", grouping=","), units=Units.INCHES
    ),
}
FILES = {terms.value: replace(FILE, terms=terms) for terms in Vocabulary}


def as_file(shape: Shape[Any], value: object, notation: Notation) -> str:
    """Return the text of a file that holds a value."""
    return tomli_w.dumps({"terms": notation.terms.value, **shape.write(value, notation)})


def from_file(shape: Shape[Any], text: str) -> Any:
    """Return the value in a file's text."""
    return read_value(tomllib.loads(text, parse_float=Decimal), shape, Document.FORM, FILE)


def as_sent(shape: Shape[Any], value: object, notation: Notation) -> MultiDict[str, str]:
    """Return what a form with a value in it sends."""
    return MultiDict(sent_as(shape.write(value, notation)))


def from_sent(shape: Shape[Any], sent: MultiDict[str, str], notation: Notation) -> Any:
    """Return the value that a form sends."""
    return read_value(content_of(sent), shape, Document.FORM, notation)


def as_record(shape: Shape[Any], value: object) -> str:
    """Return a value as JSON."""
    return json.dumps(shape.write(value, RECORD))


def from_record(shape: Shape[Any], text: str) -> Any:
    """Return the value in JSON."""
    return read_value(json.loads(text), shape, Document.FORM, RECORD)
