"""What is said beside the fields of a form: mistakes, or how a text was read."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from wtforms import Field, Form

from quoting.core.ground.errors import Mistake
from quoting.core.ground.place import Place
from quoting.web.forms.fields import Typed
from quoting.web.forms.lines import Lines, fields_by_place
from quoting.web.orders.order_answer import Said, Words, field_at
from quoting.web.shop import speech_now
from quoting.wording import Speech, mistake_sentence

Where = Callable[[Place, Field | None], str]
"""Names a place for the summary at the head of the page, given its field."""


def say_beside(
    form: Form, mistakes: Iterable[Mistake], speech: Speech, where: Where
) -> tuple[Said, ...]:
    """Put each mistake beside its field, and return them for the summary."""
    fields = dict(fields_by_place(form))
    said = []
    for mistake in mistakes:
        field = field_at(mistake.place, fields)
        kind = field.kind if isinstance(field, Typed) else None
        sentence = _side(mistake, field) + mistake_sentence(mistake, speech, kind)
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


def label_of(place: Place, field: Field | None) -> str:
    """Return a field's label, or its place where there is none."""
    return speech_now().worded(field.label.text) if field is not None else str(place)


_SIDES = {"width": "Width", "height": "Length"}


def _side(mistake: Mistake, field: Field | None) -> str:
    """Return which side of a size is meant, where both are typed into one field."""
    side = mistake.place.key
    in_one = field is not None and field.short_name == "size"
    return f"{_SIDES[side]}: " if in_one and side in _SIDES else ""
