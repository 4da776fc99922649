"""What is said beside the fields of a form: mistakes, or how a text was read."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from wtforms import Field, Form

from quoting.core.errors import Mistake
from quoting.web.answers import Said, Words
from quoting.web.fields import Money, Typed
from quoting.web.lines import Lines, Part, fields_by_place
from quoting.wording import Speech, mistake_sentence

Where = Callable[[str, Field | None], str]
"""Names a place for the summary at the head of the page, given its field."""


def say_beside(
    form: Form, mistakes: Iterable[Mistake], speech: Speech, where: Where
) -> tuple[Said, ...]:
    """Put each mistake beside its field, and return them for the summary."""
    fields = dict(fields_by_place(form))
    said = []
    for mistake in mistakes:
        field = _nearest(mistake.place, fields)
        sentence = _side(mistake, field) + mistake_sentence(_in_money(mistake, field), speech)
        if isinstance(field, Typed | Lines):
            field.says = (*field.says, sentence)
        said.append(
            Said(
                where=where(mistake.place, field),
                sentence=sentence,
                field_id=field.id if field is not None else "",
            )
        )
    return tuple(said)


def words_beside(form: Form) -> Iterator[Words]:
    """Yield what is said beside single fields."""
    for _, field in fields_by_place(form):
        if isinstance(field, Typed | Lines) and field.says:
            yield Words(field.id, " ".join(field.says), wrong=True)
        elif isinstance(field, Typed) and field.understood:
            yield Words(field.id, f"Read as {field.understood}", wrong=False)


def label_of(place: str, field: Field | None) -> str:
    """Return a field's label, or its place where there is none."""
    return field.label.text if field is not None else place


def _in_money(mistake: Mistake, field: Field | None) -> Mistake:
    """Return a mistake whose figures are said as money where the field is one of money."""
    if not isinstance(field, Money):
        return mistake
    return Mistake("price", mistake.code, mistake.facts)


def _side(mistake: Mistake, field: Field | None) -> str:
    """Return which side of a size is meant, where both are typed into one field."""
    side = mistake.place.rpartition(".")[2]
    in_one = field is not None and field.short_name == "size" and side in {"width", "height"}
    return f"{side.capitalize()}: " if in_one else ""


def _nearest(place: str, fields: Mapping[str, Field]) -> Field | None:
    while place:
        field = fields.get(place)
        if field is not None and not isinstance(field, Part):
            return field
        place = place.rpartition(".")[0]
    return None
