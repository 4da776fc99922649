"""What buyers read, in their own language: a catalogue of sentences for each, a file of its own.

A catalogue is a `.po` file of GNU gettext in `config/languages`, named by its language's code of
ISO 639 (`de.po`); a further file is a further language. Its message ids are the program's own
sentences in British English, which need no catalogue. A sentence that a catalogue lacks is said in
English.
"""

from __future__ import annotations

import gettext
from functools import cache
from io import BytesIO

from quoting.places import catalogue_file, catalogue_languages
from quoting.wording.locales import locale_of

ENGLISH = "en"
"""The language of the source, and of whatever has no catalogue."""


def sentence(text: str) -> str:
    """Return the text itself: marked so, it is one that every catalogue has to have."""
    return text


def language_of(locale: str) -> str:
    """Return the language that documents are written in for a locale: its own, or English."""
    own = str(locale_of(locale).language)
    return own if own in catalogue_languages() else ENGLISH


def translated(text: str, language: str) -> str:
    """Return a sentence in a language, its names in braces untouched."""
    return _catalogue(language).gettext(text)


def translated_count(one: str, many: str, count: int, language: str) -> str:
    """Return that one of two sentences, for one and for several, which a count of things needs."""
    return _catalogue(language).ngettext(one, many, count)


@cache
def _catalogue(language: str) -> gettext.NullTranslations:
    """Return a catalogue, read once: Babel makes of the file what the standard library reads."""
    if language == ENGLISH:
        return gettext.NullTranslations()
    from babel.messages.mofile import write_mo
    from babel.messages.pofile import read_po

    compiled = BytesIO()
    with catalogue_file(language).open("rb") as file:
        write_mo(compiled, read_po(file, locale=language))
    compiled.seek(0)
    return gettext.GNUTranslations(compiled)
