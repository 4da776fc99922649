"""What was typed for a construction, or a shape, that is not chosen: it rests until it is again.

The form carries it along in hidden fields; no order is read from it.
"""

from __future__ import annotations

from werkzeug.datastructures import MultiDict

from quoting.core.workshop.workshop import Workshop
from quoting.schema.blanket_shapes import BLANKET, BODIES, CHOICE_OF_BODY, key_of_blanket
from quoting.web.forms.sent import Sent, sent_as
from quoting.web.orders.body_forms import form_part, start_of_body


def resting(sent: Sent) -> list[tuple[str, str]]:
    """Return the fields of a form that belong to constructions that it has not chosen.

    Of the one that it has, they are those that its shape has no use for.
    """
    word = _chosen(sent)
    keys = BODIES.not_of(word) | set(form_part(word).takes_over)
    names = form_part(word).rests(sent)
    return [(n, t) for n, t in sent.items(multi=True) if key_of_blanket(n) in keys or n in names]


def without_resting(sent: Sent) -> Sent:
    """Return a form without what rests in it."""
    rests = {name for name, _ in resting(sent)}
    return MultiDict([(n, text) for n, text in sent.items(multi=True) if n not in rests])


def begun(sent: Sent, workshop: Workshop) -> Sent:
    """Return a form with what a construction begins with, where it was chosen and has no field."""
    word = _chosen(sent)
    if sent.get(CHOICE_OF_BODY) != word or any(
        key_of_blanket(name) in BODIES.keys_of(word) for name in sent
    ):
        return sent
    named = (yarn for yarn in workshop.yarns if yarn.name == sent.get("blanket.yarn"))
    start = start_of_body(workshop, next(named, workshop.yarns[0]), word)
    return MultiDict([*sent.items(multi=True), *sent_as({BLANKET: start})])


def _chosen(sent: Sent) -> str:
    word = sent.get(CHOICE_OF_BODY, "")
    return word if word in BODIES.shapes else BODIES.first
