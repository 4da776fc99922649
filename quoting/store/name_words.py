"""The words of a name, and a text without them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from quoting.store.order_rows import search_key

FORGOTTEN = "(forgotten)"
"""What stands where a name stood."""

_WORD = re.compile(r"\w+(?:[’'](?:[sS]\b|(?!\w)))?")
"""A word, with the sign and the letter that say whose something is."""

_SEVERAL = re.compile(rf"{re.escape(FORGOTTEN)}(?:[\s,.&+-]*{re.escape(FORGOTTEN)})+")

_LEAST_LETTERS = 2
"""Of a word that is looked for: an initial alone is in every text."""


@dataclass(frozen=True, slots=True)
class NameWords:
    """The spellings of one person's name; capitals and accents do not matter."""

    names: frozenset[str]

    def out_of(self, text: str, most: int | None = None) -> str:
        """Return a text with a mark in the place of every word of the names.

        Of one that would be longer than `most` characters the beginning is left.
        """
        for name in sorted(self.names, key=len, reverse=True):
            if len(name) >= _LEAST_LETTERS:  # as it stands, for scripts that part no words
                text = re.sub(re.escape(name), FORGOTTEN, text, flags=re.IGNORECASE)
        words = self._keys()
        parted = _WORD.sub(lambda word: FORGOTTEN if _is_in(word[0], words) else word[0], text)
        marked = _SEVERAL.sub(FORGOTTEN, parted)
        return marked if marked == text or most is None else marked[:most].rstrip()

    def _keys(self) -> frozenset[str]:
        words = (word for name in self.names for word in re.findall(r"\w+", search_key(name)))
        return frozenset(word for word in words if len(word) >= _LEAST_LETTERS)


def _is_in(word: str, words: frozenset[str]) -> bool:
    """Return whether a word is one of the name's, also as the family's or as hers."""
    key = search_key(re.split("[’']", word)[0])
    return key in words or key.removesuffix("s") in words
