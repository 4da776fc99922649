"""What buyers read, in their own language: a catalogue of sentences for each, a file of its own.

A catalogue is a `.po` file of GNU gettext in `config/languages`, named by its language's code of
ISO 639 (`de.po`), with a country's behind it where it is only that country's (`de_AT.po`); a
further file is a further language. Its message ids are the program's own sentences in British
English, which need no catalogue. A sentence that a catalogue lacks is said in English; so is
everything where the file is no catalogue, and the log says so.
"""

from __future__ import annotations

from dataclasses import dataclass

from quoting.places import catalogue_languages
from quoting.wording.catalogue_files import catalogue_of
from quoting.wording.locales import locale_of

ENGLISH = "en"
"""The language of the source, and of whatever has no catalogue."""


@dataclass(frozen=True, slots=True)
class Term:
    """A word of the trade, marked as a `sentence` is, with what it is a word for."""

    context: str
    text: str


def sentence(text: str) -> str:
    """Return the text itself: marked so, it is one that every catalogue has to have."""
    return text


def language_of(locale: str) -> str:
    """Return the language that documents are written in for a locale: its own, or English."""
    data = locale_of(locale)
    own = (str(data), str(data.language))
    found = (code for code in own if code in catalogue_languages() and catalogue_of(code))
    return next(found, ENGLISH)


def translated(text: str, language: str) -> str:
    """Return a sentence in a language, its names in braces untouched."""
    catalogue = catalogue_of(language)
    return catalogue.gettext(text) if catalogue else text


def translated_count(one: str, many: str, count: int, language: str) -> str:
    """Return that one of two sentences, for one and for several, which a count of things needs."""
    catalogue = catalogue_of(language)
    if catalogue is None:
        return one if count == 1 else many
    return catalogue.ngettext(one, many, count)


def translated_term(term: Term, language: str) -> str | None:
    """Return a word of the trade in a language; none where its catalogue lacks it."""
    catalogue = catalogue_of(language)
    return catalogue.pgettext(term.context, term.text) or None if catalogue else None
