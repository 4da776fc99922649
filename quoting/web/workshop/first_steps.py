"""First steps: a workshop begun question by question, or read from a file into an empty book."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from quoting.core.ground.errors import Refused
from quoting.schema import load_workshop_text
from quoting.store.workshops import save_workshop
from quoting.web.first_steps.answers import (
    StepAnswer,
    began,
    bound,
    left_alone,
    skipped,
    sound_steps,
    step_of,
    taken,
)
from quoting.web.first_steps.beginner import offered_to
from quoting.web.first_steps.kept_answers import keep, recall
from quoting.web.first_steps.so_far import so_far
from quoting.web.first_steps.steps import (
    MAKER,
    STEPS,
    Step,
    next_word,
    previous_word,
    step_called,
)
from quoting.web.first_steps.timed_motif import stands_for_a_stitch
from quoting.web.forms.line_changes import Changed
from quoting.web.forms.sent import Sent
from quoting.web.kept import book_now, moment_now
from quoting.web.shop import shop_if_any
from quoting.web.statuses import REFUSED
from quoting.web.workshop.own_lines import change_lines
from quoting.web.workshop.own_views import offers_of
from quoting.web.workshop.usual_minutes import counted_texts, take_usual, usual_texts
from quoting.wording import FILE_SPEECH, OFFERED_LOCALES, is_locale, mistake_sentence

blueprint = Blueprint("first_steps", __name__, url_prefix="/first-steps")


@blueprint.get("")
def show() -> ResponseReturnValue:
    """Ask the question that comes next of those begun with; of none or `anew`, the first."""
    if shop_if_any() is not None:
        return redirect(url_for("workshop.show"))
    kept = None if "anew" in request.args else recall(book_now())
    if kept is None:
        return _page(MAKER, bound(_offered()))
    word, sent = kept
    step, answer = _asking(word, sent)
    return _page(step, answer, begun=True)


@blueprint.post("")
def go() -> ResponseReturnValue:
    """Take the answer to a question and ask the next, or begin with all that was answered."""
    if shop_if_any() is not None:
        return redirect(url_for("workshop.show"), 303)
    step, asked, sent = _asked()
    if asked == "begin":
        return _begin(sent)
    if step is not None:
        changed = _changed(asked, sent)
        if changed is not None:
            return _next_page(step, bound(changed.sent), focus=changed.focus)
        if asked == "skip" or left_alone(step, sent):
            sent = skipped(step, sent)
        elif asked == "next":
            answer = taken(step, sent)
            if answer.said:
                return _next_page(step, answer), REFUSED
    word = asked.removeprefix("to ") if asked.startswith("to ") else next_word(step)
    return _next_page(*_asking(word, sent))


def resume() -> str:
    """Return the question with all that was typed, when it comes from before a restart."""
    step, _, sent = _asked()
    return _page(step, bound(sent), stale=True)


def _asked() -> tuple[Step | None, str, Sent]:
    """Return the question that was answered, the button that was pressed, and all the fields."""
    form = request.form
    own = {"csrf_token", "step", "do"}
    sent: Sent = MultiDict((name, text) for name, text in form.items(multi=True) if name not in own)
    return step_called(form.get("step", "")), form.get("do", "next"), sent


def _changed(asked: str, sent: Sent) -> Changed | None:
    usual = take_usual(asked, sent, bound(sent).beginner.notation)
    return change_lines(asked, sent) if usual is None else Changed(usual, "next")


def _asking(word: str, sent: Sent) -> tuple[Step | None, StepAnswer]:
    """Return a question with what was sent, ready to be answered."""
    step = step_called(word)
    return step, bound(sent if step is None else began(step, sent))


def _begin(sent: Sent) -> ResponseReturnValue:
    """Keep the workshop that was answered, or tell what it still lacks."""
    answer = taken(None, sent)
    if answer.workshop is None:
        return _page(None, answer), REFUSED
    save_workshop(book_now(), answer.workshop, now=moment_now())
    return redirect(url_for("orders.show"), 303)


def _offered() -> Sent:
    preferred = request.accept_languages.best_match([n.replace("_", "-") for n in OFFERED_LOCALES])
    return MultiDict(offered_to(preferred.replace("-", "_") if preferred else None))


def _next_page(step: Step | None, answer: StepAnswer, **more: Any) -> str:
    """Return a question when all that came before it is in the book."""
    return _page(step, answer, unkept=keep(book_now(), step, answer.sent), **more)


def _page(step: Step | None, answer: StepAnswer, *, focus: str = "", **more: Any) -> str:
    sent = answer.sent
    return render_template(
        "first_steps/show.html",
        step=step,
        steps=STEPS,
        previous=previous_word(step),
        answer=answer,
        form=answer.form,
        say=answer.beginner.speech,
        offers=offers_of(answer.form, answer.beginner.speech),
        usual=usual_texts(answer.beginner.notation),
        counted=counted_texts(answer.beginner.notation),
        others=[(n, t) for n, t in sent.items(multi=True) if step is None or not step.has(n)],
        grounds=tuple(so_far(sound_steps(sent), by_motif=stands_for_a_stitch(sent))),
        by_motif=stands_for_a_stitch(sent),
        step_of=step_of,
        focus=focus,
        **more,
    )


@blueprint.post("/read")
def read() -> ResponseReturnValue:
    """Keep the workshop of a file, or show every mistake of the file."""
    sent = request.files.get("file")
    if sent is None or not sent.filename:
        return redirect(url_for("first_steps.show"), 303)
    try:
        workshop = load_workshop_text(sent.read(), is_locale)
    except Refused as refused:
        said = [(m.path, mistake_sentence(m, FILE_SPEECH)) for m in refused.mistakes]
        return _page(MAKER, bound(_offered()), name=sent.filename, said=said), REFUSED
    save_workshop(book_now(), workshop, now=moment_now())
    return redirect(url_for("workshop.show"), 303)


@blueprint.get("/read")
def again() -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the page itself."""
    return redirect(url_for("first_steps.show"))
