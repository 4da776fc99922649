"""From a document's content to a value: every mistake at once, each at its place.

The content is what a TOML file, a form's fields or a JSON record come to: tables and lists.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from typing import TypeVar

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.ground.place import Document, Place, at
from quoting.core.order.order import Order, check_order
from quoting.core.workshop.stitches import Stitch, Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.schema.notation import FILE, Medium, Notation
from quoting.schema.notes import Notes, NotRead
from quoting.schema.order_shape import ORDER
from quoting.schema.shape import Shape
from quoting.schema.spot import Spot, as_written
from quoting.schema.table import Table
from quoting.schema.words import STITCH, Choice
from quoting.schema.workshop_shape import WORKSHOP

V = TypeVar("V")

Content = Mapping[str, object]
KnowsLocale = Callable[[str], bool]

_TERMS = Choice(Vocabulary)
_HEAD = at("workshop")


def read_order(content: Content, workshop: Workshop, notation: Notation = FILE) -> Order:
    """Return an order for a workshop. Errors: one refusal with every mistake."""
    content = _with_the_motifs_stitch(content, workshop, notation)
    order, notes = read_noted(content, ORDER, Document.ORDER, notation)
    with noted(notes):
        check_order(order, workshop)
    notes.done()
    return order


def _with_the_motifs_stitch(content: Content, workshop: Workshop, notation: Notation) -> Content:
    """Return an order of squares with the stitch of its motif, where it names none."""
    blanket = content.get("blanket")
    squares = blanket.get("squares") if isinstance(blanket, dict) else None
    if not isinstance(blanket, dict) or not isinstance(squares, dict) or blanket.get("stitch"):
        return content
    name = squares.get("motif")
    stitch = next((m.stitch for m in workshop.motifs if m.name == name), Stitch.DC.value)
    in_uk_terms = notation.medium is Medium.FILE and content.get("terms") == Vocabulary.UK
    terms = Vocabulary.UK if in_uk_terms else notation.terms
    written = STITCH.write(stitch, replace(notation, terms=terms))
    return {**content, "blanket": {**blanket, "stitch": written}}


def read_workshop(
    content: Content, knows_locale: KnowsLocale, notation: Notation = FILE
) -> Workshop:
    """Return a workshop; `knows_locale` tells whether a locale can be spoken.

    Errors: one refusal with every mistake, `not-a-locale` and `confidence-or-allowance` among them.
    """
    workshop, notes = read_noted(content, WORKSHOP, Document.WORKSHOP, notation)
    name = workshop.locale
    if not isinstance(name, NotRead) and not knows_locale(name):
        notes.close(_HEAD / "locale", MistakeCode.NOT_A_LOCALE, read=as_written(name))
    head = content.get("workshop")
    both = isinstance(head, dict) and {"confidence", "allowance"} <= head.keys()
    if both and notation.medium is not Medium.RECORD:
        notes.close(_HEAD / "allowance", MistakeCode.CONFIDENCE_OR_ALLOWANCE)
    notes.done()
    return workshop


def read_value(content: Content, shape: Shape[V], document: Document, notation: Notation) -> V:
    """Return the value that a document holds. Errors: one refusal with every mistake."""
    value, notes = read_noted(content, shape, document, notation)
    notes.done()
    return value


def read_noted(
    content: Content, shape: Shape[V], document: Document, notation: Notation
) -> tuple[V, Notes]:
    """Return the value that a document holds, and the notes of its mistakes.

    With mistakes it is unchecked, fit only to look for more of them. A file says in `terms` whose
    stitch names it uses.
    """
    notes = Notes(document, notation.terms)
    table = Table(Spot(content, Place(document=document), notes, notation))
    if notation.medium is Medium.FILE:
        terms = table.take("terms", _TERMS) if table.has("terms") else Vocabulary.US
        notes.terms = terms
        table.spot = replace(table.spot, notation=replace(notation, terms=terms))
    value = shape.read_from(table)
    table.done()
    return value, notes


@contextmanager
def noted(notes: Notes) -> Iterator[None]:
    """Keep the mistakes of a refusal raised inside."""
    try:
        yield
    except Refused as refused:
        notes.keep(refused.mistakes)
