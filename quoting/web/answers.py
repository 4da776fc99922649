"""The answer to a form: a quote, or what is wrong, each thing said beside its field."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from wtforms import Field

from quoting.core.errors import Mistake, Refused
from quoting.core.quote import Quote, quote_order
from quoting.web.fields import Typed
from quoting.web.lines import Lines, Part, entries_of, fields_by_place, part_of, typed_of
from quoting.web.order_form import TARGETS, OrderForm
from quoting.web.ordering import read_order
from quoting.web.shop import Shop
from quoting.web.turns import take_turn_for
from quoting.wording import mistake_sentence

_LINES = {
    "first_rows": "First rows, stripe",
    "last_rows": "Last rows, stripe",
    "sections": "Section",
    "stripes": "stripe",
    "border": "Border band",
    "colours": "Colour from another yarn",
    "extras": "Extra",
}


class Words(NamedTuple):
    """What is said beside one field, and whether it is a mistake."""

    field_id: str
    text: str
    wrong: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """One mistake as the page says it: where, what, and the field to go to, if there is one."""

    where: str
    sentence: str
    field_id: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A quote, or none: then `said` has the mistakes, `wanting` the fields still blank."""

    form: OrderForm
    quote: Quote | None
    said: tuple[Said, ...] = ()
    wanting: tuple[Said, ...] = ()

    @property
    def words(self) -> Iterator[Words]:
        """What is said beside single fields: mistakes, or how a text was read."""
        for _, field in fields_by_place(self.form):
            if isinstance(field, Typed | Lines) and field.says:
                yield Words(field.id, " ".join(field.says), wrong=True)
            elif isinstance(field, Typed) and field.understood:
                yield Words(field.id, f"Read as {field.understood}", wrong=False)


def answer_form(form: OrderForm, shop: Shop, *, patient: bool) -> Answer:
    """Return the answer to a form. A patient one waits for fields that are still blank."""
    if form.meta.crowded is not None:
        return _refusal(form, shop, [form.meta.crowded], patient=patient)
    try:
        order = read_order(form, shop.workshop)
        take_turn_for(order, shop.workshop)
        return Answer(form=form, quote=quote_order(order, shop.workshop, today=shop.today()))
    except Refused as refused:
        return _refusal(form, shop, refused.mistakes, patient=patient)


def _refusal(form: OrderForm, shop: Shop, mistakes: Sequence[Mistake], *, patient: bool) -> Answer:
    fields = dict(fields_by_place(form))
    renamed = _colours_by_name(form)
    said, wanting = [], []
    for mistake in mistakes:
        place = _renamed(mistake.place, renamed)
        beside = _fields_of(mistake.code, place, fields)
        field = beside[0] if beside else None
        sentence = mistake_sentence(_in_labels(mistake), shop.speech)
        here = Said(
            where=_where(place, field),
            sentence=sentence,
            field_id=field.id if field is not None else "",
        )
        if patient and mistake.code == "missing" and isinstance(field, Typed):
            wanting.append(here)
            continue
        said.append(here)
        for each in beside:
            if isinstance(each, Typed | Lines):
                each.says = (*each.says, sentence)
    return Answer(form=form, quote=None, said=tuple(said), wanting=tuple(wanting))


def _in_labels(mistake: Mistake) -> Mistake:
    """Return a mistake that names keys of a file as one that names fields of the form."""
    if mistake.code != "one-target":
        return mistake
    keys = mistake.facts["read"]
    assert isinstance(keys, tuple), "what cannot go together is several"  # noqa: S101
    labels = tuple(f"“{TARGETS[str(key)]}”" for key in keys)
    return Mistake(mistake.place, mistake.code, {"read": labels})


def _fields_of(code: str, place: str, fields: Mapping[str, Field]) -> list[Field]:
    """Return the fields that a mistake is told beside, the one to go to first."""
    match code:
        case "share-and-repeats":
            section = place.rpartition(".")[0]
            return [fields[place], fields[f"{section}.share"]]
        case "no-shares":
            return [field for at, field in fields.items() if _is_share(at) and field.data == 0]
    nearest = _field_at(place, fields)
    return [] if nearest is None else [nearest]


def _is_share(place: str) -> bool:
    return place.startswith("blanket.sections.") and place.endswith(".share")


def _field_at(place: str, fields: Mapping[str, Field]) -> Field | None:
    """Return the field at a place, or the nearest that holds it."""
    while place:
        field = fields.get(place)
        if field is not None and not isinstance(field, Part):
            return field
        place = place.rpartition(".")[0]
    return None


def _colours_by_name(form: OrderForm) -> dict[str, str]:
    """Return the places of mapped colours as a form numbers them, by those that name them."""
    names = [
        typed_of(line, "name").data for line in entries_of(part_of(form, "blanket"), "colours")
    ]
    return {
        f"blanket.colours.{name}.": f"blanket.colours.{number}."
        for number, name in enumerate(names, 1)
        if name
    }


def _renamed(place: str, renamed: Mapping[str, str]) -> str:
    for named, numbered in renamed.items():
        if place.startswith(named):
            return numbered + place.removeprefix(named)
    return place


def _where(place: str, field: Field | None) -> str:
    """Return a place in words: `Section 1, stripe 2, Rows`."""
    parts = place.split(".")
    words = [
        f"{_LINES[part]} {number}"
        for part, number in pairwise(parts)
        if part in _LINES and number.isdecimal()
    ]
    label = field.label.text if field is not None else ""
    return ", ".join([*words, label] if label else words)
