"""A page of the workshop with what was typed in it, and what is said of that."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from wtforms import Field, Form

from quoting.core.ground.errors import Mistake
from quoting.core.ground.place import NOWHERE, Part, Place, at
from quoting.schema.selling_shapes import EXCHANGE
from quoting.schema.several import NAME_FIELD, VALUE_FIELD, is_number
from quoting.web.beside import say_beside
from quoting.web.forms.lines import Lines, fields_by_place, typed_of
from quoting.web.forms.lines import Part as FormPart
from quoting.web.forms.sent import Sent
from quoting.web.orders.order_answer import Said
from quoting.web.shop import Shop, speech_now
from quoting.web.workshop.own_form import bind_workshop, own_workshop, whole_sent
from quoting.web.workshop.own_lines import LINE_NAMES
from quoting.web.workshop.own_pages import OwnPage, page_of

if TYPE_CHECKING:
    from quoting.store.order_uses import OrderUse
    from quoting.store.workshops import WorkshopVersion


NAMED_IN = EXCHANGE.field
"""The field of a rate that names it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnAnswer:
    """The form of a page, and what is in the way of keeping it; where nothing is, the version.

    `said` are mistakes. `changed_elsewhere` are fields that somebody else has changed since, in
    words, with what they are now; `uses` the orders that need what was taken out.
    """

    sent: Sent
    form: Form
    said: tuple[Said, ...] = ()
    changed_elsewhere: tuple[tuple[str, str], ...] = ()
    uses: tuple[OrderUse, ...] = ()
    version: WorkshopVersion | None = None


def shown(page: OwnPage, sent: Sent, shop: Shop) -> OwnAnswer:
    """Return the page with what was sent in it, and nothing said of it."""
    whole = whole_sent(page, sent, own_workshop(shop), shop)
    return OwnAnswer(sent=sent, form=bind_workshop(whole, shop))


def say_mistakes(
    form: Form, page: OwnPage, mistakes: tuple[Mistake, ...], shop: Shop
) -> tuple[Said, ...]:
    """Put each mistake beside its field, and return them for the summary."""
    fields = dict(fields_by_place(form))
    numbered = [replace(m, place=numbered_place(m.place, fields)) for m in mistakes]

    def where(place: Place, field: Field | None) -> str:
        other = page_of(str(place))
        words = place_words(place, field)
        return words if other is None or other is page else f"{other.title}: {words}"

    said = say_beside(form, numbered, shop.speech, where)
    return tuple(one if page.has(one.field_id) else replace(one, field_id="") for one in said)


def numbered_place(place: Place, fields: Mapping[str, Field]) -> Place:
    """Return the place of a line that the core knows by its name as the form numbers it.

    A table that is wrong as a whole has the place of its first field.
    """
    at = NOWHERE
    for part in place.parts:
        held = fields.get(str(at))
        at = at / (_number(held, part) if isinstance(held, Lines) else part)
    whole = fields.get(str(at))
    first = [field.short_name for field in whole.form][:1] if isinstance(whole, FormPart) else []
    only = (at / name for name in (VALUE_FIELD, NAMED_IN, *first) if str(at / name) in fields)
    return replace(next(only, at), document=place.document)


def _number(lines: Lines, part: Part) -> Part:
    for number, entry in enumerate(lines.entries, 1):
        names = (typed_of(entry, name) for name in (NAME_FIELD, NAMED_IN) if name in entry)
        if any(name.typed.strip() == part for name in names):
            return number
    return part


def field_words(name: str, form: Form) -> str:
    """Return what a field of a form is called, with the line that it stands in."""
    parts = (int(part) if is_number(part) else part for part in name.split("."))
    return place_words(at(*parts), dict(fields_by_place(form)).get(name))


def place_words(place: Place, field: Field | None) -> str:
    """Return a place in words: `Yarn 1, colour 2, Name`."""
    words = [
        f"{LINE_NAMES[part]} {number}"
        for part, number in pairwise(place.parts)
        if isinstance(part, str) and part in LINE_NAMES and isinstance(number, int)
    ]
    label = field.label.text if field is not None else ""
    told = ", ".join([*words, label] if label else words)
    return speech_now().worded(told) or str(place)
