"""The file of a catalogue, read so that nothing in it can keep a document from being made.

Babel makes of the file what the standard library reads. What is no catalogue, and a translation
that asks for facts which its sentence has not, are left out with a line in the log.
"""

from __future__ import annotations

import gettext
import logging
from functools import cache
from io import BytesIO
from string import Formatter
from typing import TYPE_CHECKING

from babel.core import UnknownLocaleError

from quoting.places import catalogue_file, catalogue_languages

if TYPE_CHECKING:
    from babel.messages.catalog import Catalog, Message

log = logging.getLogger("quoting.wording")


class _Lacking(gettext.NullTranslations):
    """What is asked where a catalogue lacks something: a sentence is itself, a word nothing."""

    def pgettext(self, context: str, message: str) -> str:
        """Return that there is no such word."""
        del context, message
        return ""


@cache
def catalogue_of(language: str) -> gettext.NullTranslations | None:
    """Return a catalogue, read once; none where there is no file, or none that can be read."""
    if language not in catalogue_languages():
        return None
    from babel.messages.pofile import PoFileError

    try:
        return _read(language)
    except (OSError, ValueError, LookupError, PoFileError, UnknownLocaleError) as failure:
        log.warning("%s.po is no catalogue, so English is said: %s", language, failure)
        return None


def facts_named(text: str) -> frozenset[str]:
    """Return the names in braces of a text, with whatever else stands in the braces.

    Errors: ValueError where a brace is left open.
    """
    parts = Formatter().parse(text)
    return frozenset(f"{name}{shape}{sort or ''}" for _, name, shape, sort in parts if name)


def _read(language: str) -> gettext.NullTranslations:
    from babel.messages.mofile import write_mo
    from babel.messages.pofile import read_po

    with catalogue_file(language).open("rb") as file:
        catalogue = read_po(file, locale=language, abort_invalid=True)
    _leave_out_unsayable(catalogue, language)
    compiled = BytesIO()
    write_mo(compiled, catalogue)
    compiled.seek(0)
    read = gettext.GNUTranslations(compiled)
    read.add_fallback(_Lacking())
    return read


def _leave_out_unsayable(catalogue: Catalog, language: str) -> None:
    """Empty each translation that cannot be said with the facts of its sentence."""
    for message in catalogue:
        if message.id and not _is_sayable(message):
            log.warning("%s.po: the names in braces differ in %r", language, message.id)
            message.string = ""


def _is_sayable(message: Message) -> bool:
    there = frozenset[str]().union(*map(facts_named, _texts(message.id)))
    try:
        return all(facts_named(text) <= there for text in _texts(message.string or ""))
    except ValueError:
        return False


def _texts(said: str | tuple[str, ...] | list[str]) -> tuple[str, ...]:
    return (said,) if isinstance(said, str) else tuple(said)
