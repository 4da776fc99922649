"""What a stitch is called in full, for readers who know no abbreviation."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.workshop.stitches import Stitch, Vocabulary
from quoting.wording.catalogues import ENGLISH, sentence
from quoting.wording.speech import Speech

_AMERICAN: Mapping[str, str] = {
    Stitch.SC: sentence("single crochet"),
    Stitch.HDC: sentence("half double crochet"),
    Stitch.DC: sentence("double crochet"),
    Stitch.TR: sentence("treble crochet"),
}
"""By these names catalogues know the stitches: British ones mean others by the same words."""

_BRITISH: Mapping[str, str] = {
    Stitch.SC: "double crochet",
    Stitch.HDC: "half treble crochet",
    Stitch.DC: "treble crochet",
    Stitch.TR: "double treble crochet",
}


def full_stitch_name(name: str, speech: Speech) -> str:
    """Return a stitch's name in full, in the speech's vocabulary or language; a pattern's own."""
    if name not in _AMERICAN:
        return name
    if speech.language == ENGLISH and speech.vocabulary is Vocabulary.UK:
        return _BRITISH[name]
    return speech.worded(_AMERICAN[name])
