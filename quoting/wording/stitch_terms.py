"""What the basic stitches are called: in English by the vocabulary, else as the language has it.

The names and the letters of patterns are common practice. A catalogue knows a stitch by its
American name, as the source does, so that no two of them are one text.
"""

from __future__ import annotations

from quoting.core.workshop.stitches import Stitch, Vocabulary, stitch_name
from quoting.wording.catalogues import Term, translated_term

_IN_FULL = {
    Stitch.CH: Term("stitch, by its American name", "chain"),
    Stitch.SC: Term("stitch, by its American name", "single crochet"),
    Stitch.HDC: Term("stitch, by its American name", "half double crochet"),
    Stitch.DC: Term("stitch, by its American name", "double crochet"),
    Stitch.TR: Term("stitch, by its American name", "treble crochet"),
    Stitch.SLIP: Term("stitch, by its American name", "slip stitch"),
}

_SHORT = {
    Stitch.CH: Term("stitch, as patterns shorten it", "ch"),
    Stitch.SC: Term("stitch, as patterns shorten it", "sc"),
    Stitch.HDC: Term("stitch, as patterns shorten it", "hdc"),
    Stitch.DC: Term("stitch, as patterns shorten it", "dc"),
    Stitch.TR: Term("stitch, as patterns shorten it", "tr"),
    Stitch.SLIP: Term("stitch, as patterns shorten it", "sl st"),
}

_BRITISH = {
    Stitch.CH: "chain",
    Stitch.SC: "double crochet",
    Stitch.HDC: "half treble",
    Stitch.DC: "treble",
    Stitch.TR: "double treble",
    Stitch.SLIP: "slip stitch",
}


def full_name(stitch: Stitch, vocabulary: Vocabulary, language: str) -> str:
    """Return a stitch's name in full: `half double crochet`, `halbes Stäbchen`."""
    british = vocabulary is Vocabulary.UK
    english = _BRITISH[stitch] if british else _IN_FULL[stitch].text
    return translated_term(_IN_FULL[stitch], language) or english


def short_name(stitch: Stitch, vocabulary: Vocabulary, language: str) -> str:
    """Return a stitch as patterns shorten it: `hdc`, `hStb`; in English by the vocabulary."""
    return translated_term(_SHORT[stitch], language) or stitch_name(stitch, vocabulary)
