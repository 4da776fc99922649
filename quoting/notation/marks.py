"""Decimal and grouping marks, and text brought to the plain characters that they are sought in."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import JOINERS, refuse

MOST_CHARACTERS = 60
SHOWN_CHARACTERS = 40

ARABIC_DECIMAL = "\u066b"
ARABIC_GROUPING = "\u066c"

_DIRECTION_MARKS = "\u200e\u200f\u061c\u2066\u2067\u2068\u2069"
_FULL_WIDTH = range(0xFF01, 0xFF5F)
_FULL_WIDTH_OFFSET = 0xFEE0

_PLAIN = (
    {ord(char): None for char in _DIRECTION_MARKS}
    | {ord(char): "-" for char in "\u2212\ufe63"}
    | {ord(char): "'" for char in "\u2018\u2019\u02bc\u2032"}
    | {ord(char): '"' for char in "\u201c\u201d\u2033"}
    | {ord("\t"): " ", ord("\u2044"): "/", ord("\u2215"): "/"}
    | {code: chr(code - _FULL_WIDTH_OFFSET) for code in _FULL_WIDTH}
)


@dataclass(frozen=True, slots=True)
class Marks:
    """The marks a number may be typed with; the first `decimal` is the one to write.

    With a `grouping` of its own, a number may also be grouped by spaces or apostrophes, which
    nobody takes for a decimal mark. Without one, it may be grouped where that is beyond doubt.
    """

    decimal: str
    grouping: str

    @property
    def decimals(self) -> str:
        """Every character read as a decimal mark."""
        return plain(self.decimal) + ARABIC_DECIMAL

    @property
    def groupings(self) -> str:
        """Every character read as a grouping mark; none where there is no mark for it."""
        return plain(self.grouping) + f" '{ARABIC_GROUPING}" if self.grouping else ""


FILE_MARKS = Marks(decimal=".,", grouping="")
"""Files: a dot or a comma, and a single one is the decimal mark (1.500 is one and a half)."""

EITHER_WAY = (Marks(decimal=".", grouping=","), Marks(decimal=",", grouping="."))
"""How a number with several marks may be meant: 1,017.00 and 1.017,00 can each be only one."""


def plain_text(text: str) -> str:
    """Return typed text in plain characters, without spaces around it.

    Errors: `too-long`, with its beginning.
    """
    if len(text) > MOST_CHARACTERS:
        raise refuse(
            "", MistakeCode.TOO_LONG, read=len(text), limit=MOST_CHARACTERS, begins=shown(text)
        )
    return plain(text).strip().replace("''", '"')


def plain(text: str) -> str:
    """Return text with any digits as 0 to 9 and any space, sign, quote or fraction as ASCII."""
    return "".join(_plain_character(char) for char in text).translate(_PLAIN)


def _plain_character(char: str) -> str:
    if (digit := unicodedata.decimal(char, None)) is not None:
        return str(digit)
    if unicodedata.category(char) == "Zs":
        return " "
    if unicodedata.decomposition(char).startswith("<fraction>"):
        return " " + unicodedata.normalize("NFKC", char)
    return char


def shown(text: str) -> str:
    """Return the beginning of a text, fit to be shown: what cannot be printed becomes a mark."""
    beginning = "".join(
        char if char.isprintable() or char in JOINERS else "\ufffd"
        for char in text[:SHOWN_CHARACTERS]
    )
    return beginning + "…" * (len(text) > SHOWN_CHARACTERS)
