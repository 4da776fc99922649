"""Taking over words that are suggested for a quote, into a field that is still blank."""

from __future__ import annotations

from collections.abc import Mapping

from werkzeug.datastructures import MultiDict

from quoting.core.workshop.workshop import Workshop
from quoting.web.forms.line_changes import Changed
from quoting.web.forms.sent import Sent
from quoting.wording import suggested_words


def suggestions(locale: str, workshop: Workshop) -> Mapping[str, str]:
    """Return what is suggested in a locale's language, by the keys of a maker's words."""
    return suggested_words(locale, workshop.speaks)


def take_suggested(asked: str, sent: Sent, workshop: Workshop) -> Changed | None:
    """Return the form with what a button `suggest workshop.care` takes; None of another.

    A line of words in another language is suggested in that. What was typed stays as it is.
    """
    what, _, field = asked.partition(" ")
    if what != "suggest":
        return None
    place, _, key = field.rpartition(".")
    locale = sent.get("workshop.locale") if place == "workshop" else sent.get(f"{place}.language")
    text = suggestions(locale or "", workshop).get(key)
    filled: Sent = MultiDict(sent.items(multi=True))
    if text is not None and field in sent and not (sent.get(field) or "").strip():
        filled[field] = text
    return Changed(filled, field)
