"""First steps are gone on with where they were left: each answer is in the book."""

from __future__ import annotations

from werkzeug.datastructures import MultiDict

from quoting.core.ground.errors import Refused
from quoting.store.book import Book
from quoting.store.first_answers import FirstAnswers, keep_answers, kept_answers
from quoting.web.first_steps.steps import END, Step
from quoting.web.forms.sent import Sent
from quoting.wording import FILE_SPEECH, mistake_sentence


def keep(book: Book, step: Step | None, sent: Sent) -> str:
    """Keep what was sent so far and which question comes next; return in words what hinders it.

    The page has the answers all the same, so that they can be gone on with.
    """
    typed = {name: tuple(texts) for name, texts in sent.lists()}
    try:
        keep_answers(book, FirstAnswers(asks=END if step is None else step.word, typed=typed))
    except Refused as refused:
        return " ".join(mistake_sentence(m, FILE_SPEECH) for m in refused.mistakes)
    return ""


def recall(book: Book) -> tuple[str, Sent] | None:
    """Return the word of the question that comes next, and what was sent before it."""
    kept = kept_answers(book)
    if kept is None:
        return None
    fields = [(name, text) for name, texts in kept.typed.items() for text in texts]
    return kept.asks, MultiDict(fields)
