"""The answer to a form: a quote, or what is wrong, each thing said beside its field."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from wtforms import Field, Form

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Mistake, Refused
from quoting.core.ground.place import Place, at
from quoting.core.quote.quote import Quote, quote_order
from quoting.web.forms.fields import Typed
from quoting.web.forms.line_changes import of_list
from quoting.web.forms.lines import Lines, Part, entries_of, fields_by_place, part_of, typed_of
from quoting.web.forms.sent import Sent
from quoting.web.orders.body_form import BodyForm
from quoting.web.orders.body_forms import chosen_body, line_names
from quoting.web.orders.order_form import bind_form, read_sent
from quoting.web.orders.other_yarns import with_other_yarns
from quoting.web.orders.resting import begun
from quoting.web.orders.stripe_list import TextLine, line_in_text
from quoting.web.queue_now import ahead_now
from quoting.web.shop import Shop, speech_now
from quoting.web.turns import take_turn_for
from quoting.wording import mistake_sentence
from quoting.wording.phrases import capitalized


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
    """A quote for what was sent; or none: `said` has mistakes, `wanting` fields still blank."""

    form: Form
    sent: Sent
    quote: Quote | None
    said: tuple[Said, ...] = ()
    wanting: tuple[Said, ...] = ()

    @property
    def words(self) -> Iterator[Words]:
        """What is said beside single fields: mistakes, or how a text was read."""
        for _, field in fields_by_place(self.form):
            if isinstance(field, Typed | Lines) and field.says:
                yield Words(field.id, "\n".join(field.says), wrong=True)
            elif isinstance(field, Typed) and field.understood:
                yield Words(field.id, f"Read as {field.understood}", wrong=False)


def answer_form(sent: Sent, shop: Shop, *, patient: bool) -> Answer:
    """Return the answer to a form. A patient one waits for fields that are still blank."""
    sent = with_other_yarns(begun(sent, shop.workshop), shop.workshop)
    form = bind_form(shop, sent)
    if form.meta.crowded is not None:
        return _refusal(form, sent, shop, [form.meta.crowded], patient=patient)
    try:
        order = read_sent(sent, shop)
        take_turn_for(order, shop.workshop)
        quote = quote_order(order, shop.workshop, today=shop.today(), ahead=ahead_now())
        if shop.version is not None:
            quote = replace(quote, number="")  # a book numbers a quote as it is given
        return Answer(form=form, sent=sent, quote=quote)
    except Refused as refused:
        return _refusal(form, sent, shop, refused.mistakes, patient=patient)


def _refusal(
    form: Form, sent: Sent, shop: Shop, mistakes: Sequence[Mistake], *, patient: bool
) -> Answer:
    fields = dict(fields_by_place(form))
    numbers, body = _colour_numbers(form), chosen_body(form).part
    said, wanting = [], []
    for mistake in mistakes:
        place = _numbered(mistake.place, numbers)
        beside = _fields_of(mistake.code, place, fields, body)
        field = beside[0] if beside else None
        kind = field.kind if isinstance(field, Typed) else None
        sentence = mistake_sentence(_in_labels(mistake, fields), shop.speech, kind)
        where, line = _where(place, field), line_in_text(place, form.meta.texts)
        if line is not None:
            field, where = fields[line.list_name], _where_in_text(place, fields, line)
            beside = [field]
        here = Said(
            where=where,
            sentence=sentence,
            field_id=field.id if field is not None else "",
        )
        if patient and mistake.code == MistakeCode.MISSING and isinstance(field, Typed):
            wanting.append(here)
            continue
        said.append(here)
        told = sentence if line is None else f"{capitalized(line.told)}: {sentence}"
        for each in beside:
            if isinstance(each, Typed | Lines):
                each.says = (*each.says, told)
    return Answer(form=form, sent=sent, quote=None, said=tuple(said), wanting=tuple(wanting))


def _in_labels(mistake: Mistake, fields: Mapping[str, Field]) -> Mistake:
    """Return a mistake that names keys of a file as one that names fields of the form."""
    if mistake.code != MistakeCode.ONE_TARGET:
        return mistake
    keys = mistake.facts["read"]
    assert isinstance(keys, tuple), "what cannot go together is several"  # noqa: S101
    labels = tuple(f"“{fields[f'price.{key}'].label.text}”" for key in keys)
    return Mistake(mistake.place, mistake.code, {"read": labels})


def _fields_of(
    code: str, place: Place, fields: Mapping[str, Field], body: BodyForm
) -> Sequence[Field]:
    """Return the fields that a mistake is told beside, the one to go to first."""
    beside = body.beside(code, place, fields)
    if beside is not None:
        return beside
    nearest = field_at(place, fields)
    return [] if nearest is None else [nearest]


def field_at(place: Place, fields: Mapping[str, Field]) -> Field | None:
    """Return the field at a place, or the nearest that holds it."""
    while place.parts:
        field = fields.get(str(place))
        if field is not None and not isinstance(field, Part):
            return field
        place = place.outer
    return None


def _colour_numbers(form: Form) -> dict[str, int]:
    """Return the lines of the colours from another yarn by the names that they give."""
    lines = entries_of(part_of(form, "blanket"), "colours")
    return {typed_of(line, "name").data: number for number, line in enumerate(lines, 1)}


def _numbered(place: Place, numbers: Mapping[str, int]) -> Place:
    """Return the place of a colour that the core knows by its name as the form numbers it."""
    match place.parts:
        case ("blanket", "colours", str(name), *inner) if name in numbers:
            return at("blanket", "colours", numbers[name], *inner)
    return place


def _where_in_text(place: Place, fields: Mapping[str, Field], line: TextLine) -> str:
    """Return a place in a list that is typed as a text: `Section 1, line 7`."""
    of = _where(place.outer.outer.outer, None) or speech_now().worded(
        fields[line.list_name].label.text
    )
    return f"{of}, {line.told}"


def _where(place: Place, field: Field | None) -> str:
    """Return a place in words: `Section 1, stripe 2, Rows`."""
    names, words = line_names(), []
    for at_part, number in enumerate(place.parts):
        line = of_list(names, ".".join(map(str, place.parts[:at_part])))
        if isinstance(number, int) and line:
            words.append(f"{line} {number}")
    label = field.label.text if field is not None else ""
    return speech_now().worded(", ".join([*words, label] if label else words))
