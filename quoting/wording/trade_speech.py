"""Words that makers on either side of the Atlantic have of their own, and how they spell.

What the program says is written once, in British words and spelling. Where a workshop speaks of
American stitches its trade's words are exchanged for the American ones, and where its locale is
American English its spelling and its words of every day, each apart: some write *colour* and yet
work in American terms. What people typed never goes through here. The words are common practice;
the spelling is any dictionary's.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache, lru_cache

from quoting.core.workshop.stitches import Vocabulary
from quoting.wording.locales import locale_of

AMERICAN_WORDS: Mapping[str, str] = {
    "ball": "skein",
    "balls": "skeins",
    "tension": "gauge",
    "pulling back": "frogging",
    "comforter": "lovey",
}
"""What each of the trade's British words is among those who have American stitch names."""

AMERICAN_SPELLING: Mapping[str, str] = {
    "centimetre": "centimeter",
    "centimetres": "centimeters",
    "centre": "center",
    "colour": "color",
    "colours": "colors",
    "fibre": "fiber",
    "fibres": "fibers",
    "grey": "gray",
    "labour": "labor",
    "metre": "meter",
    "metres": "meters",
}
"""How each word that is spelled in two ways is spelled in American English."""


AMERICAN_EVERYDAY: Mapping[str, str] = {
    "holidays": "vacations",
    "parcel": "package",
    "parcels": "packages",
    "post": "mail",
    "tick": "check",
    "ticked": "checked",
}
"""What words of every day are where the spelling is American; any dictionary has them."""


@lru_cache(maxsize=4096)
def worded(text: str, vocabulary: Vocabulary, locale: str) -> str:
    """Return a text of the program's own in the words and the spelling of a workshop.

    Names in braces, where facts are yet to be put in, stay.
    """
    words = _exchanged(vocabulary, locale)
    if not words:
        return text
    return _pattern(vocabulary, locale).sub(lambda found: _as_begun(found[0], words), text)


def spelled(text: str, locale: str) -> str:
    """Return a text as the locale's country spells its language: the Swiss write no ß."""
    data = locale_of(locale)
    swiss = data.language == "de" and data.territory in ("CH", "LI")
    return text.replace("ß", "ss") if swiss else text


def is_american(locale: str) -> bool:
    """Return whether a locale spells as Americans do."""
    data = locale_of(locale)
    return bool(data.language == "en" and data.territory == "US")


@cache
def _exchanged(vocabulary: Vocabulary, locale: str) -> Mapping[str, str]:
    words = AMERICAN_WORDS if vocabulary is Vocabulary.US else {}
    return {**words, **({**AMERICAN_SPELLING, **AMERICAN_EVERYDAY} if is_american(locale) else {})}


@cache
def _pattern(vocabulary: Vocabulary, locale: str) -> re.Pattern[str]:
    words = "|".join(_exchanged(vocabulary, locale))
    return re.compile(rf"(?<![{{\w])(?:{words})\b", re.IGNORECASE)


def _as_begun(found: str, words: Mapping[str, str]) -> str:
    """Return the word in place of one that was found, with a capital where that has one."""
    word = words[found.lower()]
    return word.capitalize() if found[0].isupper() else word
