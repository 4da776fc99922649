"""The answers to the questions: taken one by one, and at the end as a workshop."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.ground.errors import Mistake, Refused
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.workshop import Workshop
from quoting.schema.reading import read_workshop
from quoting.schema.workshop_shape import WORKSHOP
from quoting.web.beside import say_beside
from quoting.web.first_steps.beginner import Beginner, beginner_of
from quoting.web.first_steps.steps import STEPS, TIMING, Step
from quoting.web.first_steps.timed_motif import (
    MOTIF_TIMED,
    STAND_IN,
    stands_for_a_stitch,
    was_timed,
    with_its_stitches_timed,
)
from quoting.web.forms.from_shape import form_of
from quoting.web.forms.lines import fields_by_place
from quoting.web.forms.sent import Sent, content_of, line_numbers
from quoting.web.orders.order_answer import Said
from quoting.web.shop import speak_as_begun
from quoting.web.workshop.own_answer import numbered_place, place_words
from quoting.web.workshop.own_lines import LOOKS
from quoting.wording import is_locale

STARTS: Mapping[str, Mapping[str, str]] = {
    "yarn": {
        "yarns.1.name": "",
        "yarns.1.put_ups.1.pack": "1",
        "yarns.1.colours.1.name": "",
        "yarns.1.colours.1.value": LOOKS[0],
    },
    "swatch": {"swatches.1.stitch": ""},
    "motif": {
        "motifs.1.name": "square",
        "motifs.1.counting": Counting.CLUSTERS.value,
        f"{MOTIF_TIMED}.hands_on": "yes",
    },
    "timing": {"timings.1.stitch": "", "timings.1.hands_on": "yes"},
    "pay": {"price.margin": "0"},
}
"""What the fields of a question begin with."""

_CHOSEN = ("workshop.locale", "workshop.currency", "workshop.units", "workshop.speaks")
"""What has to be chosen, and is from the beginning."""

_OF_A_YARN = ("swatches.1", "motifs.1", "timings.1")

KEPT_SILENT = {"tax.on_delivery": "yes"}
"""What a workshop has unless it says otherwise, and no question asks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepAnswer:
    """What was sent, as a form; what is wrong with it; the workshop, if it is one."""

    sent: Sent
    form: Form
    beginner: Beginner
    said: tuple[Said, ...] = ()
    workshop: Workshop | None = None


def bound(sent: Sent) -> StepAnswer:
    """Return what was sent so far, nothing said of it."""
    beginner = beginner_of(sent)
    speak_as_begun(beginner.speech)
    meta = {"shop": beginner, "lines": line_numbers(sent)}
    return StepAnswer(sent=sent, form=form_of(WORKSHOP)(sent, meta=meta), beginner=beginner)


def began(step: Step, sent: Sent) -> Sent:
    """Return the fields of a question that was not answered yet, as it begins."""
    start = STARTS.get(step.word, {})
    if step.of(sent):
        return sent
    yarn = sent.get("yarns.1.name", "")
    named = {f"{line}.yarn": yarn for line in _OF_A_YARN if step.has(line)}
    return MultiDict([*sent.items(), *start.items(), *named.items()])


def left_alone(step: Step, sent: Sent) -> bool:
    """Return whether nothing stands in a question's fields but what they begin with."""
    start = STARTS.get(step.word, {})
    chosen = {*_CHOSEN, *(f"{line}.yarn" for line in _OF_A_YARN)}
    return not any(
        text.strip() and text != start.get(name) and name not in chosen
        for name, text in step.of(sent).items()
    )


def skipped(step: Step, sent: Sent) -> Sent:
    """Return what was sent without a question's fields; what has to be chosen stays chosen."""
    return MultiDict((n, text) for n, text in sent.items() if n in _CHOSEN or not step.has(n))


def taken(step: Step | None, sent: Sent) -> StepAnswer:
    """Return what is wrong with a question's answer; of none, with all of them together."""
    answer = bound(sent)
    try:
        return replace(answer, workshop=_read(answer))
    except Refused as refused:
        return replace(answer, said=_said(answer, refused.mistakes, step))


def sound_steps(sent: Sent) -> tuple[Step, ...]:
    """Return the questions whose answers can be taken as they are."""
    answer = bound(sent)
    try:
        _read(answer)
        placed = []
    except Refused as refused:
        placed = _placed(answer, refused.mistakes)
    return tuple(
        step
        for step in STEPS
        if step.is_answered(sent) and not any(step.has(str(m.place)) for m in placed)
    )


def _read(answer: StepAnswer) -> Workshop:
    sent = _without_blank_timing(answer.sent)
    by_motif = stands_for_a_stitch(sent)
    if by_motif:
        sent = MultiDict([*_without(sent, TIMING).items(), *STAND_IN.items()])
    content = content_of(MultiDict([*sent.items(), *KEPT_SILENT.items()]))
    workshop = read_workshop(content, is_locale, answer.beginner.notation)
    return with_its_stitches_timed(workshop) if by_motif else workshop


def _without(sent: Sent, step: Step) -> Sent:
    return MultiDict((name, text) for name, text in sent.items() if not step.has(name))


def _without_blank_timing(sent: Sent) -> Sent:
    """Return what was sent without the timing of the motif, where that was not timed."""
    if was_timed(sent):
        return sent
    kept = [(n, text) for n, text in sent.items() if not n.startswith(f"{MOTIF_TIMED}.")]
    return MultiDict(kept)


def _placed(answer: StepAnswer, mistakes: tuple[Mistake, ...]) -> list[Mistake]:
    fields = dict(fields_by_place(answer.form))
    return [replace(m, place=numbered_place(m.place, fields)) for m in mistakes]


def _said(answer: StepAnswer, mistakes: tuple[Mistake, ...], step: Step | None) -> tuple[Said, ...]:
    placed = _placed(answer, mistakes)
    its = [m for m in placed if step is None or step.has(str(m.place))]
    return say_beside(answer.form, its, answer.beginner.speech, place_words)


def step_of(field_id: str) -> Step | None:
    """Return the question that asks for a field."""
    return next((step for step in STEPS if step.has(field_id)), None)
