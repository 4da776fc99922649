"""The kind that is the language of what a buyer reads: one that there is a catalogue of."""

from __future__ import annotations

import re

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.notation.marks import shown
from quoting.places import catalogue_languages
from quoting.schema.notation import Notation
from quoting.schema.notes import NotRead
from quoting.schema.spot import Spot
from quoting.schema.words import Text

_TAG = re.compile(r"([A-Za-z]{2,3})([_-][A-Za-z]{4})?([_-]([A-Za-z]{2}|\d{3}))?")
"""Language, script, territory: the parts of an identifier by BCP 47."""


class Language(Text):
    """A language as it is read in some country or in any: `de`, `de_AT`, `en_US`.

    What a record keeps is not asked again: a book opens also where a catalogue was taken away,
    and what has none is said in English.
    """

    def from_file(self, spot: Spot) -> str:
        """Return the language. Errors: `no-catalogue`."""
        text = super().from_file(spot)
        return text if isinstance(text, NotRead) else spot.attempt(text, lambda: _known(text))

    def parse(self, text: str, notation: Notation) -> str:
        """Return the language. Errors: `no-catalogue`."""
        return _known(super().parse(text, notation))

    def from_record(self, spot: Spot) -> str:
        """Return the language, as records keep it."""
        return super().from_file(spot)


def _known(text: str) -> str:
    known = ("en", *catalogue_languages())
    found = _TAG.fullmatch(text)
    if found is None or found[1].lower() not in known:
        raise refuse("", MistakeCode.NO_CATALOGUE, read=shown(text), known=known)
    return text


LANGUAGE = Language()
